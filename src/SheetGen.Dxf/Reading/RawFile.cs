namespace SheetGen.Dxf;

/// <summary>A file sorted into sections and records, nothing understood yet.</summary>
internal sealed class RawFile
{
    /// <summary>No entity that is worth drawing has more values; one of them could take all memory.</summary>
    private const int MostGroups = 2_000_000;

    /// <summary>Variables of the header, with their groups.</summary>
    internal Dictionary<string, Record> Header { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Records of TABLES, among them TABLE and ENDTAB.</summary>
    internal List<Record> Tables { get; } = [];

    /// <summary>Records of BLOCKS, among them BLOCK and ENDBLK.</summary>
    internal List<Record> Blocks { get; } = [];

    internal List<Record> Entities { get; } = [];

    internal List<Record> Objects { get; } = [];

    /// <summary>Reads all records; on an error in the log what was read is not to be used.</summary>
    internal static RawFile Read(byte[] bytes, ReadLog log)
    {
        var file = new RawFile();
        if (bytes.AsSpan().StartsWith("AC10"u8))
        {
            log.Fail(1, "this is a DWG file; save it as DXF");
            return file;
        }
        IGroupSource source = BinaryGroupSource.IsBinary(bytes) ? new BinaryGroupSource(bytes, log) : new GroupSource(bytes, log);
        var group = source.Next();
        if (group is not null && group.Value.Code is not (0 or 999))
            log.Fail(source.Line - 1, $"this is not a DXF file: it starts with group code {group.Value.Code}");
        var section = "";
        var sections = 0;
        var groups = new List<Group>();
        while (group is { } head && log.Error is null)
        {
            if (head.Code == 0 && head.Value.Trim().Equals("EOF", StringComparison.OrdinalIgnoreCase))
            {
                // What follows the end mark is not looked at.
                if (sections == 0)
                    log.Fail(head.Line, "the file has no section");
                return file;
            }
            groups.Clear();
            for (group = source.Next(); group is { Code: not 0 } inner; group = source.Next())
            {
                if (groups.Count == MostGroups)
                {
                    log.Fail(head.Line, $"{ReadLog.Quote(head.Value.Trim())} has more than {MostGroups} values");
                    return file;
                }
                groups.Add(inner);
            }
            if (head.Code != 0)
                continue;
            var record = new Record(head, groups, log);
            switch (record.Kind)
            {
                case "SECTION":
                    section = record.Name(2).ToUpperInvariant();
                    sections++;
                    if (section == "HEADER")
                        file.AddHeader(head, groups, log);
                    break;
                case "ENDSEC":
                    section = "";
                    break;
                default:
                    file.ListOf(section)?.Add(record);
                    break;
            }
        }
        log.Fail(Math.Max(source.Line, 1), source.Line == 0 ? "the file is empty" : "the file ends without EOF: it is cut off");
        return file;
    }

    private List<Record>? ListOf(string section) => section switch
    {
        "TABLES" => Tables,
        "BLOCKS" => Blocks,
        "ENTITIES" => Entities,
        "OBJECTS" => Objects,
        _ => null,
    };

    private void AddHeader(Group head, List<Group> groups, ReadLog log)
    {
        var start = groups.FindIndex(g => g.Code == 9);
        while (start >= 0)
        {
            var next = groups.FindIndex(start + 1, g => g.Code == 9);
            var values = groups[(start + 1)..(next < 0 ? groups.Count : next)];
            Header[groups[start].Value.Trim()] = new(head with { Value = "HEADER" }, values, log);
            start = next;
        }
    }
}
