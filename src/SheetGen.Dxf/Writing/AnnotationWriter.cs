namespace SheetGen.Dxf;

/// <summary>Writes hatches, dimensions and leaders.</summary>
internal static class AnnotationWriter
{
    private const int PolylineBoundary = 2, OuterBoundary = 1;
    private const int OwnBlock = 32, TextPlaced = 128;

    internal static void Hatch(EntityWriter w, DxfHatch hatch)
    {
        var o = w.Out;
        var pattern = hatch.Pattern;
        w.Begin("HATCH", hatch.Layer, "AcDbHatch");
        o.Point(10, DxfPoint.Origin);
        o.Vector(210, 0, 0, 1);
        o.Text(2, pattern?.Name ?? "SOLID");
        o.Flag(70, pattern is null);
        o.Integer(71, 0);
        o.Integer(91, hatch.Boundaries.Count);
        for (var i = 0; i < hatch.Boundaries.Count; i++)
            Boundary(o, hatch.Boundaries[i], i == 0);
        o.Integer(75, 0);
        o.Integer(76, (int)(pattern?.Kind ?? DxfPatternKind.Predefined));
        if (pattern is not null)
            Pattern(o, pattern);
        o.Integer(98, 1);
        o.Point2(10, hatch.Boundaries[0][0].Point);
    }

    /// <summary>An image of one pixel without a picture, clipped to its own outline; the clip is told in pixels about the middle.</summary>
    internal static void Wipeout(EntityWriter w, DxfWipeout mask)
    {
        var o = w.Out;
        w.Begin("WIPEOUT", mask.Layer, "AcDbWipeout");
        o.Integer(90, 0);
        o.Point(10, mask.Corner);
        o.Point(11, mask.Along);
        o.Point(12, mask.Up);
        o.Point2(13, new(1, 1));
        o.Handle(340, 0);
        o.Integer(70, 7);
        o.Integer(280, 1);
        o.Integer(281, 50);
        o.Integer(282, 50);
        o.Integer(283, 0);
        o.Handle(360, 0);
        o.Integer(71, 2);
        o.Integer(91, 5);
        foreach (var (x, y) in new[] { (-0.5, 0.5), (0.5, 0.5), (0.5, -0.5), (-0.5, -0.5), (-0.5, 0.5) })
            o.Point2(14, new(x, y));
    }

    internal static void Dimension(EntityWriter w, PlannedDimension planned)
    {
        var o = w.Out;
        var dimension = planned.Dimension;
        var picture = DimensionPicture.Of(dimension, w.Job.Document);
        w.Begin("DIMENSION", dimension.Layer, "AcDbDimension");
        if (w.Job.IsModern)
            o.Integer(280, 0);
        o.Text(2, planned.BlockName);
        o.Point(10, dimension.LinePoint);
        o.Point(11, picture.TextMiddle);
        o.Integer(70, (int)dimension.Kind + OwnBlock + (dimension.TextPoint is null ? 0 : TextPlaced));
        o.Integer(71, (int)DxfAttachment.MiddleCenter);
        o.Real(42, dimension.Measurement);
        o.Text(1, dimension.Words ?? "");
        o.Text(3, dimension.Style);
        o.Coded(100, "AcDbAlignedDimension");
        o.Point(13, dimension.From);
        o.Point(14, dimension.To);
        if (dimension.Kind == DxfDimensionKind.Rotated)
        {
            o.Real(50, dimension.Angle);
            o.Coded(100, "AcDbRotatedDimension");
        }
        XDataWriter.Write(o, dimension);
    }

    internal static void Leader(EntityWriter w, DxfLeader leader)
    {
        var o = w.Out;
        var handle = w.Job.Plan.Next();
        var noteHandle = 0;
        if (leader.Note is { } note)
        {
            noteHandle = w.Job.Plan.Next();
            TextEntityWriter.MText(w, note, noteHandle, handle);
        }
        w.Begin("LEADER", leader.Layer, "AcDbLeader", handle);
        o.Text(3, leader.Style);
        o.Flag(71, leader.Arrow);
        o.Integer(72, 0);
        o.Integer(73, leader.Note is null ? 3 : 0);
        o.Integer(74, 1);
        o.Integer(75, 0);
        o.Real(40, leader.Note?.Height ?? 0);
        o.Real(41, leader.Note?.Width ?? 0);
        o.Integer(76, leader.Points.Count);
        foreach (var point in leader.Points)
            o.Point(10, point);
        if (noteHandle != 0)
            o.Handle(340, noteHandle);
        o.Vector(210, 0, 0, 1);
        o.Vector(211, 1, 0, 0);
        o.Vector(212, 0, 0, 0);
        o.Vector(213, 0, 0, 0);
        XDataWriter.Write(o, leader);
    }

    private static void Boundary(GroupWriter o, DxfSequence<DxfVertex> boundary, bool outer)
    {
        var bulged = boundary.Any(v => v.Bulge != 0);
        o.Integer(92, PolylineBoundary + (outer ? OuterBoundary : 0));
        o.Flag(72, bulged);
        o.Integer(73, 1);
        o.Integer(93, boundary.Count);
        foreach (var vertex in boundary)
        {
            o.Point2(10, vertex.Point);
            if (bulged)
                o.Real(42, vertex.Bulge);
        }
        o.Integer(97, 0);
    }

    private static void Pattern(GroupWriter o, DxfHatchPattern pattern)
    {
        o.Real(52, pattern.Angle);
        o.Real(41, pattern.Scale);
        o.Integer(77, 0);
        o.Integer(78, pattern.Lines.Count);
        foreach (var line in pattern.Lines)
        {
            o.Real(53, line.Angle);
            o.Real(43, line.BasePoint.X);
            o.Real(44, line.BasePoint.Y);
            o.Real(45, line.Offset.X);
            o.Real(46, line.Offset.Y);
            o.Integer(79, line.Dashes.Count);
            foreach (var dash in line.Dashes)
                o.Real(49, dash);
        }
    }
}
