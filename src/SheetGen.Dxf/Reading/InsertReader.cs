namespace SheetGen.Dxf;

/// <summary>Reads block references. One that repeats in rows and columns becomes as many.</summary>
internal sealed class InsertReader(EntityReader reader, DxfTable<DxfBlock> blocks)
{
    private const int MostCopies = 10_000, MostCopiesInAll = 100_000;

    private int _copies;

    internal IReadOnlyList<DxfEntity> Read(Record record, List<Record> parts)
    {
        var name = record.Name(2);
        if (!blocks.Contains(name))
        {
            bool isPicture = name.StartsWith("*D", StringComparison.Ordinal);
            reader.Log.Warn(record.Line, $"INSERT of block {name}, which is not defined, is left out", isPicture ? DxfProblemKind.DimensionPicture : DxfProblemKind.Content);
            return [];
        }
        var plane = Plane.Of(record);
        if (!reader.IsFlat(record, plane))
            return [];
        var attributes = parts.Where(p => p.Kind == "ATTRIB").Select(p => TextReader.Attribute(reader, p)).OfType<DxfAttribute>();
        var insert = new DxfInsert(reader.Tables.Layer(record), name, reader.Map(record, plane, record.Point(10)))
        {
            // A plane seen from behind turns X over, which is the same as a mirrored block.
            ScaleX = record.Real(41, 1) * (plane.IsMirrored ? -1 : 1),
            ScaleY = record.Real(42, 1),
            Rotation = plane.Turn(record.Real(50)),
            Attributes = [.. attributes],
            XData = XDataReader.Read(reader, record),
        };
        return Copies(record, insert, plane.IsMirrored ? -1 : 1);
    }

    private IReadOnlyList<DxfEntity> Copies(Record record, DxfInsert insert, double sense)
    {
        var (columns, rows) = (Math.Max(record.Integer(70, 1), 1), Math.Max(record.Integer(71, 1), 1));
        if (columns == 1 && rows == 1)
            return [insert];
        if ((long)columns * rows > MostCopies)
        {
            reader.Log.Warn(record, $"INSERT of more than {MostCopies} copies: only the first is read");
            return [insert];
        }
        if (_copies + columns * rows > MostCopiesInAll)
        {
            reader.Log.Warn(record, $"INSERTs of more than {MostCopiesInAll} copies in all: of this one only the first is read");
            return [insert];
        }
        _copies += columns * rows;
        var (across, up) = (record.Real(44) * sense, record.Real(45));
        var copies = new List<DxfEntity>();
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var shift = new DxfPoint(column * across, row * up).Rotated(insert.Rotation);
                copies.Add(row + column == 0 ? insert : insert with { Position = insert.Position + shift, Attributes = [] });
            }
        }
        return copies;
    }
}
