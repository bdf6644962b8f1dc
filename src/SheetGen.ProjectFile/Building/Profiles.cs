using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Profiles of one wall.</summary>
internal sealed class Profiles(LayoutLine line, double start, double end, LengthUnit unit, ProblemList problems)
{
    /// <summary>The profile under a key; null where it is left out or faulty, which is reported.</summary>
    public Profile? Read(MapItem map, string key)
    {
        if (Ordered(map, key, steps: false) is not { } given || new VerticalCurves(unit, problems).Lay(given, map.List(key)!, Show) is not { } laid)
            return null;
        List<ProfilePoint> points = Near(laid);
        if (points[0].Along <= start + Tolerance.Length && points[^1].Along >= end - Tolerance.Length)
            return new Profile(points);
        string side = points[0].Along > start + Tolerance.Length
            ? $"\"{key}\" starts at {Show(points[0].Along)}, behind the wall's start {Show(start)}"
            : $"\"{key}\" ends at {Show(points[^1].Along)}, before the wall's end {Show(end)}";
        problems.Add(ProblemCodes.ProfileShort, map.SpotOf(key), side, StationHint.Behind("add a point", line, points.Select(p => line.StationOf(p.Along)), unit));
        return null;
    }

    /// <summary>The steps of a bottom, the first at the wall's start; null where faulty, which is reported.</summary>
    public List<ProfilePoint>? ReadSteps(MapItem map)
    {
        List<ProfilePoint>? points = Ordered(map, "steps", steps: true);
        if (points is null)
            return null;
        if (points[0].Along > start + Tolerance.Length)
        {
            problems.Add(ProblemCodes.ProfileShort, map.SpotOf("steps"), $"\"steps\" starts at {Show(points[0].Along)}, behind the wall's start {Show(start)}", "add a step at the wall's start");
            return null;
        }
        MapItem[] items = [.. map.Maps("steps")];
        int out_ = points.FindIndex(p => p.Along >= end - Tolerance.Length);
        if (out_ >= 0)
        {
            problems.Add(ProblemCodes.OutsideWall, items[out_].Spot, $"the step at {Show(points[out_].Along)} has no effect: the wall ends at {Show(end)}", "remove it");
            return null;
        }
        int first = points.FindLastIndex(p => p.Along <= start + Tolerance.Length);
        return [points[first] with { Along = start }, .. points.Skip(first + 1)];
    }

    /// <summary>What counts for the wall: the points on it and the next beyond each end, of a road's profile perhaps a small part.</summary>
    private List<ProfilePoint> Near(List<ProfilePoint> points)
    {
        int first = Math.Max(0, points.FindIndex(p => p.Along >= start) - 2), last = points.FindLastIndex(p => p.Along <= end) + 2;
        return last < 1 || points[0].Along > end ? points : points[first..Math.Min(points.Count, last + 1)];
    }

    public string Show(double along) => line.StationText(along, unit);

    /// <summary>True where no first number lies on the wall, and every second one does.</summary>
    private bool Swapped(ListItem list)
    {
        bool OnWall(double station) => line.Stationing.PlacesOf(new PrintedStation(station)).Any(along => along >= start - Tolerance.Length && along <= end + Tolerance.Length);
        MapItem[] items = [.. list.Maps];
        return items.Length > 0 && Array.TrueForAll(items, i => i.NumberItem("station") is { Mark: StationMark.None } s && i.Number("elevation") is { } z && !OnWall(s.Value) && OnWall(z));
    }

    private List<ProfilePoint>? Ordered(MapItem map, string key, bool steps)
    {
        if (map.List(key) is not { Faulty: false } list)
            return null;
        if (Swapped(list))
        {
            problems.Add(ProblemCodes.StationOrder, list.Spot, $"\"{key}\" gives elevation and station, the wrong way round", "write [station, elevation]");
            return null;
        }
        var points = new List<ProfilePoint>();
        bool faulty = false;
        foreach (MapItem item in list.Maps)
        {
            if (item.NumberItem("station") is not { } station || item.Number("elevation") is not { } elevation || StationPlaces.Along(line, station, unit, problems) is not { } along)
            {
                faulty = true;
                continue;
            }
            bool back = points.Count > 0 && (steps ? along <= points[^1].Along : along < points[^1].Along);
            bool third = points.Count > 1 && along == points[^1].Along && along == points[^2].Along;
            if (back || third)
            {
                string why = third && !back ? "is the third point at one station" : points.Count > 0 && along == points[^1].Along ? "stands twice" : $"is before {Show(points[^1].Along)}";
                problems.Add(ProblemCodes.StationOrder, item.SpotOf("station"), $"\"{key}\": station {Show(along)} {why}", "put the stations in order");
                faulty = true;
                continue;
            }
            points.Add(new ProfilePoint(along, elevation));
        }
        return faulty ? null : points;
    }
}
