namespace SheetGen.Dxf;

/// <summary>Checks that all names used in a file are defined, and that its tables and spaces are complete.</summary>
internal sealed class NameCheck(RawFile file, GraphNodes nodes, Action<int, string> report)
{
    private readonly Dictionary<string, HashSet<string>> _defined = nodes.All
        .Where(n => n.Section == "TABLES")
        .GroupBy(n => n.Kind)
        .ToDictionary(g => g.Key, g => g.Select(n => n.Record.Name(2)).ToHashSet(StringComparer.OrdinalIgnoreCase));

    internal void Run()
    {
        Complete();
        Header("$CLAYER", 8, "LAYER");
        Header("$TEXTSTYLE", 7, "STYLE");
        Header("$DIMSTYLE", 2, "DIMSTYLE");
        foreach (var node in nodes.All)
        {
            if (node.Section == "TABLES")
            {
                if (node.Kind == "LAYER")
                    Need(node, 6, "LTYPE");
                continue;
            }
            if (node.Section == "OBJECTS")
                continue;
            Need(node, 8, "LAYER");
            Need(node, 6, "LTYPE");
            foreach (var app in node.Record.XGroups.Where(g => g.Code == 1001))
                Need(node, app, "APPID");
            if (node.Kind is "TEXT" or "MTEXT" or "ATTRIB" or "ATTDEF")
                Need(node, 7, "STYLE");
            if (node.Kind is "INSERT" or "DIMENSION" or "BLOCK")
                Need(node, 2, "BLOCK_RECORD");
            if (node.Kind is "DIMENSION" or "LEADER")
                Need(node, 3, "DIMSTYLE");
        }
    }

    private void Complete()
    {
        foreach (var table in FilePlan.TableNames.Where(t => !_defined.GetValueOrDefault("TABLE", []).Contains(t)))
            report(0, $"table {table} is missing");
        var blocks = file.Blocks.Where(r => r.Kind == "BLOCK").Select(r => r.Name(2)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var name in _defined.GetValueOrDefault("BLOCK_RECORD", []).Where(n => !blocks.Contains(n)))
            report(0, $"block record {name} has no block");
        (string Kind, string Name)[] always =
        [
            ("LTYPE", "ByBlock"), ("LTYPE", "ByLayer"), ("LTYPE", "Continuous"), ("LAYER", "0"), ("STYLE", "Standard"), ("VPORT", "*Active"),
            ("DIMSTYLE", "Standard"), ("APPID", "ACAD"), ("BLOCK_RECORD", "*Model_Space"), ("BLOCK_RECORD", "*Paper_Space"),
        ];
        foreach (var (kind, name) in always.Where(a => !_defined.GetValueOrDefault(a.Kind, []).Contains(a.Name)))
            report(0, $"{kind} {name} is missing");
    }

    private void Header(string variable, int code, string kind)
    {
        var name = file.Header.TryGetValue(variable, out var record) ? record.Name(code) : "";
        if (!_defined.GetValueOrDefault(kind, []).Contains(name))
            report(record?.Line ?? 0, $"{variable}: {kind} {name} is not defined");
    }

    private void Need(GraphNode node, int code, string kind)
    {
        foreach (var group in node.Record.All(code).Take(1))
            Need(node, group, kind);
    }

    private void Need(GraphNode node, Group group, string kind)
    {
        var name = StringCoding.Decode(group.Value).Trim();
        if (!_defined.GetValueOrDefault(kind, []).Contains(name))
            report(group.Line, $"{node.Kind} {node.Handle}: {kind} {name} is not defined");
    }
}
