namespace SheetGen.Dxf;

/// <summary>Reads dimensions and leaders.</summary>
internal static class LeaderReader
{
    private const int KindBits = 7, TextPlaced = 128;

    internal static DxfDimension? Dimension(EntityReader reader, Record record, Plane plane, string layer)
    {
        var flags = record.Integer(70);
        var kind = (DxfDimensionKind)(flags & KindBits);
        if (!Enum.IsDefined(kind))
        {
            reader.Log.Warn(record, "DIMENSION that is neither rotated nor aligned is left out");
            return null;
        }
        if (!reader.IsFlat(record, plane))
            return null;
        var words = record.Text(1).Trim();
        var angle = kind == DxfDimensionKind.Rotated ? plane.Angle(record.Real(50)) : 0;
        return new(layer, kind, reader.World(record, 13), reader.World(record, 14), reader.World(record, 10), angle)
        {
            Style = reader.Tables.DimStyle(record),
            Words = words is "" or "<>" ? null : words,
            TextPoint = (flags & TextPlaced) != 0 ? reader.Map(record, plane, record.Point(11)) : null,
        };
    }

    internal static DxfLeader Leader(EntityReader reader, Record record, string layer)
    {
        var points = new List<DxfPoint>();
        for (var i = 0; i < record.Groups.Count; i++)
        {
            if (record.Groups[i].Code != 10)
                continue;
            double After(int code) => record.Groups.Skip(i + 1).Take(2).Where(g => g.Code == code).Select(record.ToReal).FirstOrDefault();
            points.Add(reader.Map(record, Plane.World, new(record.ToReal(record.Groups[i]), After(20), After(30))));
        }
        return new(layer, [.. points]) { Style = reader.Tables.DimStyle(record), Arrow = record.Integer(71, 1) != 0 };
    }

    /// <summary>Gives each leader the text that it names, and takes that text off the list.</summary>
    internal static void JoinNotes(List<ReadEntity> entities)
    {
        if (!entities.Any(e => e.Entity is DxfLeader))
            return;
        var texts = new Dictionary<string, ReadEntity>();
        foreach (var text in entities.Where(e => e.Entity is DxfMText && e.Record.Handle is not null))
            texts.TryAdd(text.Record.Handle!, text);
        var joined = new HashSet<ReadEntity>(ReferenceEqualityComparer.Instance);
        for (var i = 0; i < entities.Count; i++)
        {
            var handle = entities[i].Entity is DxfLeader ? entities[i].Record.Raw(340)?.Trim().ToUpperInvariant() : null;
            if (handle is null || !texts.Remove(handle, out var text))
                continue;
            entities[i] = entities[i] with { Entity = (DxfLeader)entities[i].Entity with { Note = (DxfMText)text.Entity } };
            joined.Add(text);
        }
        entities.RemoveAll(joined.Contains);
    }
}
