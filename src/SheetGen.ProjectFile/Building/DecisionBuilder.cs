using System.Globalization;
using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Building;

/// <summary>The designer's hand: pinned nails, and findings that the engineer has accepted.</summary>
internal sealed class DecisionBuilder(WallNames walls, LengthUnit unit, ProblemList problems)
{
    public IReadOnlyList<FixedNail> FixedNails(MapItem root)
    {
        var nails = new List<FixedNail>();
        foreach (MapItem map in root.Maps("fixed"))
        {
            WallName? wall = walls.FindOrOnly(map);
            double? along = map.NumberItem("station") is { } station && wall?.Line is { } line ? StationPlaces.Along(line, station, unit, problems) : null;
            string? row = RowOf(map);
            if (along is null && !map.Gives("station") && new[] { "elevation", "add", "leave_out" }.FirstOrDefault(map.Gives) is { } one)
                problems.Add(ProblemCodes.ExactlyOne, map.SpotOf(one), $"\"{one}\" is said of one nail, and this pin has no station", "give the nail's station");
            bool known = wall is null || SectionIsKnown(map, wall);
            if (wall is not null && along is { } place)
                CheckInWall(map, wall, place, "the pinned nail");
            if (wall?.Name is { } name && row is not null && known)
                nails.Add(new FixedNail(name, map.Text("section"), row, along, map.Number("splay"), map.Number("inclination"), map.Number("length"), map.Spot)
                {
                    Elevation = map.Number("elevation"),
                    GridAlong = map.Number("grid_station") is { } grid && wall?.Line is { } of ? of.AlongOf(grid) : null,
                    Kind = map.Flag("leave_out") == true ? FixedKind.LeftOut : map.Flag("add") == true ? FixedKind.Added : FixedKind.Nail,
                });
        }
        return nails;
    }

    public IReadOnlyList<Acceptance> Acceptances(MapItem root)
    {
        HashSet<string> obstructions = [.. root.Maps("obstructions").Where(m => m.Text("name") is not null).SelectMany(Repeats.Of).Select(r => r.Name)];
        bool whole = root.Maps("obstructions").All(m => m.Text("name") is not null) && root.List("obstructions") is not { Faulty: true } && !root.IsFaulty("obstructions");
        var accepted = new List<Acceptance>();
        foreach (MapItem map in root.Maps("accept"))
        {
            if (!map.Gives("nails") && !map.Gives("obstruction") && !map.Gives("stations"))
                problems.Add(ProblemCodes.ExactlyOne, map.Spot, "an acceptance names nails, an obstruction or stations", "say what is accepted");
            if (map.Text("obstruction") is { } named && whole && !obstructions.Contains(named))
                problems.Add(ProblemCodes.UnknownName, map.SpotOf("obstruction"), $"there is no obstruction \"{Shown.Short(named)}\"", Names.Hint(named, obstructions));
            WallName? wall = map.Gives("wall") || map.Gives("stations") ? walls.FindOrOnly(map) : null;
            (double Start, double End)? stretch = wall?.Line is { } line ? Stretches.Read(map, line, unit, problems) : null;
            string[] nails = [.. map.List("nails")?.Items.OfType<TextItem>().Select(t => t.Text) ?? []];
            if (map.Text("reason") is { } reason && map.Text("by") is { } by)
                accepted.Add(new Acceptance(map.Text("code"), wall?.Name, nails, map.Text("obstruction"), stretch?.Start, stretch?.End, reason, by, map.Spot));
        }
        return accepted;
    }

    private string? RowOf(MapItem map)
    {
        if (map.Text("row") is not { } row)
            return null;
        Amount amount = Numbers.Parse(row);
        if (amount.IsGood && amount.Value is > 0 and < 1000)
            return amount.Exact.ToString("0.###", CultureInfo.InvariantCulture);
        problems.Add(ProblemCodes.WrongType, map.SpotOf("row"), $"\"row\" is not a row: \"{Shown.Short(row)}\"", "for example row: 3, or a part row 3.5");
        return null;
    }

    private bool SectionIsKnown(MapItem map, WallName wall)
    {
        if (map.Text("section") is not { } section || wall.Map.List("sections") is not { Faulty: false } list)
            return true;
        string?[] names = [.. list.Maps.Select(m => m.Text("name"))];
        if (names.Contains(null) || names.Contains(section))
            return true;
        problems.Add(ProblemCodes.UnknownName, map.SpotOf("section"), $"there is no section \"{Shown.Short(section)}\" in wall \"{Shown.Short(wall.Name ?? "")}\"", Names.Hint(section, names!));
        return false;
    }

    private void CheckInWall(MapItem map, WallName wall, double along, string what)
    {
        if (wall.Map.List("stations") is not { Faulty: false } list || wall.Line is not { } line)
            return;
        if (StationPlaces.Along(line, list.Numbers[0], unit, problems) is not { } start || StationPlaces.Along(line, list.Numbers[1], unit, problems) is not { } end)
            return;
        if (start < end && (along < start - Tolerance.Length || along > end + Tolerance.Length))
            problems.Add(ProblemCodes.OutsideWall, map.SpotOf("station"), $"{what} at {line.StationText(along, unit)} is out of the wall {line.StationText(start, unit)} to {line.StationText(end, unit)}", "correct the station");
    }
}
