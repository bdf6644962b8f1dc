using System.Globalization;
using SheetGen.Model.Units;

namespace SheetGen.Model.Results;

/// <summary>Spacing as built: the grid's vertical spacing is the most that is allowed, and rows stand at equal gaps up to it.</summary>
public static class BuiltSpacing
{
    /// <summary>
    /// Least and greatest of the legs' mean gaps between neighbouring grid rows of a section, in elevation where rows are level, in depth
    /// below the top where they are parallel; null where no two grid rows stand below each other.
    /// </summary>
    /// <param name="rows">Rows of the layout; those of other sections are not looked at.</param>
    public static (double Least, double Greatest)? RowGaps(Wall wall, Section section, IEnumerable<NailRow> rows)
    {
        double[] legs =
        [
            .. rows.Where(r => r.Wall.Name == wall.Name && r.Section.Name == section.Name && !r.Number.IsPart && r.GridStations.Count > 0)
                .GroupBy(r => (r.Leg, r.IsLevel)).Select(MeanGap).OfType<double>(),
        ];
        return legs.Length == 0 ? null : (legs.Min(), legs.Max());
    }

    /// <summary>Such as 5.00' H x 4.83' V (5.00' MAX); without what is in brackets where the rows stand at the grid's spacing.</summary>
    public static string Text(Wall wall, Section section, IEnumerable<NailRow> rows, LengthUnit unit) =>
        $"{Length(section.HorizontalSpacing, unit)} H x {VerticalText(wall, section, rows, unit)}";

    /// <summary>The second half of <see cref="Text"/>: 4.83' V (5.00' MAX).</summary>
    public static string VerticalText(Wall wall, Section section, IEnumerable<NailRow> rows, LengthUnit unit)
    {
        string most = Length(section.VerticalSpacing, unit);
        if (RowGaps(wall, section, rows) is not { } gaps)
            return $"{most} V MAX";
        string least = Length(gaps.Least, unit), greatest = Length(gaps.Greatest, unit);
        string built = least == greatest ? least : $"{least} TO {greatest}";
        return built == most ? $"{most} V" : $"{built} V ({most} MAX)";
    }

    private static double? MeanGap(IEnumerable<NailRow> legRows)
    {
        NailRow[] rows = [.. legRows.OrderBy(r => r.Number)];
        int between = rows.Length < 2 ? 0 : rows[^1].Number.Whole - rows[0].Number.Whole;
        return between == 0 ? null : Math.Abs(rows[^1].Level - rows[0].Level) / between;
    }

    private static string Length(double value, LengthUnit unit) =>
        value.ToString(Lengths.IsFoot(unit) ? "0.00" : "0.000", CultureInfo.InvariantCulture) + (Lengths.IsFoot(unit) ? "'" : " m");
}
