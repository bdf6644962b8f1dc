namespace SheetGen.Drawing.Primitives;

/// <summary>Scaling, turning (radians, counter-clockwise) and moving of the plane, in that order.</summary>
public readonly record struct PlaneTransform(double Scale, double Turn, Point2 Move)
{
    public Point2 Apply(Point2 p) => p.Turned(Turn) * Scale + Move;

    public PlaneTransform Inverse
    {
        get
        {
            double back = 1 / Scale;
            return new(back, -Turn, (Move * -back).Turned(-Turn));
        }
    }

    /// <summary>The primitive seen through the transform; sizes and texts grow with it.</summary>
    public Primitive Apply(Primitive primitive)
    {
        double degrees = Turn * 180 / Math.PI;
        PlaneTransform self = this;
        return primitive switch
        {
            Line l => l with { From = Apply(l.From), To = Apply(l.To) },
            Leader l => l with { From = Apply(l.From), To = Apply(l.To), Arrow = l.Arrow * Scale },
            Polyline p => p with { Vertices = [.. p.Vertices.Select(v => new Vertex(self.Apply(v.Point), v.Bulge))] },
            Circle c => c with { Center = Apply(c.Center), Radius = c.Radius * Scale },
            Arc a => a with { Center = Apply(a.Center), Radius = a.Radius * Scale, Start = a.Start + degrees, End = a.End + degrees },
            Fill f => f with
            {
                Outline = [.. f.Outline.Select(v => new Vertex(self.Apply(v.Point), v.Bulge))],
                Spacing = f.Spacing * Scale,
                Angle = f.Angle + degrees,
            },
            Text t => t with { Position = Apply(t.Position), Height = t.Height * Scale, Rotation = t.Rotation + degrees },
            Dimension d => d with
            {
                From = Apply(d.From),
                To = Apply(d.To),
                LinePoint = Apply(d.LinePoint),
                TextPoint = Apply(d.TextPoint),
                Angle = d.Angle + degrees,
            },
            BlockReference b => b with
            {
                Position = Apply(b.Position),
                Scale = b.Scale * Scale,
                Rotation = b.Rotation + degrees,
                Shown = b.Shown is null ? null : b.Shown with { Text = (Text)Apply(b.Shown.Text) },
            },
            _ => throw new ArgumentException("unknown primitive", nameof(primitive)),
        };
    }
}
