using SheetGen.Model;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Marks of nails: section, row and grid column (A-3-07), with a wall prefix where the project has several walls: the name's letters
/// and numbers, W1 for Wall 1, or the whole names where those do not tell the walls apart. An added nail
/// takes the column it stands next to and the next letter after those of the row's grid stations at that column, so that no two nails
/// share a mark whether a station's own nail is there or not.
/// </summary>
public sealed class Marks
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
        bool tellsApart = prefixes.All(p => p.Length > 0) && prefixes.Distinct().Count() == names.Length;
        for (int i = 0; i < names.Length; i++)
            _prefix[names[i]] = (tellsApart ? prefixes[i] : names[i]) + "-";
    }

    /// <summary>Marks of a row's nails, in the row's order.</summary>
    public Dictionary<Placed, string> Of(RowState state)
    {
        var marks = new Dictionary<Placed, string>(ReferenceEqualityComparer.Instance);
        string row = Row(state.Row);
        Dictionary<int, int> next = state.Row.Columns.CountBy(c => c.Number).ToDictionary();
        foreach (IGrouping<int, Placed> station in state.Nails.GroupBy(n => n.Choice.Label))
        {
            ColumnName column = state.Row.Columns[station.Key];
            Placed[] nails = [.. station.OrderBy(n => Math.Abs(n.Choice.Shift)).ThenBy(n => n.Choice.Shift)];
            marks[nails[0]] = row + column;
            foreach (Placed added in nails[1..])
                marks[added] = row + column with { Further = next[column.Number]++ };
        }
        return marks;
    }

    public string OfStation(RowTask row, int label) => Row(row) + row.Columns[label];

    public string Verification(Wall wall, Section section, int number) =>
        FormattableString.Invariant($"{_prefix[wall.Name]}{section.Name}-V-{number}");

    private string Row(RowTask row) => $"{_prefix[row.Bay.Wall.Name]}{row.Bay.Section.Name}-{row.Number}-";

    private static string Short(string name) => string.Concat(
        name.Split([' ', '-', '_'], StringSplitOptions.RemoveEmptyEntries)
            .Select(word => char.IsDigit(word[0]) ? string.Concat(word.TakeWhile(char.IsLetterOrDigit)) : char.ToUpperInvariant(word[0]).ToString()));
}
