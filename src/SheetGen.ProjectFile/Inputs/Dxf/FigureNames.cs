using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>Names of figures: an attribute of their insert, a text inside of them, or a number in order of station.</summary>
/// <param name="others">Names that figures of other blocks have, with what they are drawn as; those of this one are added.</param>
internal sealed class FigureNames(MapItem source, Drawing drawing, DrawingPlace place, Dictionary<string, string> others)
{
    private readonly HashSet<string> _used = new(StringComparer.OrdinalIgnoreCase);
    private readonly (Point3 At, string Text)[] _texts = source.Text("names") == "station" ? [] : [.. drawing.Figures.Where(f => f.Kind == FigureKind.Text && f.Text.Length <= 40).Select(f => (place.Map.Point(f.Center), f.Text))];
    private readonly string _start = source.Text("name") ?? source.Text("block") ?? source.Text("layer")!;

    /// <param name="center">Middle of the figure, in project coordinates.</param>
    /// <param name="radius">Radius of what is round; else 0.</param>
    /// <param name="ring">Corners around it; empty for what is round.</param>
    /// <param name="number">Its number in order of station.</param>
    public string Of(Figure figure, Point3 center, double radius, IReadOnlyList<Point3> ring, int number)
    {
        string name = Clean(Attribute(figure.Insert) ?? Inside(center, radius, ring) ?? "");
        if (name.Length == 0)
            name = Clean($"{_start}{(char.IsAsciiDigit(_start[^1]) ? "-" : _start.Contains('-', StringComparison.Ordinal) || _start.Length > 3 ? " " : "")}{number}");
        // The same thing taken twice keeps its name twice, which is told as a fault.
        bool isTwice = others.TryGetValue(name, out string? drawn) && drawn == figure.Source.Text && !_used.Contains(name);
        string unique = name;
        for (int i = 2; !isTwice && (_used.Contains(unique) || others.ContainsKey(unique)); i++)
            unique = FormattableString.Invariant($"{name} ({i})");
        _used.Add(unique);
        others[unique] = figure.Source.Text;
        return unique;
    }

    private string? Attribute(InsertPart? insert)
    {
        if (insert is null || insert.Attributes.Count == 0)
            return null;
        return source.Text("name_attribute") is { } asked ? insert.Attributes.GetValueOrDefault(asked)
            : new[] { "NAME", "MARK", "NO", "NUMBER", "ID", "TAG" }.Select(n => insert.Attributes.GetValueOrDefault(n)).FirstOrDefault(v => v is { Length: > 0 });
    }

    private string? Inside(Point3 center, double radius, IReadOnlyList<Point3> ring)
    {
        (Point3 At, string Text)[] within = [.. _texts.Where(t => radius > 0 ? (t.At - center).PlanLength <= radius : ring.Count > 2 && SafeOutline.Contains(ring, t.At))];
        return within.Length == 0 ? null : within.MinBy(t => (t.At - center).PlanLength).Text;
    }

    /// <summary>A name in one line that a spreadsheet takes for a text.</summary>
    private static string Clean(string name) => new string([.. name.Where(c => !char.IsControl(c))]).Trim().TrimStart('=', '+', '-', '@').Trim();
}
