using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>A nail as drawn, or on its grid place.</summary>
internal sealed record NailPlace(NailEffect Effect, PlaceEffect Place, bool IsGrid)
{
    public string Word => IsGrid ? "grid" : "drawn";

    public string Key => Effect.Nail.Mark + "|" + Word;

    /// <summary>Every nail of a section with values as drawn; the changed ones also on their grid place.</summary>
    public static IEnumerable<NailPlace> All(LayoutEffect effect)
    {
        foreach (NailEffect nail in effect.Nails.Where(n => n.Nail.Section.Design is not null))
        {
            yield return new NailPlace(nail, nail.Drawn, false);
            if (nail.IsChanged && nail.Grid is { } grid)
                yield return new NailPlace(nail, grid, true);
        }
    }
}
