using SheetGen.Drawing.Primitives;
using SheetGen.Dxf;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>
/// Which line of a plan is which nail where a program has dropped all marks: the line that lies where the nail's lay; else one that starts
/// at its head, or that was moved and is as long and as directed. What fits several nails, such as the rows of a vertical wall that lie over
/// each other in plan, is named and not read.
/// </summary>
internal sealed class UnmarkedPlan(NailLayout layout, Dictionary<string, Line> was, double tolerance, List<string> notRead)
{
    private readonly List<(string Layer, DxfPoint Head, DxfPoint Tip)> _lines = [];
    private readonly Dictionary<Nail, (DxfPoint Head, DxfPoint Tip)> _known = new(ReferenceEqualityComparer.Instance);

    /// <summary>The lines of nails as they lie now; a nail that is not among them was removed.</summary>
    /// <param name="drawn">All lines of the drawing, read where it was written.</param>
    public Dictionary<Nail, (DxfPoint Head, DxfPoint Tip)> Match(IEnumerable<(string Layer, DxfPoint Head, DxfPoint Tip)> drawn)
    {
        _lines.AddRange(drawn);
        string[] layers = Standing();
        _lines.RemoveAll(l => !layers.Contains(l.Layer));
        foreach ((string Layer, DxfPoint Head, DxfPoint Tip) line in _lines.ToArray())
            Changed(line);
        Missing();
        foreach ((_, DxfPoint head, DxfPoint tip) in _lines)
            notRead.Add(FormattableString.Invariant($"a line like a nail's from {head.X:0.##}, {head.Y:0.##} to {tip.X:0.##}, {tip.Y:0.##}: the plan has lost its marks, so it is not known what nail it is; not read"));
        return _known;
    }

    private Nail[] Open => [.. layout.Nails.Where(n => was.ContainsKey(n.Mark) && !_known.ContainsKey(n))];

    /// <summary>Takes the lines that lie where a nail's lay, and gives the layers they are on.</summary>
    private string[] Standing()
    {
        var layers = new HashSet<string>();
        ILookup<(long, long), int> byHead = Enumerable.Range(0, _lines.Count).ToLookup(i => Cell(_lines[i].Head));
        var taken = new HashSet<int>();
        foreach (Nail nail in layout.Nails.Where(n => was.ContainsKey(n.Mark)))
        {
            DxfPoint head = Point(was[nail.Mark].From), tip = Point(was[nail.Mark].To);
            (long x, long y) = Cell(head);
            int at = Enumerable.Range(-1, 3).SelectMany(i => Enumerable.Range(-1, 3).SelectMany(j => byHead[(x + i, y + j)]))
                .Where(i => !taken.Contains(i) && Near(_lines[i].Head, head) && Near(_lines[i].Tip, tip)).DefaultIfEmpty(-1).First();
            if (at < 0)
                continue;
            taken.Add(at);
            layers.Add(_lines[at].Layer);
            _known[nail] = (_lines[at].Head, _lines[at].Tip);
        }
        foreach (int at in taken.OrderDescending())
            _lines.RemoveAt(at);
        return [.. layers];
    }

    /// <summary>A line that was turned about its head, made longer, or moved as it is.</summary>
    private void Changed((string Layer, DxfPoint Head, DxfPoint Tip) line)
    {
        double length = (line.Tip - line.Head).Length;
        Nail[] open = Open;
        double LengthOf(Nail n) => (Point(was[n.Mark].To) - Point(was[n.Mark].From)).Length;
        Nail[] atHead = [.. open.Where(n => Near(Point(was[n.Mark].From), line.Head))], asLong = [.. open.Where(n => Math.Abs(LengthOf(n) - length) <= 2 * tolerance)];
        Nail[] fit = [.. atHead.Intersect(asLong)];
        if (fit.Length == 0)
            fit = atHead;
        if (fit.Length == 0)
        {
            Nail[] moved = [.. asLong.Where(n => Near(line.Tip - line.Head, Point(was[n.Mark].To) - Point(was[n.Mark].From)) && Away(n, line.Head) <= n.Section.HorizontalSpacing)];
            fit = [.. moved.Where(n => Away(n, line.Head) <= moved.Min(m => Away(m, line.Head)) + tolerance)];
        }
        if (fit.Length != 1 || LiesOverAnother(fit[0]))
            return;
        _known[fit[0]] = (line.Head, line.Tip);
        _lines.Remove(line);
    }

    /// <summary>Nails without a line: removed, unless others lay over them, so that it is not known which of them it was.</summary>
    private void Missing()
    {
        foreach (Nail nail in Open)
        {
            string[] over = [.. layout.Nails.Where(n => was.ContainsKey(n.Mark) && !ReferenceEquals(n, nail) && Same(n, nail)).Select(n => n.Mark)];
            if (over.Length == 0)
                continue;
            notRead.Add($"{nail.Mark}: its line and {string.Join(", ", over)}'s lie over each other on the plan, which has lost its marks; one of them was changed, and which is not known: all are taken as they were");
            _known[nail] = (Point(was[nail.Mark].From), Point(was[nail.Mark].To));
        }
    }

    private bool LiesOverAnother(Nail nail) => layout.Nails.Any(n => !ReferenceEquals(n, nail) && was.ContainsKey(n.Mark) && Same(n, nail));

    private bool Same(Nail a, Nail b) => Near(Point(was[a.Mark].From), Point(was[b.Mark].From)) && Near(Point(was[a.Mark].To), Point(was[b.Mark].To));

    private double Away(Nail nail, DxfPoint head) => (Point(was[nail.Mark].From) - head).Length;

    private bool Near(DxfPoint a, DxfPoint b) => (a - b).Length <= tolerance;

    private (long, long) Cell(DxfPoint p) => ((long)Math.Floor(p.X / tolerance), (long)Math.Floor(p.Y / tolerance));

    private static DxfPoint Point(Point2 p) => new(p.X, p.Y);
}
