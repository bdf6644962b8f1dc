using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Plan points by station and offset, or by northing and easting.</summary>
internal sealed class Points(LayoutLines lines, WallNames walls, LengthUnit unit, ProblemList problems)
{
    /// <summary>How far along the layout line points by station are moved, for what is repeated.</summary>
    public double Shift { get; set; }

    /// <summary>The plan point relative to the project's origin; null where it is faulty, which is reported.</summary>
    public Vector2D? Plan(MapItem map)
    {
        bool byStation = map.Gives("station") || map.Gives("offset") || map.Gives("layout_line") || map.Gives("wall");
        bool byCoordinates = map.Gives("northing") || map.Gives("easting");
        bool whole = byStation ? map.Gives("station") && map.Gives("offset") : map.Gives("northing") && map.Gives("easting");
        if (byStation == byCoordinates || !whole)
        {
            problems.Add(ProblemCodes.PointForm, map.Spot, "a point takes station and offset, or northing and easting", "give one whole pair: {station: 10+32, offset: 8}, or northing and easting");
            return null;
        }
        if (byCoordinates)
        {
            if (Shift != 0)
                problems.Add(ProblemCodes.NotHere, map.Spot, "repeat moves points along the layout line: this one has northing and easting", "give station and offset");
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
        List<Vector2D> whole = [.. plan.Select(p => p!.Value)];
        if (closed && (whole[0] - whole[^1]).Length < Tolerance.Length)
        {
            problems.Add(ProblemCodes.NoLength, maps[0].Spot, "this point falls together with the one before it", "correct or remove one of the two", maps[^1].Spot);
            return null;
        }
        return Apart([.. whole.Select(p => p.At(0))], maps) is null ? null : whole;
    }

    /// <summary>The points; null where two neighbours fall together, which is reported.</summary>
    public List<Vector3D>? Apart(List<Vector3D> whole, MapItem[] maps)
    {
        bool faulty = false;
        for (int i = 1; i < whole.Count; i++)
        {
            if ((whole[i] - whole[i - 1]).Length >= Tolerance.Length)
                continue;
            problems.Add(ProblemCodes.NoLength, maps[i].Spot, "this point falls together with the one before it", "correct or remove one of the two", maps[i - 1].Spot);
            faulty = true;
        }
        return faulty ? null : whole;
    }

    /// <summary>The course in plan of a pipe or boundary: its points, or a line along the layout line; null where faulty, which is reported.</summary>
    public List<Vector2D>? Course(MapItem map)
    {
        if (!OneOf(map, "points"))
            return null;
        if (map.Gives("offset_line"))
            return Following(map, 0);
        return map.List("points") is { } list ? PlanList(list, closed: false) : null;
    }

    /// <summary>The line along the layout line at offset_line and further into the soil; null where faulty, which is reported.</summary>
    public List<Vector2D>? Following(MapItem map, double further)
    {
        if (LineOf(map, "offset_line") is not { } of || map.Number("offset_line") is not { } offset)
            return null;
        (double Start, double End)? stretch = map.Gives("stations") ? Stretches.Read(map, of.Line, unit, problems) : (0, of.Line.Length);
        if (stretch is not { } s)
            return null;
        double sagitta = Lengths.IsFoot(unit) ? 0.01 : 0.003;
        List<Vector2D>? line = OffsetLines.Points(of.Line, (offset + further) * of.Side, s.Start + Shift, s.End + Shift, sagitta);
        if (line is null)
            problems.Add(ProblemCodes.FaceVanishes, map.SpotOf("offset_line"), FormattableString.Invariant($"at an offset of {offset + further} the line crosses itself: an arc's centre is nearer, or a leg between two corners is too short"), "give points");
        return line;
    }

    /// <summary>True where either the list of points or offset_line is given; else that is reported.</summary>
    public bool OneOf(MapItem map, string list)
    {
        foreach (string key in new[] { "stations", "layout_line", "wall" }.Where(k => map.Gives(k) && !map.Gives("offset_line")))
            problems.Add(ProblemCodes.NotHere, map.Keys[key], $"\"{key}\" goes with offset_line", key == "stations" ? "remove it" : "name it in the points");
        if (map.Gives(list) != map.Gives("offset_line"))
            return true;
        if (map.Gives(list))
            problems.Add(ProblemCodes.ExactlyOne, map.SpotOf("offset_line"), $"a {map.Text("kind")} takes {list} or offset_line, not both", "keep one of them");
        else
            problems.Add(ProblemCodes.MissingKey, map.Spot, $"\"{list}\" is missing in \"obstruction\"", $"give {list}, or offset_line: 42 for what keeps its offset along the layout line");
        return false;
    }

    /// <summary>The layout line that a block means, and the side of offsets from it; null where it is faulty, which is reported.</summary>
    /// <param name="offsetKey">Key of the offset, for its place.</param>
    public (LayoutLine Line, int Side)? LineOf(MapItem map, string offsetKey)
    {
        WallName? wall = map.Text("wall") is null ? null : walls.Find(map);
        if (wall is null && map.Gives("wall"))
            return null;
        LayoutLine? line = wall is null || map.Gives("layout_line") ? lines.Find(map) : wall.Line;
        if (line is null || map.Number(offsetKey) is not { } offset)
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
            problems.Add(ProblemCodes.OffsetSide, map.SpotOf(offsetKey), any
                ? $"the walls on layout line \"{Shown.Short(line.Name)}\" retain different sides: the offset has no side"
                : $"no wall stands on layout line \"{Shown.Short(line.Name)}\": the offset has no side",
                any ? "name the wall in the point (wall: ...)" : "give northing and easting");
            return null;
        }
        return side is { } known ? (line, known) : null;
    }

    private Vector2D? ByStation(MapItem map)
    {
        if (LineOf(map, "offset") is not { } of || map.NumberItem("station") is not { } station || map.Number("offset") is not { } offset)
            return null;
        if (StationPlaces.Along(of.Line, station, unit, problems) is not { } along)
            return null;
        if (station.Mark == StationMark.None && StationHint.Meant(of.Line, station.Value, unit) is { } meant)
        {
            problems.Add(ProblemCodes.BadStation, map.SpotOf("station"), FormattableString.Invariant($"station {station.Value} lies far off the layout line {of.Line.StationText(0, unit)} to {of.Line.StationText(of.Line.Length, unit)}"), $"did you mean {meant}?");
            return null;
        }
        return of.Line.PointAt(along + Shift, offset * of.Side);
    }
}
