namespace SheetGen.Dxf;

/// <summary>How far entities reach. Texts count with their position only, since their width depends on the font.</summary>
public static class DxfBounds
{
    /// <summary>The extents of entities, or null where there is nothing to measure.</summary>
    /// <param name="entities">Entities of model space or of a layout.</param>
    /// <param name="document">The document whose blocks the inserts name; none may contain itself.</param>
    public static DxfExtents? Of(IEnumerable<DxfEntity> entities, DxfDocument document) =>
        Of(entities, document, new(StringComparer.OrdinalIgnoreCase));

    private static DxfExtents? Of(IEnumerable<DxfEntity> entities, DxfDocument document, Dictionary<string, DxfExtents?> blocks)
    {
        DxfExtents? all = null;
        foreach (var entity in entities)
        {
            if (entity is DxfInsert insert)
            {
                all = Join(all, Insert(insert, document, blocks));
                continue;
            }
            foreach (var point in Points(entity))
                all = Join(all, new(point, point));
        }
        return all;
    }

    private static DxfExtents? Insert(DxfInsert insert, DxfDocument document, Dictionary<string, DxfExtents?> blocks)
    {
        var extents = new DxfExtents(insert.Position, insert.Position);
        var block = document.Blocks[insert.Block];
        if (!blocks.TryGetValue(block.Name, out var inner))
            blocks[block.Name] = inner = Of(block.Entities, document, blocks);
        if (inner is not { } box)
            return extents;
        foreach (var corner in new[] { box.Min, box.Max, new(box.Min.X, box.Max.Y), new(box.Max.X, box.Min.Y) })
        {
            var local = corner - block.BasePoint;
            var point = insert.Position + new DxfPoint(local.X * insert.ScaleX, local.Y * insert.ScaleY).Rotated(insert.Rotation);
            extents = extents.Union(new(point, point));
        }
        return extents;
    }

    private static IEnumerable<DxfPoint> Points(DxfEntity entity) => entity switch
    {
        DxfLine line => [line.Start, line.End],
        DxfPolyline polyline => Outline(polyline.Vertices, polyline.Closed),
        DxfCircle circle => Around(circle.Center, circle.Radius),
        DxfArc arc => Arc(arc.Center, arc.Radius, arc.StartAngle, Sweep(arc.StartAngle, arc.EndAngle)),
        DxfEllipse ellipse => Around(ellipse.Center, ellipse.MajorAxis.Length),
        DxfPointEntity point => [point.Position],
        DxfSolid solid => [solid.First, solid.Second, solid.Third, solid.Fourth],
        DxfWipeout mask => [mask.Corner, mask.Corner + mask.Along, mask.Corner + mask.Up, mask.Corner + mask.Along + mask.Up],
        DxfText text => [text.Position],
        DxfMText text => [text.Position],
        DxfAttributeDefinition definition => [definition.Text.Position],
        DxfHatch hatch => hatch.Boundaries.SelectMany(b => Outline(b, true)),
        DxfDimension dimension => [dimension.From, dimension.To, dimension.LinePoint],
        DxfLeader leader => leader.Note is { } note ? leader.Points.Append(note.Position) : leader.Points,
        _ => [],
    };

    private static DxfPoint[] Around(DxfPoint center, double radius)
    {
        var corner = new DxfPoint(radius, radius);
        return [center - corner, center + corner];
    }

    private static IEnumerable<DxfPoint> Outline(DxfSequence<DxfVertex> vertices, bool closed)
    {
        for (var i = 0; i < vertices.Count; i++)
        {
            yield return vertices[i].Point;
            if (vertices[i].Bulge == 0 || (i == vertices.Count - 1 && !closed))
                continue;
            var arc = DxfBulge.Arc(vertices[i], vertices[(i + 1) % vertices.Count].Point);
            foreach (var point in Arc(arc.Center, arc.Radius, arc.StartAngle, Sweep(arc.StartAngle, arc.EndAngle)))
                yield return point;
        }
    }

    private static double Sweep(double start, double end)
    {
        var sweep = (end - start) % 360;
        return sweep <= 0 ? sweep + 360 : sweep;
    }

    private static IEnumerable<DxfPoint> Arc(DxfPoint center, double radius, double start, double sweep)
    {
        DxfPoint At(double degrees) => center + new DxfPoint(radius, 0).Rotated(degrees);
        yield return At(start);
        yield return At(start + sweep);
        for (var quarter = Math.Ceiling(start / 90) * 90; quarter < start + sweep; quarter += 90)
            yield return At(quarter);
    }

    private static DxfExtents? Join(DxfExtents? a, DxfExtents? b) =>
        a is { } left && b is { } right ? left.Union(right) : a ?? b;
}
