using System.Globalization;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Review;

/// <summary>A page a nail for inspector and driller: its figures, its room to turn as a picture, what is near.</summary>
public static class WindowPages
{
    private const int MostNear = 12;

    /// <param name="windows">The nails in the order of the pages.</param>
    /// <param name="report">Clear distances and margins of the nails.</param>
    public static SheetSet Compose(IEnumerable<TurnWindow> windows, ReviewInfo info, ClearanceReport report)
    {
        var book = new ReviewBook(info, ReviewPaper.Upright(info.Unit), "Room to turn");
        foreach (TurnWindow window in windows)
            Page(book, window, report.Nails.GetValueOrDefault(window.Nail.Mark));
        return book.Set();
    }

    private static void Page(ReviewBook book, TurnWindow w, NailClearance? clearance)
    {
        Nail n = w.Nail;
        string unit = Lengths.Symbol(book.Info.Unit);
        book.Page(n.Mark);
        book.Heading($"Nail {n.Mark}   {n.Wall.Name}, section {n.Section.Name}, row {n.Row.Name}");
        book.Table([("Station", 3), ("Elevation", 2), ("Splay", 4), ("Inclination", 2), ("Length", 2), ("Bar", 2), ("Hole", 2), ("State", 3)],
            [[n.Wall.TextOf(n.Station, book.Info.Unit), Number(n.Elevation, Lengths.Decimals(book.Info.Unit)), Side(n, n.Splay), Number(n.Inclination, 2) + " deg", $"{Number(n.Length, 2)} {unit}",
                n.Bar.ToString(), $"{Number(n.HoleDiameter, 3)} {unit}", n.Status == NailStatus.Unresolved ? "DO NOT DRILL" : n.Status.ToString().ToLowerInvariant()]]);
        var frame = new Box(book.Left + 14, book.Y - 118, book.Left + book.Width - 4, book.Y - 10);
        Picture(book, w, frame);
        book.Space(132);
        book.Paragraph("white: free   hatched: nearer than the rule asks   grey: blocked   cross: the nail's direction   heavy square: field tolerance about the grid's direction");
        foreach (string line in Lines(w, clearance, book.Info.Unit).Skip(1))
            book.Paragraph(line);
        book.Space(3);
        book.Paragraph("Turned about its head with this length; every other nail as designed. A direction outside the square needs the engineer's note on the plans.");
        book.Space(4);
        book.Paragraph("Drilled: date ____________   splay ________   inclination ________   length ________   initials ________");
    }

    private static void Picture(ReviewBook book, TurnWindow w, Box frame)
    {
        double[] splays = [.. w.Splays], inclinations = [.. w.Inclinations];
        // Seen from the front: what lies to the left is to the left, steeper is lower.
        int sign = w.Nail.Wall.Side > 0 ? -1 : 1;
        double step = Math.Max(1e-6, splays.Length > 1 ? (splays[^1] - splays[0]) / (splays.Length - 1) : 1);
        double Side(int i, double[] all, int to) => to > 0 ? (i + 1 < all.Length ? (all[i] + all[i + 1]) / 2 : all[i] + step / 2) : i > 0 ? (all[i - 1] + all[i]) / 2 : all[i] - step / 2;
        double left = splays[0] - step / 2, right = splays[^1] + step / 2, top = inclinations[0] - step / 2, bottom = inclinations[^1] + step / 2;
        double X(double splay) => frame.Center.X + sign * (splay - (left + right) / 2) * frame.Width / (right - left);
        double Y(double inclination) => frame.Top - (inclination - top) * frame.Height / (bottom - top);
        for (int i = 0; i < inclinations.Length; i++)
        {
            for (int a = 0; a < splays.Length;)
            {
                TurnState state = w.At(i, a).State;
                int end = a;
                while (end + 1 < splays.Length && w.At(i, end + 1).State == state)
                    end++;
                if (state != TurnState.Free)
                {
                    double x0 = X(Side(a, splays, -1)), x1 = X(Side(end, splays, 1)), y0 = Y(Side(i, inclinations, -1)), y1 = Y(Side(i, inclinations, 1));
                    Fill fill = Fill.Of(LayerRole.Fill, new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1));
                    book.Add(state == TurnState.Blocked ? fill : fill with { Spacing = 1.4, Angle = 45 });
                }
                a = end + 1;
            }
        }
        book.Add(Polyline.Rectangle(LayerRole.Border, frame));
        double t = w.FieldTolerance, straight = w.Nail.Section.Inclination;
        book.Add(Polyline.Rectangle(LayerRole.Wall, Box.Around([new(X(-t), Y(straight - t)), new(X(t), Y(straight + t))])));
        var now = new Point2(X(w.Nail.Splay), Y(w.Nail.Inclination));
        book.Add(new Line(LayerRole.NailNoted, now - new Point2(2.5, 0), now + new Point2(2.5, 0)));
        book.Add(new Line(LayerRole.NailNoted, now - new Point2(0, 2.5), now + new Point2(0, 2.5)));
        foreach (double a in splays.Where(s => Math.Abs(s / 10 - Math.Round(s / 10)) < 1e-6))
        {
            book.Add(new Line(LayerRole.Axis, new(X(a), frame.Bottom), new(X(a), frame.Bottom - 1.5)));
            book.Write(Number(Math.Abs(a), 0), X(a), frame.Bottom - 4.5, 2, align: HorizontalAlign.Center);
        }
        foreach (double i in inclinations.Where(s => Math.Abs(s / 5 - Math.Round(s / 5)) < 1e-6))
        {
            book.Add(new Line(LayerRole.Axis, new(frame.Left, Y(i)), new(frame.Left - 1.5, Y(i))));
            book.Write(Number(i, 0), frame.Left - 2.5, Y(i) - 1, 2, align: HorizontalAlign.Right);
        }
        book.Write($"LEFT ({(sign < 0 ? "up" : "down")}-station)", frame.Left, frame.Bottom - 9);
        book.Write("splay, degrees, as seen from the front", frame.Center.X, frame.Bottom - 9, align: HorizontalAlign.Center);
        book.Write($"RIGHT ({(sign < 0 ? "down" : "up")}-station)", frame.Right, frame.Bottom - 9, align: HorizontalAlign.Right);
        book.Write("inclination, degrees below horizontal", frame.Left - 12, frame.Top + 3);
    }

    /// <summary>What the picture says, in sentences; the first names the nail.</summary>
    public static IEnumerable<string> Lines(TurnWindow w, NailClearance? clearance, LengthUnit unit)
    {
        Nail n = w.Nail;
        string symbol = Lengths.Symbol(unit);
        yield return $"{n.Mark}: {n.Wall.Name}, {n.Wall.TextOf(n.Station, unit)}, elevation {Number(n.Elevation, Lengths.Decimals(unit))}, {Side(n, n.Splay)}, {Number(n.Inclination, 2)} deg down, {Number(n.Length, 2)} {symbol}";
        yield return $"Now: {State(w.Now, unit)}" + (clearance is null || !double.IsFinite(clearance.LeastClear) ? "" :
            $"; nearest {clearance.Nearest}, {Number(clearance.LeastClear, 2)} {symbol} clear; may stray {Number(clearance.MarginNail, 1)} deg before it meets a nail, {Number(clearance.MarginObstruction, 1)} deg before an obstruction");
        double t = w.FieldTolerance;
        TurnCell[] square = [.. w.Cells.Where(c => Math.Abs(c.Splay) <= t + 1e-9 && Math.Abs(c.Inclination - n.Section.Inclination) <= t + 1e-9)];
        yield return string.Create(CultureInfo.InvariantCulture, $"Free directions: {w.FreeCount} of {w.Cells.Count}; within the field tolerance {square.Count(c => c.State == TurnState.Free)} of {square.Length}");
        yield return "Nearest free: " + string.Join("; ", new[] { ("up-station", w.UpStation), ("down-station", w.DownStation), ("flatter", w.Flatter), ("steeper", w.Steeper) }
            .Select(s => s.Item2 is { } c ? $"{s.Item1} {Side(n, c.Splay)} at {Number(c.Inclination, 2)} deg" : $"{s.Item1} none"));
        (string Name, int Directions)[] way = [.. w.InTheWay];
        if (way.Length > 0)
            yield return "In the way: " + string.Join(", ", way.Take(MostNear).Select(o => $"{o.Name} ({o.Directions})")) + (way.Length > MostNear ? $" and {way.Length - MostNear} more" : "");
        if (w.Shorter.Count > 0)
            yield return "A shorter nail would open: " + string.Join("; ", w.Shorter.Select(s => $"{Number(s.Length, 2)} {symbol}: {s.Free} directions{(s.IsStandingFree && w.Now.State != TurnState.Free ? ", the present one among them" : "")}"));
        else if (w.FreeCount < w.Cells.Count)
            yield return "A shorter nail, down to half the length, opens little or nothing";
    }

    /// <summary>The picture in letters: . free, + near, # blocked, O the nail's direction; as seen from the front, steeper lower.</summary>
    public static IEnumerable<string> Map(TurnWindow w)
    {
        bool mirrored = w.Nail.Wall.Side > 0;
        int[] order = [.. Enumerable.Range(0, w.Splays.Count)];
        if (mirrored)
            Array.Reverse(order);
        double straight = w.Nail.Section.Inclination, t = w.FieldTolerance + 1e-9;
        for (int i = 0; i < w.Inclinations.Count; i++)
        {
            yield return Number(w.Inclinations[i], 1).PadLeft(6) + " " + string.Concat(order.Select(a =>
            {
                TurnCell c = w.At(i, a);
                bool inside = Math.Abs(c.Splay) <= t && Math.Abs(c.Inclination - straight) <= t;
                return Math.Abs(c.Splay - w.Nail.Splay) < 1e-6 && Math.Abs(c.Inclination - w.Nail.Inclination) < 1e-6 ? 'O'
                    : c.State switch { TurnState.Free => inside ? '.' : ',', TurnState.Near => '+', _ => '#' };
            }));
        }
        yield return $"       {(mirrored ? "up" : "down")}-station (LEFT) {Number(Math.Abs(w.Splays[order[0]]), 0)} deg ... {Number(Math.Abs(w.Splays[order[^1]]), 0)} deg {(mirrored ? "down" : "up")}-station (RIGHT)";
        yield return "       . free, within the field tolerance   , free beyond it   + nearer than the rule asks   # blocked   O the nail's direction";
    }

    private static string State(TurnCell c, LengthUnit unit) => c.State switch
    {
        TurnState.Free => "free",
        TurnState.Near => $"{Number(c.Clear, 2)} {Lengths.Symbol(unit)} from {c.Other}, under the rule's clearance",
        _ => $"runs into {c.Other}",
    };

    private static string Side(Nail n, double splay) => splay == 0 ? "no splay" : $"{Number(Math.Abs(splay), 2)} deg {Sides.Of(n.Wall, splay)} ({(splay > 0 ? "up" : "down")}-station)";

    private static string Number(double value, int decimals) => Printed.Number(value, decimals);
}
