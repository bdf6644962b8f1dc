using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Rows;

/// <summary>
/// Marks of nails: section, row and grid column (A-3-07), with a wall prefix where the project has several walls: the name's letters
/// and numbers, W1 for Wall 1, or the whole names where those do not tell the walls apart, or a number in the file's order where a name begins with another
/// (wall A-B, section C; wall A, section B-C). An added nail
/// takes the column it stands next to and the next letter after those of the row's grid stations at that column, so that no two nails
/// share a mark whether a station's own nail is there or not.
/// </summary>
internal sealed class Marks
{
    private readonly Dictionary<string, string> _prefix = [];

    public Marks(WallProject project)
    {
        if (project.Walls.Count == 1)
        {
            _prefix[project.Walls[0].Name] = "";
            return;
        }
        string[] names = [.. project.Walls.Select(w => w.Name)];
        string[] shorts = [.. names.Select(Short)];
        string[] prefixes = [.. names.Zip(shorts, (name, own) =>
            own.Length > 0 && shorts.Count(s => s == own) == 1 ? own : string.Concat(name.Where(char.IsLetterOrDigit)))];
        bool tellsApart = prefixes.All(p => p.Length > 0) && prefixes.Distinct(StringComparer.OrdinalIgnoreCase).Count() == names.Length;
        bool nests = names.Any(n => names.Any(o => o.StartsWith(n + "-", StringComparison.OrdinalIgnoreCase)));
        for (int i = 0; i < names.Length; i++)
            _prefix[names[i]] = (tellsApart ? prefixes[i] : nests ? FormattableString.Invariant($"W{i + 1}") : names[i]) + "-";
    }

    public string Of(Bay bay, RowNumber row, ColumnName column) => Of(bay.Wall, bay.Section, row, column);

    public string Of(Wall wall, Section section, RowNumber row, ColumnName column) => $"{_prefix[wall.Name]}{section.Name}-{row.Name}-{column}";

    public string Verification(Wall wall, Section section, int number) =>
        FormattableString.Invariant($"{_prefix[wall.Name]}{section.Name}-V-{number}");

    private static string Short(string name) => string.Concat(
        name.Split([' ', '-', '_'], StringSplitOptions.RemoveEmptyEntries)
            .Select(word => char.IsDigit(word[0]) ? string.Concat(word.TakeWhile(char.IsLetterOrDigit)) : char.ToUpperInvariant(word[0]).ToString()));
}
