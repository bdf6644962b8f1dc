using SheetGen.Drawing.Primitives;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>A nail's mark as it stands on its sheet, in paper coordinates.</summary>
/// <param name="Leader">Where the mark stands off; else null.</param>
public sealed record PlacedMark(Nail Nail, Text Text, Leader? Leader);

/// <summary>The marks of one view.</summary>
/// <param name="Missing">Nails without a mark.</param>
/// <param name="Unnamed">Rows whose marks show columns only, with an end that does not tell the row.</param>
/// <param name="Sides">Where the marks of each row stand, by the row's name.</param>
public sealed record MarkSet(IReadOnlyList<PlacedMark> Marks, IReadOnlyList<Nail> Missing, int Unnamed, IReadOnlyDictionary<string, RowPlace> Sides)
{
    /// <summary>What is wrong with the marks: 0 where every nail can be told.</summary>
    public int Faults => Missing.Count + Unnamed;

    public int Leaders => Marks.Count(m => m.Leader is not null);
}
