using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>
/// Elevations of the openings with the nails around them, seen as the wall's elevation is: x the distance along the face from the
/// opening's lower left corner, y the height above it.
/// </summary>
internal static class OpeningDetails
{
    private const double Left = Math.PI, Right = 0, Up = Math.PI / 2, Down = -Math.PI / 2;

    /// <summary>Inches that stand in for what the project does not give; what has them is dashed.</summary>
    private const double AssumedTrim = 3;

    public static IEnumerable<DetailView> All(DrawingContext context, DetailData data)
    {
        foreach (Wall wall in data.Project.Walls)
        {
            foreach (Opening opening in wall.Openings)
            {
                var place = new OpeningPlace(context, wall, opening);
                double room = Lengths.FromInches(6, data.Print.Unit);
                Box extent = Box.Around([new(-4 * room, -4 * room), new(place.Width + 4 * room, place.Height + 4 * room), .. place.Nails.Select(n => new Point2(n.X, n.Y))]).Grown(room);
                yield return new(DetailKind.Opening, [opening], context.Say(Phrase.DetailOpening, opening.Name.ToUpperInvariant()), extent, pen => Draw(context, data, place, pen)) { Beside = 12, Above = 7 };
            }
        }
    }

    private static void Draw(DrawingContext context, DetailData data, OpeningPlace place, DetailPen pen)
    {
        (double w, double h, Opening o) = (place.Width, place.Height, place.Opening);
        pen.Rectangle(true, 0, 0, w, h);
        pen.Line(0, 0, w, h);
        pen.Line(0, h, w, 0);
        double trim = pen.In(AssumedTrim), beyond = pen.In(12);
        foreach (double d in new[] { trim })
        {
            pen.Line(-d, -beyond, -d, h + beyond, LayerRole.DetailHidden);
            pen.Line(w + d, -beyond, w + d, h + beyond, LayerRole.DetailHidden);
            pen.Line(-beyond, -d, w + beyond, -d, LayerRole.DetailHidden);
            pen.Line(-beyond, h + d, w + beyond, h + d, LayerRole.DetailHidden);
        }
        foreach ((Nail nail, double x, double y) in place.Nails)
        {
            pen.Ring(true, x, y, nail.HoleDiameter / 2);
            pen.Disc(x, y, data.DiameterOf(nail.Bar) / 2);
        }
        pen.Long((0, 0), (w, 0), -1);
        pen.Long((0, 0), (0, h), 1);
        Distances(place, pen);
        foreach ((Nail nail, double x, double y) in place.Nails)
            pen.Note(x, y, x < 0 ? Left : x > w ? Right : y > h ? Up : Down, nail.Mark);
        string edge = data.Rule("edge_min", data.Print.Short(data.Project.Rules.EdgeMin));
        pen.Note(w, h * 0.5, 0.2, context.Say(Phrase.OpeningSizeAndHeights, data.Print.Short(w), data.Print.Short(h), data.Print.Elevation(o.Bottom), data.Print.Elevation(o.Top)),
            context.Say(Phrase.OpeningEdge, edge));
        pen.Note(w + trim, -beyond * 0.7, -0.4, context.Say(Phrase.OpeningBars, data.Fact("trim_bars")), context.Say(Phrase.OpeningFraming));
    }

    /// <summary>From each side of the opening to the nail that stands nearest to it there.</summary>
    private static void Distances(OpeningPlace place, DetailPen pen)
    {
        (double w, double h) = (place.Width, place.Height);
        (Nail, double X, double Y)[] beside = [.. place.Nails.Where(n => n.Y >= 0 && n.Y <= h)], over = [.. place.Nails.Where(n => n.X >= 0 && n.X <= w)];
        if (beside.Where(n => n.X < 0).OrderByDescending(n => n.X).Take(1).ToArray() is [(_, double lx, double ly)])
            pen.Long((lx, ly), (0, ly), 1);
        if (beside.Where(n => n.X > w).OrderBy(n => n.X).Take(1).ToArray() is [(_, double rx, double ry)])
            pen.Long((w, ry), (rx, ry), 1);
        if (over.Where(n => n.Y > h).OrderBy(n => n.Y).Take(1).ToArray() is [(_, double ux, double uy)])
            pen.Long((ux, h), (ux, uy), 1);
        if (over.Where(n => n.Y < 0).OrderByDescending(n => n.Y).Take(1).ToArray() is [(_, double dx, double dy)])
            pen.Long((dx, dy), (dx, 0), 1);
    }
}

/// <summary>An opening with the nails around it, about its lower left corner as the elevation shows it.</summary>
internal sealed class OpeningPlace
{
    public OpeningPlace(DrawingContext context, Wall wall, Opening opening)
    {
        Opening = opening;
        var face = new Face(wall);
        double middle = (opening.Bottom + opening.Top) / 2, start = Sides.DrawingSign(wall, context.Project.Sheets.FromBehind) > 0 ? opening.Start : opening.End;
        int sign = Sides.DrawingSign(wall, context.Project.Sheets.FromBehind) > 0 ? 1 : -1;
        Width = face.Distance(opening.Start, opening.End, middle);
        (Nail Nail, double X, double Y)[] all = [.. context.NailsOf(wall).Where(n => n.Kind != NailKind.Verification && face.LegAt(n.Along) == face.LegAt((opening.Start + opening.End) / 2))
            .Select(n => (n, sign * face.SignedDistance(start, n.Along, middle), n.Elevation - opening.Bottom))];
        double aside = wall.Sections.Max(s => s.HorizontalSpacing) * 1.05, above = wall.Sections.Max(s => s.VerticalSpacing) * 1.05;
        Nails = [.. all.Where(n => n.X > -aside && n.X < Width + aside && n.Y > -above && n.Y < Height + above)];
    }

    public Opening Opening { get; }

    /// <summary>Along the face at mid-height.</summary>
    public double Width { get; }

    public double Height => Opening.Top - Opening.Bottom;

    /// <summary>Within about a spacing of the opening.</summary>
    public IReadOnlyList<(Nail Nail, double X, double Y)> Nails { get; }
}
