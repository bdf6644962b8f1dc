using SheetGen.Model;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Marks of nails: section, row and grid column (A-3-07), with a wall prefix where the project has several walls. An added nail
/// takes the column it stands next to and a letter.
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
        string[] shorts = [.. project.Walls.Select(w => Short(w.Name))];
        for (int i = 0; i < shorts.Length; i++)
        {
            bool unique = shorts[i].Length > 0 && shorts.Count(s => s == shorts[i]) == 1;
            string full = string.Concat(project.Walls[i].Name.Where(char.IsLetterOrDigit));
            _prefix[project.Walls[i].Name] = (unique ? shorts[i] : full) + "-";
        }
    }

    /// <summary>Marks of a row's nails, in the row's order.</summary>
    public Dictionary<Placed, string> Of(RowState state)
    {
        var marks = new Dictionary<Placed, string>(ReferenceEqualityComparer.Instance);
        string row = Row(state.Row);
        foreach (IGrouping<int, Placed> station in state.Nails.GroupBy(n => n.Choice.Label))
        {
            int again = 0;
            string column = state.Row.Columns[station.Key];
            foreach (Placed nail in station.OrderBy(n => Math.Abs(n.Choice.Shift)).ThenBy(n => n.Choice.Shift))
            {
                marks[nail] = row + column + (again == 0 ? "" : Added(column, again));
                again++;
            }
        }
        return marks;
    }

    public string OfStation(RowTask row, int label) => Row(row) + row.Columns[label];

    public string Verification(Wall wall, Section section, int number) =>
        FormattableString.Invariant($"{_prefix[wall.Name]}{section.Name}-V-{number}");

    private string Row(RowTask row) => $"{_prefix[row.Bay.Wall.Name]}{row.Bay.Section.Name}-{row.Number}-";

    /// <summary>Letters of added nails start after those that part rows may use.</summary>
    private static string Added(string column, int again) =>
        char.IsLetter(column[^1]) ? "x" + (char)('a' + again - 1) : ((char)('a' + again - 1)).ToString();

    private static string Short(string name) => string.Concat(
        name.Split([' ', '-', '_'], StringSplitOptions.RemoveEmptyEntries)
            .Select(word => char.IsDigit(word[0]) ? string.Concat(word.TakeWhile(char.IsLetterOrDigit)) : char.ToUpperInvariant(word[0]).ToString()));
}
