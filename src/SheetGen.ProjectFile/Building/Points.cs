using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Plan points by station and offset, or by northing and easting.</summary>
internal sealed class Points(LayoutLines lines, WallNames walls, ProblemList problems)
{
    /// <summary>The plan point relative to the project's origin; null where it is faulty, which is reported.</summary>
    public Vector2D? Plan(MapItem map)
    {
        bool byStation = map.Gives("station") || map.Gives("offset") || map.Gives("layout_line") || map.Gives("wall");
        bool byCoordinates = map.Gives("northing") || map.Gives("easting");
        bool whole = byStation ? map.Gives("station") && map.Gives("offset") : map.Gives("northing") && map.Gives("easting");
        if (byStation == byCoordinates || !whole)
        {
            problems.Add(ProblemCodes.PointForm, map.Spot, "a point takes station and offset, or northing and easting");
            return null;
        }
        if (byCoordinates)
        {
            return map.NumberItem("northing") is { } n && map.NumberItem("easting") is { } e ? lines.Relative(n, e) : null;
        }
        return ByStation(map);
    }

    /// <summary>All plan points of a list; null where any is faulty or two neighbours fall together, which is reported.</summary>
    /// <param name="closed">True where the last point is a neighbour of the first.</param>
    public List<Vector2D>? PlanList(ListItem list, bool closed)
    {
        List<Vector2D?> plan = [.. list.Maps.Select(Plan)];
        if (list.Faulty || plan.Contains(null))
            return null;
        MapItem[] maps = [.. list.Maps];
        bool faulty = false;
        for (int i = closed ? 0 : 1; i < plan.Count; i++)
        {
            int before = i == 0 ? plan.Count - 1 : i - 1;
            if ((plan[i]!.Value - plan[before]!.Value).Length < Tolerance.Length)
            {
                problems.Add(ProblemCodes.NoLength, maps[i].Spot, "this point falls together with the one before it", "correct or remove one of the two", maps[before].Spot);
                faulty = true;
            }
        }
        return faulty ? null : [.. plan.Select(p => p!.Value)];
    }

    private Vector2D? ByStation(MapItem map)
    {
        WallName? wall = map.Text("wall") is null ? null : walls.Find(map);
        if (wall is null && map.Gives("wall"))
            return null;
        LayoutLine? line = wall is null || map.Gives("layout_line") ? lines.Find(map) : wall.Line;
        if (line is null || map.Number("station") is not { } station || map.Number("offset") is not { } offset)
            return null;
        if (wall?.Line is { } own && own != line)
        {
            problems.Add(ProblemCodes.UnknownName, map.SpotOf("wall"), $"wall \"{Shown.Short(wall.Name ?? "")}\" is not on layout line \"{Shown.Short(line.Name)}\"", "remove layout_line, or correct the wall");
            return null;
        }
        int? side = wall is null ? walls.SideOf(line) : wall.Side;
        if (side == 0 && offset != 0)
        {
            bool any = walls.All.Any(w => w.Line == line);
            problems.Add(ProblemCodes.OffsetSide, map.SpotOf("offset"), any
                ? $"the walls on layout line \"{Shown.Short(line.Name)}\" retain different sides: the offset has no side"
                : $"no wall stands on layout line \"{Shown.Short(line.Name)}\": the offset has no side",
                any ? "name the wall in the point (wall: ...)" : "give northing and easting");
            return null;
        }
        return side is { } known ? line.PointAt(line.AlongOf(station), offset * known) : null;
    }
}
