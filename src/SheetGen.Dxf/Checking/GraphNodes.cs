using System.Globalization;

namespace SheetGen.Dxf;

/// <summary>All records of a file that have handles.</summary>
internal sealed class GraphNodes
{
    private readonly Dictionary<string, GraphNode> _byHandle = [];

    internal List<GraphNode> All { get; } = [];

    /// <summary>Collects the records, reporting missing, bad and repeated handles.</summary>
    internal static GraphNodes Of(RawFile file, Action<int, string> report)
    {
        var nodes = new GraphNodes();
        nodes.Add(file.Tables, "TABLES", report);
        nodes.Add(file.Blocks, "BLOCKS", report);
        nodes.Add(file.Entities, "ENTITIES", report);
        nodes.Add(file.Objects, "OBJECTS", report);
        return nodes;
    }

    /// <summary>The record of a handle; null if there is none.</summary>
    internal GraphNode? Find(string handle) => _byHandle.GetValueOrDefault(Plain(handle));

    /// <summary>A handle as it is compared; 0 is no handle.</summary>
    internal static string Plain(string handle) => handle.Trim().TrimStart('0').ToUpperInvariant();

    private void Add(List<Record> records, string section, Action<int, string> report)
    {
        GraphNode? container = null;
        GraphNode? whole = null;
        foreach (var record in records)
        {
            if (record.Kind is "ENDTAB")
                continue;
            var isPart = record.Kind is "ATTRIB" or "VERTEX" or "SEQEND";
            var handle = Plain(record.Handle ?? "");
            var node = new GraphNode(record, handle, section, isPart ? whole : record.Kind is "TABLE" or "BLOCK" ? null : container);
            All.Add(node);
            if (record.Kind is "TABLE" or "BLOCK")
                container = node;
            if (record.Kind is "INSERT" or "POLYLINE")
                whole = node;
            if (!long.TryParse(handle, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out _))
                report(record.Line, $"{record.Kind} has no handle");
            else if (!_byHandle.TryAdd(handle, node))
                report(record.Line, $"{record.Kind} has handle {handle}, as has {_byHandle[handle].Kind} in line {_byHandle[handle].Record.Line}");
        }
    }
}
