using SheetGen.Model;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>The walls of a file by name, with layout line and retained side, known before the walls themselves are built.</summary>
internal sealed class WallNames
{
    private readonly ProblemList _problems;
    private readonly bool _whole;

    public WallNames(MapItem root, LayoutLines lines, ProblemList problems)
    {
        _problems = problems;
        MapItem[] maps = [.. root.Maps("walls")];
        Names.CheckUnique(maps, "wall", problems);
        foreach (MapItem map in maps.Where(m => m.Text("name")?.Contains(", section ", StringComparison.OrdinalIgnoreCase) == true))
            problems.Add(ProblemCodes.WrongType, map.SpotOf("name"), "a wall's name cannot have \", section \" in it: tables call the sections of walls so", "call it otherwise");
        All = [.. maps.Select(m => new WallName(m.Text("name"), lines.Find(m), SideOf(m), m))];
        _whole = root.List("walls") is { Faulty: false } && maps.All(m => m.Text("name") is not null);
    }

    public IReadOnlyList<WallName> All { get; }

    /// <summary>The wall that a block names; null where there is none, which is reported.</summary>
    public WallName? Find(MapItem map)
    {
        string name = map.Text("wall")!;
        WallName? found = All.FirstOrDefault(w => w.Name == name);
        if (found is null && _whole)
            _problems.Add(ProblemCodes.UnknownName, map.SpotOf("wall"), $"there is no wall \"{Shown.Short(name)}\"", Names.Hint(name, All.Select(w => w.Name!)));
        return found;
    }

    /// <summary>The wall that a block names, or the only one; null where it is faulty or not named, which is reported.</summary>
    public WallName? FindOrOnly(MapItem map)
    {
        if (map.Text("wall") is not null)
            return Find(map);
        if (map.Gives("wall") || !_whole)
            return null;
        if (All.Count == 1)
            return All[0];
        _problems.Add(ProblemCodes.NameNeeded, map.Spot, "there are several walls: this needs \"wall\"", "one of " + string.Join(", ", All.Select(w => w.Name)));
        return null;
    }

    /// <summary>+1 or -1 for the retained side of all walls on a line; 0 where they differ or there is none; null where not all are known.</summary>
    public int? SideOf(LayoutLine line)
    {
        if (!_whole || All.Any(w => w.Line is null || w.Side is null))
            return null;
        int[] sides = [.. All.Where(w => w.Line == line).Select(w => w.Side!.Value).Distinct()];
        return sides.Length == 1 ? sides[0] : 0;
    }

    private static int? SideOf(MapItem map) => map.Text("retained_side") switch
    {
        "right" => 1,
        "left" => -1,
        _ => null,
    };
}

/// <summary>A wall as far as other blocks refer to it; null is what the file leaves out or has wrong.</summary>
/// <param name="Side">+1 where the soil is to the right looking up-station, -1 to the left.</param>
internal sealed record WallName(string? Name, LayoutLine? Line, int? Side, MapItem Map);
