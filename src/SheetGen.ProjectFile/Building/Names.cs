using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Checks of names.</summary>
internal static class Names
{
    /// <summary>Reports every name that stands twice among blocks of a kind.</summary>
    public static void CheckUnique(IEnumerable<MapItem> maps, string kind, ProblemList problems) =>
        CheckUnique(maps.Where(m => m.Text("name") is not null).Select(m => (m.Text("name")!, m.SpotOf("name"))), kind, problems);

    /// <summary>Reports every name that stands twice.</summary>
    public static void CheckUnique(IEnumerable<(string Name, SourceSpot Spot)> names, string kind, ProblemList problems)
    {
        var seen = new Dictionary<string, SourceSpot>();
        foreach ((string name, SourceSpot spot) in names)
        {
            if (seen.TryGetValue(name, out SourceSpot first))
                problems.Add(ProblemCodes.DuplicateName, spot, FormattableString.Invariant($"the name \"{Shown.Short(name)}\" is used twice; the first {kind} of that name is in line {first.Line}"), "rename one of them", first);
            else
                seen.Add(name, spot);
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
