namespace SheetGen.Dxf;

/// <summary>Leaves out of a read document what could not be drawn or written again.</summary>
internal sealed class ReadCleanup(DxfDocument document, ReadLog log)
{
    private readonly EntityCheck _check = new(document);

    /// <summary>Puts good entities in their place.</summary>
    internal void Keep(List<(List<DxfEntity> Target, SpaceContent Content)> read)
    {
        foreach (var (target, content) in read)
        {
            foreach (var (record, entity) in content.Entities)
            {
                if (_check.Of(entity).FirstOrDefault() is { } message)
                    log.Warn(record, $"{record.Kind} is left out: {message}");
                else
                    target.Add(entity);
            }
        }
        foreach (var block in document.Blocks)
        {
            if (block.Entities.RemoveAll(e => e is DxfDimension) > 0)
                log.Warn(0, $"block {block.Name}: dimensions in a block are left out");
        }
        CutCycles();
    }

    /// <summary>Takes away inserts through which a block would contain itself.</summary>
    private void CutCycles()
    {
        var done = new HashSet<DxfBlock>();
        foreach (var start in document.Blocks)
        {
            var path = new HashSet<DxfBlock>();
            var open = new Stack<(DxfBlock Block, Queue<DxfBlock> Inner)>();
            Enter(start);
            while (open.TryPeek(out var top))
            {
                if (top.Inner.TryDequeue(out var next))
                {
                    if (path.Contains(next))
                        Cut(top.Block, next);
                    else
                        Enter(next);
                    continue;
                }
                done.Add(top.Block);
                path.Remove(top.Block);
                open.Pop();
            }

            void Enter(DxfBlock block)
            {
                if (done.Contains(block))
                    return;
                path.Add(block);
                open.Push((block, new(block.Entities.OfType<DxfInsert>().Select(i => document.Blocks[i.Block]).Distinct())));
            }
        }
    }

    private void Cut(DxfBlock block, DxfBlock inner)
    {
        log.Warn(0, $"block {block.Name}: inserts of {inner.Name} are left out, because the block would contain itself");
        block.Entities.RemoveAll(e => e is DxfInsert insert && insert.Block.Equals(inner.Name, StringComparison.OrdinalIgnoreCase));
    }
}
