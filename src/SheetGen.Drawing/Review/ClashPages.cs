using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Review;

/// <summary>A small picture a clash (plan, and the true section through both nearest points), worst first; then the closest pairs that pass.</summary>
public static class ClashPages
{
    private const double PictureHeight = 62;
    private const int MostPictures = 200;

    public static SheetSet Compose(DrawingContext context, ReviewInfo info, IReadOnlyList<ClashPair> clashes, IReadOnlyList<ClashPair> closest)
    {
        var book = new ReviewBook(info, ReviewPaper.Upright(info.Unit), "Clash report");
        Primitive[] plan = [.. new PlanModel(context, default).Draw().Where(p => p.Layer != LayerRole.NailTrace && p.Layer != LayerRole.NailNoted && p.Layer != LayerRole.NailLimit)];
        book.Page("Clashes");
        Finding[] errors = [.. context.Report.Findings.Where(f => f.Severity == Severity.Error && f.Clear is null)];
        book.Paragraph($"{clashes.Count} {(clashes.Count == 1 ? "pair is" : "pairs are")} nearer than the rules ask{(errors.Length > 0 ? $"; {errors.Length} further errors have no pair (cover, edges): see findings" : "")}. Clear distances are edge to edge; negative: they run into each other.");
        foreach (ClashPair clash in clashes.Take(MostPictures))
            Draw(book, context, plan, clash);
        if (clashes.Count > MostPictures)
            book.Paragraph($"{clashes.Count - MostPictures} more clashes are in findings.json and the workbook.");
        book.Heading($"The {closest.Count} closest pairs that pass");
        book.Table([("Nail", 2), ("To", 3), ("Clear", 1.6), ("Required", 1.6), ("Depth", 1.6), ("May still turn, deg", 2)],
            closest.Select(p => (IReadOnlyList<string>)[p.Nail.Mark, p.Name, context.Print.Distance(p.Clear), context.Print.Distance(p.Required), context.Print.Distance(p.Depth), Printed.Number(p.Margin, 1)]));
        return book.Set();
    }

    private static void Draw(ReviewBook book, DrawingContext context, Primitive[] plan, ClashPair clash)
    {
        book.Need(PictureHeight + 32);
        Printed print = context.Print;
        NailClearance? margins = context.Report.Nails.GetValueOrDefault(clash.Nail.Mark);
        book.Heading($"{clash.Nail.Mark} and {clash.Name}");
        string depth = print.Distance(clash.Depth) + (clash.OtherDepth is double o ? $" along {clash.Nail.Mark}, {print.Distance(o)} along {clash.Name}" : $" along {clash.Nail.Mark}");
        book.Paragraph($"Clear {print.Distance(clash.Clear)}, required {print.Distance(clash.Required)}, at a depth of {depth}; margin {Printed.Number(clash.Margin, 1)} deg"
            + (margins is null ? "" : $" (of {clash.Nail.Mark} to anything: obstructions {Printed.Number(margins.MarginObstruction, 1)}, nails {Printed.Number(margins.MarginNail, 1)})"));
        foreach (Nail nail in clash.Other is null ? [clash.Nail] : new[] { clash.Nail, clash.Other })
            book.Paragraph($"{nail.Mark}: " + (nail.Reason?.Text is { Length: > 0 } text ? text : "at its grid place in the grid's direction"));
        double half = book.Width / 2 - 2, top = book.Y - 2;
        DrawPlan(book, context, plan, clash, new Box(book.Left, top - PictureHeight, book.Left + half, top));
        DrawSection(book, clash, new Box(book.Left + half + 4, top - PictureHeight, book.Left + book.Width, top), print);
        book.Space(PictureHeight + 6);
    }

    private static void DrawPlan(ReviewBook book, DrawingContext context, Primitive[] plan, ClashPair clash, Box frame)
    {
        Vector3D middle = (clash.OnNail + clash.OnOther) * 0.5;
        double reach = Math.Max(clash.Nail.Length * 0.45, 1);
        var picture = new ReviewPicture(book, frame, Box.At(new(middle.E, middle.N), 2 * reach, 2 * reach));
        foreach (Primitive p in plan)
        {
            switch (p)
            {
                case Line l: picture.Line(l.Layer, l.From, l.To); break;
                case Polyline l: picture.Path(l.Layer, Flatten.Path(l.Vertices, l.Closed)); break;
                case Circle c: picture.Circle(c.Layer, c.Center, c.Radius); break;
            }
        }
        foreach (Nail nail in context.Layout.Nails.Where(n => (n.Hole.Head - clash.Nail.Hole.Head).Length < 3 * clash.Nail.Length))
        {
            bool isOne = nail.Mark == clash.Nail.Mark || nail.Mark == clash.Other?.Mark;
            if (isOne || Math.Abs(nail.Elevation - clash.Nail.Elevation) < nail.Section.VerticalSpacing / 2)
                picture.Line(isOne ? LayerRole.NailNoted : LayerRole.NailTrace, At(nail.Hole.Head), At(nail.Hole.Tip));
            if (isOne)
                picture.Text(nail.Mark, At(nail.Hole.Head), up: 1, height: 1.8, right: 0.8);
        }
        picture.Dot(LayerRole.NailUnresolved, At(middle), 1.2);
        picture.Border();
        book.Write("plan", frame.Left + 1.5, frame.Bottom + 1.5, 1.8);
    }

    /// <summary>The plane through both nearest points that holds the nail's axis: every shape in it is cut, not projected.</summary>
    private static void DrawSection(ReviewBook book, ClashPair clash, Box frame, Printed print)
    {
        Hole hole = clash.Nail.Hole;
        Vector3D along = hole.Direction, across = clash.OnOther - hole.Head;
        across -= along * across.Dot(along);
        if (across.Length < 1e-6)
        {
            across = new Vector3D(0, 0, 1);
            across -= along * across.Dot(along);
        }
        across *= 1 / across.Length;
        Vector3D middle = (clash.OnNail + clash.OnOther) * 0.5;
        double half = Math.Max(3 * hole.Radius, 1.6 * Math.Abs(clash.Clear) + 4 * hole.Radius) * 1.4;
        Vector3D At(double x, double y) => middle + along * x + across * y;
        var picture = new ReviewPicture(book, frame, Box.At(default, 2 * half * frame.Width / frame.Height, 2 * half));
        double width = frame.Width / picture.Scale, height = frame.Height / picture.Scale;
        Contour(picture, LayerRole.NailNoted, (x, y) => ToHole(At(x, y), hole), width, height);
        if (clash.Other is { } other)
            Contour(picture, LayerRole.Nail, (x, y) => ToHole(At(x, y), other.Hole), width, height);
        else if (clash.Solid is { } solid)
            Contour(picture, LayerRole.Obstruction, (x, y) => solid.SignedDistance(At(x, y)) - (solid.IsSurface ? 0.02 * height : 0), width, height);
        Point2 InPlane(Vector3D p) => new((p - middle).Dot(along), (p - middle).Dot(across));
        picture.Line(LayerRole.Dimension, InPlane(clash.OnNail), InPlane(clash.OnOther));
        picture.Dot(LayerRole.NailUnresolved, InPlane(clash.OnNail), 0.6, true);
        picture.Dot(LayerRole.NailUnresolved, InPlane(clash.OnOther), 0.6, true);
        picture.Border();
        double bar = Lengths.IsFoot(print.Unit) ? 1 : 0.3;
        book.Add(new Line(LayerRole.Axis, new(frame.Left + 2, frame.Top - 2.5), new(frame.Left + 2 + bar * picture.Scale, frame.Top - 2.5)));
        book.Write(print.Short(bar), frame.Left + 3 + bar * picture.Scale, frame.Top - 3.2, 1.8);
        book.Write($"section through both nearest points, along {clash.Nail.Mark}", frame.Left + 1.5, frame.Bottom + 1.5, 1.8);
    }

    private static double ToHole(Vector3D p, in Hole hole)
    {
        double u = Math.Clamp((p - hole.Head).Dot(hole.Direction), 0, hole.Length);
        return (p - (hole.Head + hole.Direction * u)).Length - hole.RadiusAt(u);
    }

    /// <summary>The line where a distance is 0, cell by cell (marching squares).</summary>
    private static void Contour(ReviewPicture picture, LayerRole layer, Func<double, double, double> distance, double width, double height)
    {
        const int Across = 72, Up = 56;
        double dx = width / Across, dy = height / Up;
        double[,] d = new double[Across + 1, Up + 1];
        for (int i = 0; i <= Across; i++)
        {
            for (int j = 0; j <= Up; j++)
                d[i, j] = distance(i * dx - width / 2, j * dy - height / 2);
        }
        for (int i = 0; i < Across; i++)
        {
            for (int j = 0; j < Up; j++)
            {
                double x = i * dx - width / 2, y = j * dy - height / 2;
                (Point2 At, double D)[] corners = [(new(x, y), d[i, j]), (new(x + dx, y), d[i + 1, j]), (new(x + dx, y + dy), d[i + 1, j + 1]), (new(x, y + dy), d[i, j + 1])];
                var cuts = new List<Point2>();
                for (int k = 0; k < 4; k++)
                {
                    (Point2 a, double da) = corners[k];
                    (Point2 b, double db) = corners[(k + 1) % 4];
                    if (da < 0 != db < 0)
                        cuts.Add(a + (b - a) * (da / (da - db)));
                }
                for (int k = 0; k + 1 < cuts.Count; k += 2)
                    picture.Line(layer, cuts[k], cuts[k + 1]);
            }
        }
    }

    private static Point2 At(Vector3D p) => new(p.E, p.N);
}
