using SheetGen.Model;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Boring logs.</summary>
internal sealed class BoringBuilder(Points points, ProblemList problems)
{
    public IReadOnlyList<Boring> Build(MapItem root)
    {
        Names.CheckUnique(root.Maps("borings"), "boring", problems);
        var borings = new List<Boring>();
        foreach (MapItem map in root.Maps("borings"))
        {
            bool heights = Heights.Check(map, "the boring", problems);
            List<BoringLayer> layers = Layers(map, heights);
            if (map.Map("at") is { } at && points.Plan(at) is { } plan && heights && map.Text("name") is { } name)
                borings.Add(new Boring(name, plan, map.Number("top")!.Value, map.Number("bottom")!.Value, map.Number("water"), layers));
        }
        return borings;
    }

    private List<BoringLayer> Layers(MapItem map, bool heights)
    {
        double above = heights ? map.Number("top")!.Value : double.PositiveInfinity;
        double least = heights ? map.Number("bottom")!.Value : double.NegativeInfinity;
        var layers = new List<BoringLayer>();
        foreach (MapItem layer in map.Maps("layers"))
        {
            if (layer.Number("to") is not { } to)
                continue;
            if (to >= above)
                problems.Add(ProblemCodes.LayerOrder, layer.SpotOf("to"), FormattableString.Invariant($"the layer ends at {to}, not below {above} where it starts"), "give the layers from the top down");
            else if (to < least - Tolerance.Length)
                problems.Add(ProblemCodes.LayerOrder, layer.SpotOf("to"), FormattableString.Invariant($"the layer ends at {to}, below the boring's bottom {least}"), "correct the layer, or the bottom");
            above = to;
            if (layer.Text("name") is { } name)
                layers.Add(new BoringLayer(to, name, layer.Number("plasticity_index")));
        }
        return layers;
    }
}
