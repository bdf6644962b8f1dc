using System.Globalization;
using System.Text;
using System.Text.Json;
using SheetGen.Model;

namespace SheetGen.ProjectFile;

/// <summary>Writes the block <c>fixed</c> of a project file's text anew; the rest of the text stays as it is, letter by letter.</summary>
public static class FixedBlock
{
    /// <summary>
    /// The text with the pins in place of those that it has. The old block stays as a comment. Null where the text cannot be changed line by
    /// line: then the pins are to be written by hand.
    /// </summary>
    /// <param name="read">What reading the text gave.</param>
    /// <param name="groups">Groups of pins, each with a line that stands above it as a comment.</param>
    public static string? Put(ReadResult read, WallProject project, IReadOnlyList<(string Comment, IReadOnlyList<FixedNail> Pins)> groups)
    {
        FixedNail[] pins = [.. groups.SelectMany(g => g.Pins)];
        string newLine = read.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        List<string> lines = [.. read.Text.ReplaceLineEndings("\n").Split('\n')];
        while (lines.Count > 0 && lines[^1].Trim().Length == 0)
            lines.RemoveAt(lines.Count - 1);
        if (lines.Count > 0 && lines[^1].Trim() is "..." or "---")
            lines.RemoveAt(lines.Count - 1);
        int key = lines.FindIndex(l => l.StartsWith("fixed:", StringComparison.Ordinal));
        if (key >= 0)
        {
            int end = key + 1;
            while (end < lines.Count && (lines[end].Trim().Length == 0 || !IsKey(lines[end])))
                end++;
            for (int i = key; i < end; i++)
                lines[i] = lines[i].Trim().Length == 0 ? lines[i] : "# " + lines[i];
        }
        lines.Add("");
        lines.Add("fixed:" + (pins.Length == 0 ? " []" : ""));
        foreach ((string comment, IReadOnlyList<FixedNail> group) in groups.Where(g => g.Pins.Count > 0))
        {
            lines.Add("  # " + comment.ReplaceLineEndings(" "));
            lines.AddRange(group.Select(p => "  - " + Of(project, p)));
        }
        string text = string.Join(newLine, lines) + newLine;
        ReadResult again = ProjectReader.ReadText(text, "copy");
        // What was written must read as it was meant, and nothing else may have changed.
        return again.Project is { } copy && copy.FixedNails.Count == pins.Length && copy.FixedNails.Zip(pins).All(p => IsSame(p.First, p.Second))
            && copy.Walls.Count == project.Walls.Count && copy.Obstructions.Count == project.Obstructions.Count ? text : null;
    }

    private static bool IsKey(string line) => line[0] is not (' ' or '\t' or '#' or '-' or ']' or '}');

    private static string Of(WallProject project, FixedNail pin)
    {
        Wall wall = project.Walls.First(w => w.Name == pin.Wall);
        var item = new StringBuilder("{");
        void Put(string key, string value) => item.Append(item.Length > 1 ? ", " : "").Append(key).Append(": ").Append(value);
        void Number(string key, double? value)
        {
            if (value is { } number)
                Put(key, Math.Round(number, 6).ToString("0.######", CultureInfo.InvariantCulture));
        }
        Put("wall", Quoted(pin.Wall));
        if (pin.Section is { } section)
            Put("section", Quoted(section));
        Put("row", pin.Row);
        Number("station", pin.Along is { } along ? wall.StationOf(along) : null);
        Number("grid_station", pin.GridAlong is { } grid ? wall.StationOf(grid) : null);
        Number("elevation", pin.Elevation);
        Number("splay", pin.Splay);
        Number("inclination", pin.Inclination);
        Number("length", pin.Length);
        if (pin.Kind != FixedKind.Nail)
            Put(pin.Kind == FixedKind.Added ? "add" : "leave_out", "true");
        return item.Append('}').ToString();
    }

    private static string Quoted(string name) => JsonSerializer.Serialize(name);

    private static bool IsSame(FixedNail a, FixedNail b)
    {
        static bool Near(double? x, double? y) => x is null == y is null && (x is null || Math.Abs(x.Value - y!.Value) < 1e-5);
        return a.Wall == b.Wall && a.Section == b.Section && a.Row == b.Row && a.Kind == b.Kind && Near(a.Along, b.Along) && Near(a.GridAlong, b.GridAlong)
            && Near(a.Elevation, b.Elevation) && Near(a.Splay, b.Splay) && Near(a.Inclination, b.Inclination) && Near(a.Length, b.Length);
    }
}
