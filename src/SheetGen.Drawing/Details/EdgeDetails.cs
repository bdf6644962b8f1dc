using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>Where the face ends, bends or opens.</summary>
internal static class EdgeDetails
{
    private const double Up = Math.PI / 2, Down = -Math.PI / 2;

    /// <summary>Plan of the end of a wall: the soil above, the front below.</summary>
    public static void End(DrawingContext context, DetailData data, DetailPen pen)
    {
        pen.Hatch(4, 45, (-70, 0), (40, 0), (40, 7), (-70, 7));
        pen.Shape(LayerRole.Detail, (-70, 0), (40, 0), (40, 7), (-70, 7));
        pen.Shape(LayerRole.Detail, (-70, -9), (40, -9), (40, -2), (-70, -2));
        pen.Line(40, 7, 60, 34, LayerRole.DetailHidden);
        pen.Line(40, -9, 70, -9, LayerRole.DetailHidden);
        foreach (double x in new[] { -58.0, -16, 26 })
        {
            pen.Line(x, 0, x, 52);
            pen.Shape(LayerRole.Detail, (x - 5, -1.6), (x + 5, -1.6), (x + 5, 0), (x - 5, 0));
        }
        pen.Span(26, 14, 40, 14, data.Print.Short(data.Project.Rules.EdgeMin));
        pen.Note(33, 14, 0.6, context.Say(Phrase.EndEdge, data.Print.Short(data.Project.Rules.EdgeMin)));
        pen.Span(-16, 36, 26, 36, data.ByZone(s => data.Print.Short(s.HorizontalSpacing)));
        pen.Note(36, 3, -0.3, context.Say(Phrase.EndSpacing, data.ByZone(s => data.Print.Short(s.HorizontalSpacing / 2))));
        pen.Note(50, 20, 0.3, context.Say(Phrase.EndReturn, data.Fact("wall_ends")));
        pen.Note(-40, 3, Up, context.Say(Phrase.ShotcreteThickness, data.Shotcrete));
        pen.Note(-40, -30, Down, context.Say(Phrase.FrontOfWall));
    }

    /// <summary>Plan of a corner with the first nails on both sides of it.</summary>
    public static void Corner(DrawingContext context, DetailData data, DetailPen pen)
    {
        Corner[] corners = [.. data.Project.Walls.SelectMany(w => new Face(w).Legs.Select(l => l.EndCorner).OfType<Corner>())];
        Wall wall = data.Project.Walls.First(w => new Face(w).Legs.Count > 1);
        var face = new Face(wall);
        Corner first = corners[0];
        // Drawn at the first corner's angle; the soil is above the line on the left leg.
        double turn = Math.Clamp(Angles.ToDegrees(Math.Abs(first.Deflection)), 15, 80) * (face.IsOutside(first) ? 1 : -1);
        double a = Angles.ToRadians(turn);
        (double X, double Y) Second(double along, double across) =>
            (along * Math.Cos(a) + across * Math.Sin(a), along * Math.Sin(a) * -1 + across * Math.Cos(a));
        double mitre = 7 * Math.Tan(a / 2);
        pen.Shape(LayerRole.Detail, (-72, 0), (0, 0), (-mitre, 7), (-72, 7));
        pen.Hatch(4, 45, (-72, 0), (0, 0), (-mitre, 7), (-72, 7));
        pen.Shape(LayerRole.Detail, Second(0, 0), Second(66, 0), Second(66, 7), Second(mitre, 7));
        pen.Hatch(4, 45, Second(0, 0), Second(66, 0), Second(66, 7), Second(mitre, 7));
        foreach (double x in new[] { -56.0, -16 })
            pen.Line(x, 0, x, 48);
        foreach (double x in new[] { 16.0, 52 })
            pen.Line(Second(x, 0).X, Second(x, 0).Y, Second(x, 48).X, Second(x, 48).Y);
        string clear = data.Print.Short(data.Project.Rules.CornerClear);
        pen.Span(-16, -10, 0, -10, clear);
        pen.Note(-8, -10, Down, context.Say(Phrase.CornerClear, clear));
        pen.Note(-mitre / 2, 4, Up, context.Say(Phrase.CornerBars, DetailData.Blank));
        pen.Note(Second(40, 3).X, Second(40, 3).Y, 0.3,
            [.. corners.Distinct().Take(4).Select(c => context.Say(Phrase.CornerAt,
                context.Say(Phrase.Station, data.Print.Station(LineOf(data.Project, c), c.Along)), data.Print.Sexagesimal(Angles.ToDegrees(Math.Abs(c.Deflection)))))]);
        pen.Note(-50, -30, Down, context.Say(Phrase.FrontOfWall));
    }

    private static LayoutLine LineOf(WallProject project, Corner corner) => project.Walls.Select(w => w.LayoutLine).First(l => l.Corners.Contains(corner));

    /// <summary>Elevation of an opening with the nails beside it.</summary>
    public static void Opening(DrawingContext context, DetailData data, DetailPen pen)
    {
        pen.Shape(LayerRole.Detail, (-26, -22), (26, -22), (26, 22), (-26, 22));
        pen.Line(-26, -22, 26, 22, LayerRole.DetailHidden);
        pen.Line(-26, 22, 26, -22, LayerRole.DetailHidden);
        foreach (double at in new[] { 30.0, 33 })
        {
            pen.Line(-at, -40, -at, 40);
            pen.Line(at, -40, at, 40);
            pen.Line(-44, at - 4, 44, at - 4);
            pen.Line(-44, 4 - at, 44, 4 - at);
        }
        foreach (double x in new[] { -56.0, 56 })
        {
            foreach (double y in new[] { -30.0, 10, 46 })
                pen.Ring(LayerRole.Detail, x, y, 3);
        }
        string edge = data.Print.Short(data.Project.Rules.EdgeMin);
        pen.Span(26, 10, 56, 10, edge);
        pen.Note(42, 10, -0.4, context.Say(Phrase.OpeningEdge, edge));
        pen.Note(33, -38, -0.3, context.Say(Phrase.OpeningBars, DetailData.Blank), context.Say(Phrase.OpeningFraming));
        pen.Note(-20, -22, Down, [.. data.Project.Walls.SelectMany(w => w.Openings).Take(5).Select(o =>
            context.Say(Phrase.OpeningSize, o.Name.ToUpperInvariant(), data.Print.Short(o.End - o.Start), data.Print.Short(o.Top - o.Bottom)))]);
    }
}
