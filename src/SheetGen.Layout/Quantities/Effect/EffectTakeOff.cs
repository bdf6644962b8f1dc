using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>Holds every nail as drawn against its grid place: areas, directions, lengths, loads and resistances.</summary>
internal static class EffectTakeOff
{
    /// <summary>What the layout does to the design.</summary>
    public static LayoutEffect Make(WallProject project, NailLayout layout)
    {
        var nails = new Dictionary<string, NailEffect>();
        var sections = new List<SectionEffect>();
        var leftOut = new List<SharedArea>();
        var tests = new List<SoilTest>();
        var layersFrom = new List<string>();
        double bare = 0;
        foreach (Wall wall in project.Walls)
        {
            var work = new WallEffect(project, wall, layout);
            foreach (NailEffect nail in work.Nails())
                nails[nail.Nail.Mark] = nail;
            sections.AddRange(work.Sections);
            leftOut.AddRange(SharedAreas.Of(work, layout, nails));
            tests.AddRange(work.Strengths.SelectMany(s => SoilTests.Of(s, project)));
            bare += work.AreaWithoutNails;
            if (!work.Layers.IsEmpty)
                layersFrom.Add($"{wall.Name}: {string.Join(", ", work.Layers.Names)}");
        }
        return new LayoutEffect
        {
            Nails = [.. layout.Nails.Where(n => nails.ContainsKey(n.Mark)).Select(n => nails[n.Mark])],
            Sections = sections,
            LeftOut = leftOut,
            AreaWithoutNails = bare,
            Tests = tests,
            LayersFrom = layersFrom.Count == 0 ? ""
                : "Layers are straight between borings next to each other along the layout line, layer by layer of the same name; one that only one boring has runs out at the other; level beyond the outer borings. Borings by wall: "
                    + string.Join("; ", layersFrom) + ".",
        };
    }

    internal static bool IsSame(double area, double other) => Math.Abs(area - other) <= QuantityTolerance.SameArea * Math.Max(area, other);
}
