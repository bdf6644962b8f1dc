namespace SheetGen.Dxf;

/// <summary>Reads viewports.</summary>
internal static class ViewportReader
{
    private const int Locked = 16384;

    internal static ReadViewport? Read(EntityReader reader, Record record)
    {
        if (!record.Has(45))
        {
            reader.Log.Warn(record, "VIEWPORT without a view height is left out");
            return null;
        }
        var direction = record.Has(16) ? record.Point(16) : new(0, 0, 1);
        if (direction.X != 0 || direction.Y != 0 || direction.Z <= 0)
            reader.Log.Warn(record, "VIEWPORT does not look straight down; it is read as if it did");
        var twist = record.Real(51);
        var center = record.Point(12).Xy;
        var viewport = new DxfViewport(
            reader.Tables.Layer(record),
            record.Point(10).Xy,
            record.Real(40),
            record.Real(41),
            (twist == 0 ? center : center.Rotated(-twist)) + record.Point(17).Xy,
            record.Real(45))
        {
            Locked = (record.Integer(90) & Locked) != 0,
            Twist = twist,
            FrozenLayers = [.. record.Groups.Where(g => g.Code is 331 or 341).Select(g => reader.Tables.NameOf("LAYER", g.Value)).OfType<string>()],
            XData = XDataReader.Read(reader, record),
        };
        return new(record, record.Integer(69), viewport);
    }
}
