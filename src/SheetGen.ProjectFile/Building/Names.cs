using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Checks of names.</summary>
internal static class Names
{
    /// <summary>Reports every name that stands twice among blocks of a kind.</summary>
    public static void CheckUnique(IEnumerable<MapItem> maps, string kind, ProblemList problems) =>
        CheckUnique(maps.Where(m => m.Text("name") is not null).Select(m => (m.Text("name")!, m.SpotOf("name"))), kind, problems);

    /// <summary>Reports every name that stands twice; upper and lower case are the same, as in drawings, spreadsheets and many file systems.</summary>
    public static void CheckUnique(IEnumerable<(string Name, SourceSpot Spot)> names, string kind, ProblemList problems)
    {
        var seen = new Dictionary<string, (string Name, SourceSpot Spot)>(StringComparer.OrdinalIgnoreCase);
        foreach ((string name, SourceSpot spot) in names)
        {
            if (seen.TryAdd(name, (name, spot)))
                continue;
            (string other, SourceSpot first) = seen[name];
            problems.Add(ProblemCodes.DuplicateName, spot, name == other
                ? FormattableString.Invariant($"the name \"{Shown.Short(name)}\" is used twice; the first {kind} of that name is in line {first.Line}")
                : FormattableString.Invariant($"the name \"{Shown.Short(name)}\" differs from that of the {kind} in line {first.Line}, \"{Shown.Short(other)}\", in upper and lower case only"),
                "rename one of them", first);
        }
    }

    public static string Hint(string given, IEnumerable<string> names)
    {
        string[] all = [.. names];
        if (Suggestion.Nearest(given, all) is { } near)
            return $"did you mean \"{near}\"?";
        return all.Length == 0 ? "" : "one of " + string.Join(", ", all.Take(10));
    }
}
