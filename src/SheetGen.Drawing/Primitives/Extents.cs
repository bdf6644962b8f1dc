namespace SheetGen.Drawing.Primitives;

/// <summary>Points that bound primitives, and the lines between them.</summary>
public static class Extents
{
    /// <summary>Points whose box holds the primitive's lines; texts and references count by their position.</summary>
    public static IEnumerable<Point2> Points(Primitive primitive) => primitive switch
    {
        Line l => [l.From, l.To],
        Leader l => [l.From, l.To],
        Polyline p => p.Vertices.Select(v => v.Point),
        Circle c => [c.Center - new Point2(c.Radius, c.Radius), c.Center + new Point2(c.Radius, c.Radius)],
        Arc a => [a.Center - new Point2(a.Radius, a.Radius), a.Center + new Point2(a.Radius, a.Radius)],
        Fill f => f.Outline.Select(v => v.Point),
        Text t => [t.Position],
        Dimension d => [d.From, d.To, d.TextPoint],
        BlockReference b => [b.Position],
        _ => [],
    };

    /// <summary>The straight pieces of a primitive's lines, curves in short ones, an outline with its closing side; none of texts, dimensions and references.</summary>
    public static IEnumerable<(Point2 From, Point2 To)> Segments(Primitive primitive)
    {
        IReadOnlyList<Point2> path = primitive switch
        {
            Line l => [l.From, l.To],
            Leader l => [l.From, l.To],
            Polyline p => Flatten.Path(p.Vertices, p.Closed),
            Circle c => Flatten.Arc(new Arc(c.Layer, c.Center, c.Radius, 0, 360)),
            Arc a => Flatten.Arc(a),
            Fill f => Flatten.Path(f.Outline, true),
            _ => [],
        };
        return path.Zip(path.Skip(1));
    }
}
