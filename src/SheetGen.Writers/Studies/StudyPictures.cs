using System.Globalization;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Studies;
using SheetGen.Writers.Picture;
using SheetGen.Writers.Register;

namespace SheetGen.Writers.Studies;

/// <summary>
/// Two pictures of a study: length of nail against turned nails, and a small chart for each varied key and figure. A full disc has no unresolved nail,
/// an open one has some, a square is the project file as it is; the line joins the variants that no other beats in both.
/// </summary>
public sealed class StudyPictures(StudyTables study)
{
    private const double Small = 1.9, Body = 2.3, Dot = 1.1;
    private const int MostNumbers = 12;

    private readonly VariantState[] _shown = [.. study.States.Where(s => s.Figures is not null)];

    public static string TradeOffCaption(StudyTables study) =>
        $"Length of nail ({study.Unit}) against nails noted and unresolved. Full disc: no unresolved nail; open: some; square: as given; the line joins the variants that no other beats in both.";

    public const string SmallMultiplesCaption = "Each varied key against length, noted, unresolved and effort: a mark a variant, a bar at the mean.";

    /// <summary>A picture on a paper of its own, as SVG.</summary>
    public static byte[] Svg(string title, Func<Box, IEnumerable<Primitive>> picture, bool isMetric, double width, double height)
    {
        SheetSet set = RegisterPages.Make(title, "", "", [], isMetric, "");
        Sheet sheet = set.Sheets[0] with { Width = width, Height = height, Paper = [.. picture(new Box(6, 6, width - 6, height - 6))] };
        using var stream = new MemoryStream();
        SvgPicture.Write(set with { Sheets = [sheet] }, stream);
        return stream.ToArray();
    }

    /// <summary>Length of nail across, noted and unresolved nails up.</summary>
    public IEnumerable<Primitive> TradeOff(Box box)
    {
        var plot = new Box(box.Left + 16, box.Bottom + 14, box.Right - 6, box.Top - 10);
        yield return Words(box.Left, box.Top - 4, 3, "TRADE-OFF: LENGTH OF NAIL AGAINST TURNED NAILS", HorizontalAlign.Left);
        if (_shown.Length == 0)
            yield break;
        var x = new Axis(_shown.Min(StudyTables.Length), _shown.Max(StudyTables.Length), plot.Left, plot.Right, false);
        var y = new Axis(0, _shown.Max(StudyTables.Turned), plot.Bottom, plot.Top, true);
        foreach (Primitive p in Frame(plot, x, y, true))
            yield return p;
        yield return Words(plot.Center.X, box.Bottom + 3, Body, $"PAY LENGTH OF NAIL, {study.Unit.ToUpperInvariant()}", HorizontalAlign.Center);
        yield return new Text(LayerRole.TableText, TextRole.Table, new Point2(box.Left + 4, plot.Center.Y), Body, "NOTED + UNRESOLVED NAILS", HorizontalAlign.Center, 90);
        VariantState[] front = [.. study.Best.Where(s => study.Front.Contains(s.Number)).OrderBy(StudyTables.Length)];
        if (front.Select(At).Distinct().ToArray() is { Length: > 1 } line)
            yield return Polyline.Of(LayerRole.Axis, line);
        foreach (VariantState s in _shown)
        {
            foreach (Primitive p in Mark(s, At(s)))
                yield return p;
        }
        // Variants at one place share a number's room: the best of them is named.
        foreach (IGrouping<Point2, VariantState> place in study.Best.Where((s, i) => i < MostNumbers || study.Front.Contains(s.Number)).GroupBy(At))
        {
            int more = _shown.Count(s => s.Number > 0 && At(s) == place.Key) - 1;
            string text = place.First().Number.ToString(CultureInfo.InvariantCulture) + (more > 0 ? FormattableString.Invariant($" +{more}") : "");
            bool isRight = place.Key.X > plot.Right - 12;
            yield return Words(place.Key.X + (isRight ? -1.8 : 1.8), place.Key.Y + 1.2, Small, text, isRight ? HorizontalAlign.Right : HorizontalAlign.Left);
        }

        Point2 At(VariantState s) => new(Math.Round(x.At(StudyTables.Length(s)), 3), Math.Round(y.At(StudyTables.Turned(s)), 3));
    }

    /// <summary>A column a key, a row a figure.</summary>
    /// <param name="choices">Values of each key, in the study's order.</param>
    public IEnumerable<Primitive> SmallMultiples(Box box, IReadOnlyList<IReadOnlyList<string>> choices)
    {
        (string Head, Func<VariantState, double> Of, bool IsCount)[] figures =
        [
            ($"LENGTH, {study.Unit.ToUpperInvariant()}", StudyTables.Length, false), ("NOTED", s => s.Figures!.Noted, true),
            ("UNRESOLVED", s => s.Figures!.Unresolved, true), ("EFFORT", s => s.Figures!.Effort, false),
        ];
        yield return Words(box.Left, box.Top - 4, 3, "EACH KEY AGAINST EACH FIGURE", HorizontalAlign.Left);
        VariantState[] varied = [.. _shown.Where(s => s.Number > 0)];
        if (varied.Length == 0)
            yield break;
        double width = (box.Width - 8) / study.Keys.Count, height = (box.Height - 16) / figures.Length;
        for (int f = 0; f < figures.Length; f++)
        {
            (string head, Func<VariantState, double> of, bool isCount) = figures[f];
            double top = box.Top - 10 - f * height;
            yield return new Text(LayerRole.TableText, TextRole.Table, new Point2(box.Left + 3, top - height / 2), Small, head, HorizontalAlign.Center, 90);
            for (int k = 0; k < study.Keys.Count; k++)
            {
                var plot = new Box(box.Left + 8 + k * width + 12, top - height + 8, box.Left + 8 + (k + 1) * width - 3, top - 3);
                var y = new Axis(isCount ? 0 : varied.Min(of), varied.Max(of), plot.Bottom, plot.Top, isCount);
                foreach (Primitive p in Frame(plot, null, y, false))
                    yield return p;
                for (int c = 0; c < choices[k].Count; c++)
                {
                    double at = plot.Left + plot.Width * (c + 0.5) / choices[k].Count;
                    if (choices[k].Count <= 12 || c % 2 == 0)
                        yield return Words(at, plot.Bottom - 3, Small, Short(choices[k][c], width / choices[k].Count), HorizontalAlign.Center);
                    VariantState[] here = [.. varied.Where(s => s.Values[k] == choices[k][c])];
                    foreach (Point2 place in here.Select(s => new Point2(at, Math.Round(y.At(of(s)), 2))).Distinct())
                        yield return new Circle(LayerRole.Label, place, 0.7);
                    if (here.Length > 0)
                        yield return new Line(LayerRole.Wall, new Point2(at - 2.2, y.At(here.Average(of))), new Point2(at + 2.2, y.At(here.Average(of))));
                }
                if (f == figures.Length - 1)
                    yield return Words(plot.Center.X, plot.Bottom - 6.5, Small, study.Keys[k], HorizontalAlign.Center);
            }
        }
    }

    private static string Short(string text, double room)
    {
        int most = Math.Max(3, (int)(room / 1.3));
        return text.Length <= most ? text : text[..(most - 1)] + "~";
    }

    private static IEnumerable<Primitive> Mark(VariantState state, Point2 at)
    {
        if (state.Number == 0)
            yield return Polyline.Rectangle(LayerRole.Wall, Box.At(at, 3.4, 3.4));
        else if (state.Figures!.Unresolved > 0)
            yield return new Circle(LayerRole.Label, at, Dot);
        else
            yield return Fill.Disc(LayerRole.Label, at, Dot);
    }

    private static IEnumerable<Primitive> Frame(Box plot, Axis? x, Axis y, bool grid)
    {
        yield return new Line(LayerRole.Table, new(plot.Left, plot.Bottom), new(plot.Right, plot.Bottom));
        yield return new Line(LayerRole.Table, new(plot.Left, plot.Bottom), new(plot.Left, plot.Top));
        foreach (double tick in y.Ticks)
        {
            yield return new Line(LayerRole.Table, new(plot.Left - 1, y.At(tick)), new(plot.Left, y.At(tick)));
            if (grid)
                yield return new Line(LayerRole.Axis, new(plot.Left, y.At(tick)), new(plot.Right, y.At(tick)));
            yield return Words(plot.Left - 1.6, y.At(tick) - Small / 2, Small, Number(tick), HorizontalAlign.Right);
        }
        foreach (double tick in x?.Ticks ?? [])
        {
            yield return new Line(LayerRole.Table, new(x!.At(tick), plot.Bottom - 1), new(x.At(tick), plot.Bottom));
            yield return Words(x.At(tick), plot.Bottom - 4, Small, Number(tick), HorizontalAlign.Center);
        }
    }

    private static string Number(double value) => value.ToString("#,##0.##", CultureInfo.InvariantCulture);

    private static Text Words(double x, double y, double height, string text, HorizontalAlign align) =>
        new(LayerRole.TableText, TextRole.Table, new Point2(x, y), height, text, align);

    /// <summary>An axis with some ticks at round numbers, and a little room beyond its ends.</summary>
    private sealed class Axis
    {
        private readonly double _from;
        private readonly double _perUnit;
        private readonly double _start;

        public Axis(double least, double most, double start, double end, bool isCount)
        {
            double span = Math.Max(most - least, isCount ? 1 : Math.Max(1e-9, Math.Abs(most) * 0.02));
            double step = Math.Pow(10, Math.Floor(Math.Log10(span / 3)));
            step *= span / step > 15 ? 5 : span / step > 6 ? 2 : 1;
            step = isCount ? Math.Max(1, step) : step;
            _from = isCount ? 0 : least - span * 0.06;
            _start = start;
            _perUnit = (end - start) / (most + span * 0.06 - _from);
            double first = Math.Ceiling(_from / step - 1e-9) * step;
            Ticks = [.. Enumerable.Range(0, 12).Select(i => Math.Round(first + i * step, 9)).Where(t => t <= most + span * 0.06)];
        }

        public IReadOnlyList<double> Ticks { get; }

        public double At(double value) => _start + (value - _from) * _perUnit;
    }
}
