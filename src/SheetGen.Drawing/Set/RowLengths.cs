using SheetGen.Model.Results;

namespace SheetGen.Drawing.Set;

/// <summary>The lengths that rows have on the sheets: the nails' own, which pins of the project file and turned holes make other than the design's.</summary>
public sealed class RowLengths(NailLayout layout)
{
    private readonly Dictionary<(string Wall, string Section, RowNumber Row), double> _lengths = layout.Nails.Where(n => n.Kind != NailKind.Verification)
        .GroupBy(Key).ToDictionary(g => g.Key, g => MostOf([.. g]));

    /// <summary>The length written with a row: the one that most of its production nails have, the design's where two are equally many.</summary>
    public double Of(Nail nail) => _lengths.TryGetValue(Key(nail), out double length) ? length : Design(nail);

    /// <summary>True where a nail's length is not the one written with its row, so that the nail has to tell its own.</summary>
    public bool Differs(Nail nail) => nail.Length != Of(nail);

    /// <summary>True where a nail's length is not the design's for its row: a turned nail tells it, whatever the words of its row say.</summary>
    public static bool IsOwn(Nail nail) => nail.Length != Design(nail);

    private static (string Wall, string Section, RowNumber Row) Key(Nail n) => (n.Wall.Name, n.Section.Name, n.Row);

    private static double MostOf(Nail[] row) =>
        row.GroupBy(n => n.Length).OrderByDescending(g => g.Count()).ThenBy(g => g.Key == Design(row[0]) ? 0 : 1).ThenBy(g => g.Key).First().Key;

    private static double Design(Nail n) => n.Section.LengthOfRow(Math.Max(1, n.Row.Whole));
}
