namespace SheetGen.Dxf;

/// <summary>Cuts the section BLOCKS into blocks.</summary>
internal static class BlockReader
{
    internal static List<(Record Head, List<Record> Content)> Split(IEnumerable<Record> records)
    {
        var blocks = new List<(Record Head, List<Record> Content)>();
        List<Record>? content = null;
        foreach (var record in records)
        {
            if (record.Kind == "BLOCK")
            {
                content = [];
                blocks.Add((record, content));
            }
            else if (record.Kind == "ENDBLK")
            {
                content = null;
            }
            else
            {
                content?.Add(record);
            }
        }
        return blocks;
    }
}
