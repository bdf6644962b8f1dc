namespace SheetGen.Dxf;

/// <summary>A record with its handle and where it stands in the file.</summary>
/// <param name="Record">The record.</param>
/// <param name="Handle">Its handle, in capitals without leading zeros; empty where there is none.</param>
/// <param name="Section">TABLES, BLOCKS, ENTITIES or OBJECTS.</param>
/// <param name="Container">The record it stands in: its TABLE, its BLOCK, or the INSERT or POLYLINE it is part of.</param>
internal sealed record GraphNode(Record Record, string Handle, string Section, GraphNode? Container)
{
    internal string Kind => Record.Kind;

    /// <summary>The handle of the owner.</summary>
    internal string Owner => GraphNodes.Plain(Record.Raw(330) ?? "");
}
