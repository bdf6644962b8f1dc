namespace SheetGen.Drawing.Primitives;

/// <summary>Points that bound primitives.</summary>
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
}
