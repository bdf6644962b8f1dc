using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Openings of a wall, and stretches that are closed to nails.</summary>
internal sealed class OpeningBuilder(LengthUnit unit, ProblemList problems)
{
    public IReadOnlyList<Opening> Openings(MapItem wall, LayoutLine line, double start, double end)
    {
        Names.CheckUnique(wall.Maps("openings"), "opening", problems);
        var openings = new List<Opening>();
        foreach (MapItem map in wall.Maps("openings"))
        {
            (double Start, double End)? stretch = Stretches.ReadInWall(map, "the opening", line, start, end, unit, problems);
            bool heights = Heights.Check(map, "the opening", problems);
            if (stretch is { } s && heights && map.Text("name") is { } name)
                openings.Add(new Opening(name, s.Start, s.End, map.Number("bottom")!.Value, map.Number("top")!.Value, map.Spot));
        }
        return openings;
    }

    public IReadOnlyList<ClosedStretch> ClosedStretches(MapItem wall, LayoutLine line, double start, double end)
    {
        var closed = new List<ClosedStretch>();
        foreach (MapItem map in wall.Maps("no_nails"))
        {
            (double Start, double End)? stretch = Stretches.ReadInWall(map, "the closed stretch", line, start, end, unit, problems);
            bool heights = !map.Gives("bottom") || !map.Gives("top") || Heights.Check(map, "the closed stretch", problems);
            if (stretch is { } s && heights)
                closed.Add(new ClosedStretch(s.Start, s.End, map.Number("bottom"), map.Number("top"), map.Text("reason") ?? "", map.Spot));
        }
        return closed;
    }
}
