namespace SheetGen.Dxf;

/// <summary>Reads texts and attributes.</summary>
internal static class TextReader
{
    private const int AlignedBetweenPoints = 3, MiddleOfBox = 4, FitBetweenPoints = 5, Mirrored = 2 | 4, Invisible = 1;

    /// <summary>Reads a line of text.</summary>
    /// <param name="reader">The reader of its space.</param>
    /// <param name="record">TEXT, ATTRIB or ATTDEF.</param>
    /// <param name="verticalCode">Group of the vertical alignment: 73 for TEXT, 74 for attributes.</param>
    internal static DxfText? Text(EntityReader reader, Record record, int verticalCode)
    {
        var plane = Plane.Of(record);
        if (!reader.IsFlat(record, plane))
            return null;
        if (plane.IsMirrored || (record.Integer(71) & Mirrored) != 0)
            reader.Log.Warn(record, $"{record.Kind}: mirrored text is read as unmirrored");
        var (across, along) = (record.Integer(verticalCode), record.Integer(72));
        var first = reader.Map(record, plane, record.Point(10));
        var second = record.Has(11) ? reader.Map(record, plane, record.Point(11)) : first;
        var text = new DxfText(reader.Tables.Layer(record), first, record.Real(40), TextCoding.Decode(record.Text(1)))
        {
            Style = reader.Tables.TextStyle(record),
            Rotation = plane.Angle(record.Real(50)),
            WidthFactor = record.Real(41, 1),
            ObliqueAngle = record.Real(51),
        };
        if (along is AlignedBetweenPoints or FitBetweenPoints)
            return first == second ? text : text with { Rotation = Direction(second - first) };
        if (along == MiddleOfBox)
            return text with { Position = second, Align = DxfTextAlign.Center, VerticalAlign = DxfTextVerticalAlign.Middle };
        if (along == 0 && across == 0)
            return text;
        return text with
        {
            Position = second,
            Align = Enum.IsDefined((DxfTextAlign)along) ? (DxfTextAlign)along : DxfTextAlign.Left,
            VerticalAlign = Enum.IsDefined((DxfTextVerticalAlign)across) ? (DxfTextVerticalAlign)across : DxfTextVerticalAlign.Baseline,
        };
    }

    internal static DxfMText MText(EntityReader reader, Record record)
    {
        var coded = string.Concat(record.Groups.Where(g => g.Code is 1 or 3).OrderBy(g => g.Code == 1).Select(g => g.Value));
        // Of a direction and an angle, the later one counts.
        var turn = record.Groups.LastOrDefault(g => g.Code is 11 or 50);
        var spacing = record.Real(44, 1);
        var attachment = (DxfAttachment)record.Integer(71, 1);
        return new(reader.Tables.Layer(record), reader.World(record, 10), record.Real(40), MTextCoding.Decode(StringCoding.Decode(coded)))
        {
            Width = Math.Max(record.Real(41), 0),
            Attachment = Enum.IsDefined(attachment) ? attachment : DxfAttachment.TopLeft,
            Style = reader.Tables.TextStyle(record),
            Rotation = turn.Code == 11 ? Direction(record.Point(11).Xy) : turn.Code == 50 ? record.Real(50) : 0,
            LineSpacing = spacing is >= 0.25 and <= 4 ? spacing : 1,
        };
    }

    internal static DxfAttributeDefinition? AttributeDefinition(EntityReader reader, Record record) =>
        Text(reader, record, 74) is { } text
            ? new(record.Name(2), record.Text(3), text) { Invisible = (record.Integer(70) & Invisible) != 0 }
            : null;

    internal static DxfAttribute? Attribute(EntityReader reader, Record record) =>
        Text(reader, record, 74) is { } text
            ? new(record.Name(2), text with { XData = XDataReader.Read(reader, record) }) { Invisible = (record.Integer(70) & Invisible) != 0 }
            : null;

    /// <summary>The direction of a vector in degrees, without the noise that a vector brings.</summary>
    private static double Direction(DxfPoint vector) => Math.Round(Math.Atan2(vector.Y, vector.X) * 180 / Math.PI, 9);
}
