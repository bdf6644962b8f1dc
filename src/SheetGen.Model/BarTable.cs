namespace SheetGen.Model;

/// <summary>
/// Nominal bar sizes of ASTM A615/A615M Table 1 (as transcribed in public copies of the standard); #20 is from memory.
/// </summary>
public static class BarTable
{
    private static readonly Bar[] Rows =
    [
        new("#3", 0, 0.375, 0.11, 0.376, 9.5, 71, 0.560),
        new("#4", 0, 0.500, 0.20, 0.668, 12.7, 129, 0.994),
        new("#5", 0, 0.625, 0.31, 1.043, 15.9, 199, 1.552),
        new("#6", 0, 0.750, 0.44, 1.502, 19.1, 284, 2.235),
        new("#7", 0, 0.875, 0.60, 2.044, 22.2, 387, 3.042),
        new("#8", 0, 1.000, 0.79, 2.670, 25.4, 510, 3.973),
        new("#9", 0, 1.128, 1.00, 3.400, 28.7, 645, 5.060),
        new("#10", 0, 1.270, 1.27, 4.303, 32.3, 819, 6.404),
        new("#11", 0, 1.410, 1.56, 5.313, 35.8, 1006, 7.907),
        new("#14", 0, 1.693, 2.25, 7.65, 43.0, 1452, 11.38),
        new("#18", 0, 2.257, 4.00, 13.60, 57.3, 2581, 20.24),
        new("#20", 0, 2.500, 4.91, 16.69, 63.5, 3167, 24.84),
    ];

    public static IReadOnlyList<Bar> All => Rows;

    /// <summary>The bar of a size, with a grade; null where the table has no such size. "#8", "8" and "No. 8" mean the same.</summary>
    public static Bar? Find(string size, int grade)
    {
        string number = size.Trim().TrimStart('#');
        if (number.StartsWith("No.", StringComparison.OrdinalIgnoreCase))
            number = number[3..].Trim();
        Bar? row = Array.Find(Rows, r => r.Size == "#" + number);
        return row is null ? null : row with { Grade = grade };
    }
}
