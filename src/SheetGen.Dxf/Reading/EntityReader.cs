namespace SheetGen.Dxf;

/// <summary>Makes entities of records.</summary>
internal sealed class EntityReader(TableReader tables, ReadLog log)
{
    private const double Flat = 1e-9;

    internal TableReader Tables { get; } = tables;

    internal ReadLog Log { get; } = log;

    /// <summary>Reads the records of one space or block.</summary>
    internal SpaceContent Read(IReadOnlyList<Record> records, DxfTable<DxfBlock> blocks)
    {
        var content = new SpaceContent([], []);
        var inserts = new InsertReader(this, blocks);
        for (var i = 0; i < records.Count; i++)
        {
            var record = records[i];
            var parts = Parts(records, i);
            i += parts.Count;
            if (record.Kind == "VIEWPORT")
            {
                if (ViewportReader.Read(this, record) is { } viewport)
                    content.Viewports.Add(viewport);
                continue;
            }
            var entities = record.Kind == "INSERT" ? inserts.Read(record, parts) : Entity(record, parts) is { } entity ? [entity] : [];
            content.Entities.AddRange(entities.Select(e => new ReadEntity(record, e)));
        }
        LeaderReader.JoinNotes(content.Entities);
        return content;
    }

    /// <summary>A point of a plane, seen from above.</summary>
    internal DxfPoint Map(Record record, Plane plane, Xyz point)
    {
        var world = plane.ToWorld(point);
        if (Math.Abs(world.Z) > Flat)
            Log.Warn(record, $"{record.Kind}: Z is not 0; X and Y are taken");
        return world.Xy;
    }

    internal DxfPoint World(Record record, int code) => Map(record, Plane.World, record.Point(code));

    /// <summary>Whether an entity with curves or text lies flat; if not, says so.</summary>
    internal bool IsFlat(Record record, Plane plane)
    {
        if (plane.IsTilted)
            Log.Warn(record, $"{record.Kind} is not parallel to the XY plane; it is left out");
        return !plane.IsTilted;
    }

    /// <summary>The records that belong to a polyline or insert: vertices or attributes, to SEQEND.</summary>
    private static List<Record> Parts(IReadOnlyList<Record> records, int at)
    {
        var part = records[at].Kind switch { "POLYLINE" => "VERTEX", "INSERT" => "ATTRIB", _ => "" };
        var parts = new List<Record>();
        if (part.Length == 0)
            return parts;
        for (var i = at + 1; i < records.Count && (records[i].Kind == part || records[i].Kind == "SEQEND"); i++)
        {
            parts.Add(records[i]);
            if (records[i].Kind == "SEQEND")
                break;
        }
        return parts;
    }

    private DxfEntity? Entity(Record record, List<Record> parts)
    {
        var layer = Tables.Layer(record);
        var plane = Plane.Of(record);
        DxfEntity? entity = record.Kind switch
        {
            "LINE" => new DxfLine(layer, World(record, 10), World(record, 11)),
            "POINT" => new DxfPointEntity(layer, World(record, 10)),
            "CIRCLE" => IsFlat(record, plane) ? new DxfCircle(layer, Map(record, plane, record.Point(10)), record.Real(40)) : null,
            "ARC" => Arc(record, plane, layer),
            "ELLIPSE" => Ellipse(record, plane, layer),
            "SOLID" or "TRACE" => Solid(record, plane, layer),
            "LWPOLYLINE" or "POLYLINE" => PolylineReader.Read(this, record, parts, plane, layer),
            "WIPEOUT" => Wipeout(record, layer),
            "TEXT" => TextReader.Text(this, record, 73),
            "MTEXT" => TextReader.MText(this, record),
            "ATTDEF" => TextReader.AttributeDefinition(this, record),
            "HATCH" => HatchReader.Read(this, record, plane, layer),
            "DIMENSION" => LeaderReader.Dimension(this, record, plane, layer),
            "LEADER" => LeaderReader.Leader(this, record, layer),
            _ => Unknown(record),
        };
        return entity is null ? null : entity with { XData = XDataReader.Read(this, record) };
    }

    /// <summary>The whole image, whatever its clip is, where that is a rectangle; another shape is left out.</summary>
    private DxfWipeout? Wipeout(Record record, string layer)
    {
        if (record.Integer(91) > 5)
        {
            Log.Warn(record, "WIPEOUT of more than four corners is not read; it is left out");
            return null;
        }
        var size = record.Point(13);
        return new(layer, World(record, 10), record.Point(11).Xy * size.X, record.Point(12).Xy * size.Y);
    }

    private DxfEntity? Unknown(Record record)
    {
        Log.Warn(record, $"{record.Kind} is not read; it is left out");
        return null;
    }

    private DxfArc? Arc(Record record, Plane plane, string layer)
    {
        if (!IsFlat(record, plane))
            return null;
        var (start, end) = (record.Real(50), record.Real(51));
        if (plane.IsMirrored)
            (start, end) = (180 - end, 180 - start);
        return new(layer, Map(record, plane, record.Point(10)), record.Real(40), start, end);
    }

    private DxfEllipse? Ellipse(Record record, Plane plane, string layer)
    {
        // Centre and axis are in world coordinates; only the sense of the parameters depends on the plane.
        if (!IsFlat(record, plane))
            return null;
        var (start, end) = (Degrees(record.Real(41)), Degrees(record.Real(42, 2 * Math.PI)));
        if (plane.IsMirrored)
            (start, end) = (360 - end, 360 - start);
        return new(layer, World(record, 10), record.Point(11).Xy, record.Real(40, 1)) { StartParameter = start, EndParameter = end };
    }

    /// <summary>Degrees without the noise that radians bring.</summary>
    private static double Degrees(double radians) => Math.Round(radians * 180 / Math.PI, 9);

    private DxfSolid Solid(Record record, Plane plane, string layer)
    {
        DxfPoint Corner(int code) => Map(record, plane, record.Point(code));
        return new(layer, Corner(10), Corner(11), record.Has(13) ? Corner(13) : Corner(12), Corner(12));
    }
}
