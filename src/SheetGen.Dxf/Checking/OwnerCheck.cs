namespace SheetGen.Dxf;

/// <summary>Checks that owners and pointers lead where they should.</summary>
internal sealed class OwnerCheck(GraphNodes nodes, Action<int, string> report)
{
    internal void Run()
    {
        foreach (var node in nodes.All)
        {
            Owner(node);
            foreach (var group in node.Record.Groups.Concat(node.Record.Bracketed).Where(g => IsPointer(g.Code)))
                Pointer(node, group);
            foreach (var group in node.Record.XGroups.Where(g => g.Code == 1005))
                Pointer(node, group);
            foreach (var (code, kind) in Targets(node))
                Target(node, code, kind);
            Special(node);
        }
    }

    private static bool IsPointer(int code) => code is (>= 320 and <= 369) or (>= 390 and <= 399) or 480 or 481;

    private void Owner(GraphNode node)
    {
        if (node.Kind == "TABLE" || (node.Kind == "DICTIONARY" && node.Owner.Length == 0))
        {
            if (node.Owner.Length != 0)
                report(node.Record.Line, $"{node.Kind}: its owner must be 0");
            return;
        }
        var owner = nodes.Find(node.Owner);
        var fits = node.Section switch
        {
            "TABLES" => owner is not null && owner == node.Container && owner.Record.Name(2) == node.Kind,
            "OBJECTS" => owner?.Kind == "DICTIONARY",
            _ => OwnsEntity(owner, node),
        };
        if (!fits)
            report(node.Record.Line, $"{node.Kind} {node.Handle}: its owner {node.Owner} is {Describe(owner)}, which is wrong");
    }

    private static bool OwnsEntity(GraphNode? owner, GraphNode node)
    {
        if (node.Kind is "ATTRIB" or "VERTEX" or "SEQEND")
            return owner is not null && owner == node.Container;
        if (owner?.Kind != "BLOCK_RECORD")
            return false;
        var name = owner.Record.Name(2);
        if (node.Section == "ENTITIES")
            return name == (node.Record.Integer(67) == 1 ? "*Paper_Space" : "*Model_Space");
        var block = node.Kind == "BLOCK" ? node : node.Container;
        return block is not null && block.Record.Name(2) == name;
    }

    /// <summary>Pointers that must lead to one kind of record, and be there or 0.</summary>
    private static IEnumerable<(int Code, string Kind)> Targets(GraphNode node) => node.Kind switch
    {
        "BLOCK_RECORD" => [(340, "LAYOUT")],
        "DIMSTYLE" => [(340, "STYLE")],
        "TABLE" => [(340, "DIMSTYLE")],
        "LAYOUT" => [(331, "VIEWPORT")],
        "LEADER" => [(340, "MTEXT")],
        "VIEWPORT" => [(331, "LAYER")],
        _ => [],
    };

    private void Target(GraphNode node, int code, string kind)
    {
        foreach (var group in node.Record.All(code))
        {
            if (nodes.Find(group.Value) is { } target && target.Kind != kind)
                report(group.Line, $"{node.Kind} {node.Handle}: group {code} leads to {target.Kind}, not to {kind}");
        }
    }

    private void Special(GraphNode node)
    {
        switch (node.Kind)
        {
            case "LAYOUT":
                var space = node.Record.All(330).Skip(1).Select(g => nodes.Find(g.Value)).FirstOrDefault();
                if (space?.Kind != "BLOCK_RECORD" || GraphNodes.Plain(space.Record.Raw(340) ?? "") != node.Handle)
                    report(node.Record.Line, $"LAYOUT {node.Handle} and its block record do not name each other");
                break;
            case "DICTIONARY":
                foreach (var entry in node.Record.Groups.Where(g => g.Code is 350 or 360))
                {
                    if (nodes.Find(entry.Value)?.Owner is { } owner && owner != node.Handle)
                        report(entry.Line, $"DICTIONARY {node.Handle}: its entry {entry.Value} has another owner");
                }
                break;
            case "LEADER":
                if (nodes.Find(node.Record.Raw(340) ?? "") is { } note && !note.Record.Bracketed.Any(g => GraphNodes.Plain(g.Value) == node.Handle))
                    report(node.Record.Line, $"LEADER {node.Handle}: its note does not name it among its reactors");
                break;
        }
    }

    private void Pointer(GraphNode node, Group group)
    {
        var handle = GraphNodes.Plain(group.Value);
        if (handle.Length > 0 && nodes.Find(handle) is null)
            report(group.Line, $"{node.Kind} {node.Handle}: group {group.Code} leads to {handle}, which is not in the file");
    }

    private static string Describe(GraphNode? node) => node is null ? "not in the file" : $"{node.Kind} {node.Record.Name(2)}".Trim();
}
