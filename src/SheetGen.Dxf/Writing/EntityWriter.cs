namespace SheetGen.Dxf;

/// <summary>Writes entities of one owner.</summary>
internal sealed class EntityWriter(WriteJob job, Owner owner)
{
    internal WriteJob Job { get; } = job;

    internal GroupWriter Out { get; } = job.Out;

    internal Owner Owner { get; } = owner;

    /// <summary>Writes all of a space.</summary>
    internal void Space(PlannedSpace space)
    {
        if (space.Sheet is not null)
            ViewportWriter.Write(this, space);
        Entities(space.Entities, space.Dimensions);
    }

    /// <summary>Writes entities.</summary>
    /// <param name="entities">Any entities.</param>
    /// <param name="dimensions">The dimensions among them, in order; none in a block.</param>
    internal void Entities(IEnumerable<DxfEntity> entities, IReadOnlyList<PlannedDimension>? dimensions = null)
    {
        var dimension = 0;
        foreach (var entity in entities)
        {
            if (entity is DxfDimension)
                AnnotationWriter.Dimension(this, dimensions![dimension++]);
            else
                Entity(entity);
        }
    }

    /// <summary>Starts an entity with what all have in common.</summary>
    /// <returns>Its handle.</returns>
    internal int Begin(string kind, string layer, string? subclass, int handle = 0, int reactor = 0)
    {
        handle = handle == 0 ? Job.Plan.Next() : handle;
        Out.Coded(0, kind);
        Out.Handle(5, handle);
        if (reactor != 0)
        {
            Out.Coded(102, "{ACAD_REACTORS");
            Out.Handle(330, reactor);
            Out.Coded(102, "}");
        }
        Out.Handle(330, Owner.Handle);
        Out.Coded(100, "AcDbEntity");
        if (Owner.Paper)
            Out.Integer(67, 1);
        Out.Text(8, layer);
        if (subclass is not null)
            Out.Coded(100, subclass);
        return handle;
    }

    private void Entity(DxfEntity entity)
    {
        switch (entity)
        {
            case DxfLine line:
                Begin("LINE", line.Layer, "AcDbLine");
                Out.Point(10, line.Start);
                Out.Point(11, line.End);
                break;
            case DxfPolyline polyline:
                Polyline(polyline);
                break;
            case DxfCircle circle:
                Begin("CIRCLE", circle.Layer, "AcDbCircle");
                Out.Point(10, circle.Center);
                Out.Real(40, circle.Radius);
                break;
            case DxfArc arc:
                Begin("ARC", arc.Layer, "AcDbCircle");
                Out.Point(10, arc.Center);
                Out.Real(40, arc.Radius);
                Out.Coded(100, "AcDbArc");
                Out.Real(50, arc.StartAngle);
                Out.Real(51, arc.EndAngle);
                break;
            case DxfEllipse ellipse:
                Begin("ELLIPSE", ellipse.Layer, "AcDbEllipse");
                Out.Point(10, ellipse.Center);
                Out.Point(11, ellipse.MajorAxis);
                Out.Vector(210, 0, 0, 1);
                Out.Real(40, ellipse.Ratio);
                Out.Real(41, ellipse.StartParameter * Math.PI / 180);
                Out.Real(42, ellipse.EndParameter * Math.PI / 180);
                break;
            case DxfPointEntity point:
                Begin("POINT", point.Layer, "AcDbPoint");
                Out.Point(10, point.Position);
                break;
            case DxfSolid solid:
                Begin("SOLID", solid.Layer, "AcDbTrace");
                Out.Point(10, solid.First);
                Out.Point(11, solid.Second);
                // The format runs across: the third and fourth corners are the other way round.
                Out.Point(12, solid.Fourth);
                Out.Point(13, solid.Third);
                break;
            case DxfWipeout mask:
                AnnotationWriter.Wipeout(this, mask);
                break;
            case DxfText text:
                TextEntityWriter.Text(this, text);
                break;
            case DxfMText text:
                TextEntityWriter.MText(this, text);
                return;
            case DxfAttributeDefinition definition:
                TextEntityWriter.AttributeDefinition(this, definition);
                break;
            case DxfInsert insert:
                TextEntityWriter.Insert(this, insert);
                return;
            case DxfHatch hatch:
                AnnotationWriter.Hatch(this, hatch);
                break;
            case DxfLeader leader:
                AnnotationWriter.Leader(this, leader);
                return;
            default:
                throw new NotSupportedException($"No way to write {entity.GetType().Name}.");
        }
        XDataWriter.Write(Out, entity);
    }

    private void Polyline(DxfPolyline polyline)
    {
        Begin("LWPOLYLINE", polyline.Layer, "AcDbPolyline");
        Out.Integer(90, polyline.Vertices.Count);
        Out.Flag(70, polyline.Closed);
        Out.Real(43, polyline.Width);
        foreach (var vertex in polyline.Vertices)
        {
            Out.Point2(10, vertex.Point);
            if (vertex.Bulge != 0)
                Out.Real(42, vertex.Bulge);
        }
    }
}
