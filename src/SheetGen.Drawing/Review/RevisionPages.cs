using System.Globalization;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Review;

/// <summary>What changed between two states, as pages: a revision table for the title block, elevations with clouds, and lists.</summary>
public static class RevisionPages
{
    private const double LeastColumn = 11, NailSize = 1;

    /// <param name="walls">Walls of the new state, for their outlines; empty where only nails are known.</param>
    public static SheetSet Compose(RevisionDifference d, ReviewInfo info, IReadOnlyList<Wall> walls)
    {
        var book = new ReviewBook(info, ReviewPaper.Lying(info.Unit), "Changes");
        book.Page("Summary");
        book.Paragraph($"Old: {d.Old.Name}    New: {d.New.Name}    Lengths in {Lengths.Symbol(d.Unit)}.");
        foreach (string lacking in d.NotCompared)
            book.Paragraph("Not compared: " + lacking);
        if (d.IsEmpty)
        {
            book.Heading("Nothing changed");
            return book.Set();
        }
        book.Heading("Revision table for the title block");
        book.Table([("No.", 1), ("Date", 2), ("Description", 12)], RevisionRows(d));
        foreach (string wall in d.Nails.Select(n => n.Wall).Distinct())
            Elevation(book, d, wall, walls.FirstOrDefault(w => w.Name == wall));
        Lists(book, d);
        return book.Set();
    }

    /// <summary>Rows for the revision table: number, date, what changed; one for each kind of change.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> RevisionRows(RevisionDifference d)
    {
        string number = d.New.Revision.Length > 0 ? d.New.Revision : "1", date = d.New.Date;
        var rows = new List<IReadOnlyList<string>>();
        void Row(NailChangeKind kind, string word)
        {
            string[] marks = [.. d.Nails.Where(n => n.Kind == kind).Select(n => n.Mark)];
            if (marks.Length > 0)
                rows.Add([number, date, $"{(marks.Length == 1 ? "NAIL" : "NAILS")} {string.Join(", ", marks.Take(12))}{(marks.Length > 12 ? $" AND {marks.Length - 12} MORE" : "")} {word}"]);
        }
        Row(NailChangeKind.Changed, "REVISED");
        Row(NailChangeKind.Added, "ADDED");
        Row(NailChangeKind.Removed, "DELETED");
        string[] items = [.. d.Items.Select(i => i.Number)];
        if (items.Length > 0)
            rows.Add([number, date, $"QUANTITIES OF {(items.Length == 1 ? "ITEM" : "ITEMS")} {string.Join(", ", items)} REVISED"]);
        return rows;
    }

    /// <summary>A wall's nails as seen from the front, changed ones clouded, cut into pages so that columns can be told apart.</summary>
    private static void Elevation(ReviewBook book, RevisionDifference d, string name, Wall? wall)
    {
        RevisionNail[] nails = [.. d.New.Nails.Where(n => n.Wall == name)];
        NailChange[] changes = [.. d.Nails.Where(n => n.Wall == name)];
        double factor = Lengths.MetresPer(d.Old.Unit ?? d.Unit) / Lengths.MetresPer(d.Unit);
        RevisionNail New(RevisionNail old) => old with { Station = old.Station * factor, Elevation = old.Elevation * factor };
        int sign = wall is null || wall.Side > 0 ? -1 : 1;
        RevisionNail[] all = [.. nails, .. changes.Where(c => c.Before is not null).Select(c => New(c.Before!))];
        double spacing = wall?.Sections.Min(s => s.HorizontalSpacing) ?? (Lengths.IsFoot(d.Unit) ? 4 : 1.2);
        double start = wall?.StationOf(wall.Start) ?? all.Min(n => n.Station) - spacing, end = wall?.StationOf(wall.End) ?? all.Max(n => n.Station) + spacing;
        double low = all.Min(n => n.Elevation) - spacing, high = all.Max(n => n.Elevation) + spacing;
        if (wall is not null)
            (low, high) = (Math.Min(low, wall.Bottom.Points.Min(p => p.Elevation)), Math.Max(high, wall.Top.Points.Max(p => p.Elevation)));
        double most = book.Width * spacing / LeastColumn;
        int pages = Math.Max(1, (int)Math.Ceiling((end - start) / most));
        for (int page = 0; page < pages; page++)
        {
            double from = start + (end - start) * page / pages, to = start + (end - start) * (page + 1) / pages;
            if (!changes.Any(c => In(c.After ?? New(c.Before!), from, to) || (c.Before is { } b && In(New(b), from, to))))
                continue;
            string stretch = $"{d.PrintedStation(name, from)} to {d.PrintedStation(name, to)}";
            book.Page($"{name}, {stretch}");
            book.Heading($"{name}, elevation from the front, {stretch}");
            var frame = new Box(book.Left, book.Y - book.Height * 0.72, book.Left + book.Width, book.Y - 2);
            var picture = new ReviewPicture(book, frame, Box.Around([new(sign * from, low), new(sign * to, high)]));
            if (wall is not null)
            {
                picture.Path(LayerRole.Wall, Outline(wall.Top, wall, from, to, sign));
                picture.Path(LayerRole.Wall, Outline(wall.Bottom, wall, from, to, sign));
            }
            foreach (RevisionNail n in nails.Where(n => In(n, from, to)))
                picture.Dot(LayerRole.Nail, new(sign * n.Station, n.Elevation), NailSize);
            foreach (NailChange change in changes)
                Cloud(book, picture, change, New, sign, from, to);
            book.Space(book.Height * 0.74);
            book.Paragraph("o nail as it is now    x nail as it was    cloud: changed, added or removed. Stations along the layout line; not developed.");
        }
    }

    private static bool In(RevisionNail n, double from, double to) => n.Station >= from && n.Station <= to;

    private static IEnumerable<Point2> Outline(Profile profile, Wall wall, double from, double to, int sign)
    {
        double a = wall.LayoutLine.AlongOf(from), b = wall.LayoutLine.AlongOf(to);
        yield return new(sign * from, profile.At(a));
        foreach (ProfilePoint p in profile.Points.Where(p => p.Along > a && p.Along < b))
            yield return new(sign * wall.StationOf(p.Along), p.Elevation);
        yield return new(sign * to, profile.Before(b));
    }

    private static void Cloud(ReviewBook book, ReviewPicture picture, NailChange change, Func<RevisionNail, RevisionNail> @new, int sign, double from, double to)
    {
        var places = new List<Point2>();
        if (change.After is { } after && In(after, from, to))
            places.Add(picture.At(new(sign * after.Station, after.Elevation)));
        if (change.Before is { } before && In(@new(before), from, to))
        {
            Point2 was = picture.At(new(sign * @new(before).Station, before.Elevation * (@new(before).Elevation / (before.Elevation == 0 ? 1 : before.Elevation))));
            if (change.After is null || (places.Count > 0 && (places[0] - was).Length > NailSize / 2))
            {
                book.Add(new Line(LayerRole.NailUnresolved, was + new Point2(-NailSize, -NailSize), was + new Point2(NailSize, NailSize)));
                book.Add(new Line(LayerRole.NailUnresolved, was + new Point2(-NailSize, NailSize), was + new Point2(NailSize, -NailSize)));
            }
            places.Add(was);
        }
        if (places.Count == 0)
            return;
        Box box = Box.Around(places).Grown(2.6);
        book.Add(CloudAround(box));
        book.Write(change.Mark, box.Center.X, box.Top + 1.6, 1.8, align: HorizontalAlign.Center);
    }

    /// <summary>A revision cloud: arcs around a box that bulge outward.</summary>
    public static Polyline CloudAround(Box box)
    {
        const double Arc = 2.4, Bulge = -0.5;
        var vertices = new List<Vertex>();
        Point2[] corners = [new(box.Left, box.Bottom), new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom)];
        for (int c = 0; c < 4; c++)
        {
            Point2 a = corners[c], b = corners[(c + 1) % 4];
            int arcs = Math.Max(1, (int)Math.Round((b - a).Length / Arc));
            for (int i = 0; i < arcs; i++)
                vertices.Add(new Vertex(a + (b - a) * ((double)i / arcs), Bulge));
        }
        return new Polyline(LayerRole.Callout, vertices, true);
    }

    private static void Lists(ReviewBook book, RevisionDifference d)
    {
        book.Page("Nails");
        book.Heading("Nails");
        book.Table([("Mark", 2), ("Wall", 2), ("Change", 1.5), ("What", 12)], d.Nails.Select(n => (IReadOnlyList<string>)[n.Mark, n.Wall, n.Kind.ToString().ToLowerInvariant(), n.What]));
        if (d.Findings.Count > 0)
        {
            book.Heading("Findings");
            book.Table([("Change", 1.2), ("Severity", 1.2), ("Code", 2), ("Finding", 12)], d.Findings.Select(f =>
            {
                RevisionFinding shown = (f.After ?? f.Before)!;
                return (IReadOnlyList<string>)[f.Before is null ? "new" : f.After is null ? "gone" : "changed", ResultWords.Of(shown.Severity), shown.Code, shown.Message];
            }));
        }
        (string, double)[] heads = [("What", 6), ("Unit", 1), ("Old", 2), ("New", 2), ("Difference", 2)];
        if (d.Amounts.Count > 0)
        {
            book.Heading("Quantities");
            book.Table(heads, d.Amounts.Select(a => (IReadOnlyList<string>)[
                (a.Wall.Length == 0 ? "" : a.Wall + (a.Stage.Length == 0 ? "" : ", " + a.Stage) + ": ") + a.Text, a.Unit, Amount(a.Before), Amount(a.After), Signed(a.Difference)]));
        }
        if (d.Items.Count > 0)
        {
            book.Heading("Bid items");
            book.Table(heads, d.Items.Select(i => (IReadOnlyList<string>)[$"{i.Number} {i.Description}", i.Unit, Amount(i.Before), Amount(i.After), Signed((i.After ?? 0) - (i.Before ?? 0))]));
        }
    }

    private static string Amount(double? amount) => amount is { } a ? PlainNumber.Text($"{a:#,##0.##}") : "none";

    private static string Signed(double amount) => amount.ToString("+#,##0.##;-#,##0.##;0", CultureInfo.InvariantCulture);
}
