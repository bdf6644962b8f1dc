using SheetGen.Dxf;

namespace SheetGen.Writers.Dxf;

/// <summary>
/// How much a title block drawing would draw, counted before anything is drawn: a few hundred bytes of blocks within blocks can stand for
/// more lines than any machine holds.
/// </summary>
internal sealed class TitleBlockLimits(DxfDocument document)
{
    /// <summary>Most lines, texts and fields of a title block; a scanned seal has some ten thousand.</summary>
    public const int MostEntities = 50_000;

    /// <summary>Deepest nesting of blocks.</summary>
    public const int Deepest = 16;

    private readonly Dictionary<string, (double Count, int Depth)> _blocks = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>What is too much; null where nothing is.</summary>
    public string? Fault(IEnumerable<DxfEntity> entities)
    {
        (double count, int depth) = Sum(entities, 0);
        if (depth > Deepest)
            return $"blocks are nested more than {Deepest} deep";
        return count > MostEntities
            ? FormattableString.Invariant($"the blocks within blocks stand for {count:#,0} lines and texts; the limit is {MostEntities:#,0}")
            : null;
    }

    private (double Count, int Depth) Sum(IEnumerable<DxfEntity> entities, int depth)
    {
        double count = 0;
        int deepest = 0;
        foreach (DxfEntity entity in entities)
        {
            if (entity is not DxfInsert insert)
            {
                count++;
                continue;
            }
            if (!_blocks.TryGetValue(insert.Block, out (double Count, int Depth) inner))
            {
                // Deeper than that need not be counted: it is refused for its depth. The reader has cut blocks that contain themselves.
                inner = depth > Deepest ? (0, 1) : Sum(document.Blocks[insert.Block].Entities, depth + 1);
                _blocks[insert.Block] = inner;
            }
            count += 1 + inner.Count + insert.Attributes.Count;
            deepest = Math.Max(deepest, inner.Depth + 1);
        }
        return (count, deepest);
    }
}
