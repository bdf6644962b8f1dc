using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Dxf;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>
/// Which block of an edited drawing is which nail: first by the mark in its extended data, then by its attributes, then by where it stands,
/// at last by the nearest nail that is missing. Of copies with one mark the one that stands where the nail stood, or nearest, is the nail.
/// </summary>
internal sealed class NailMatching(
    WallProject project, NailLayout layout, Dictionary<string, BlockReference> built, IReadOnlyList<NailBlock> blocks, double tolerance, List<string> notes)
{
    private readonly Dictionary<Nail, NailBlock> _known = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<NailBlock> _left = [.. blocks];

    /// <param name="isExploded">Tells of a nail without a block that its symbol stands where it stood: no other block is that nail.</param>
    public Dictionary<Nail, NailBlock> Match(Func<Nail, bool> isExploded)
    {
        ByMark();
        ByAttributes();
        ByPlace();
        ByNearest(isExploded);
        return _known;
    }

    private double Away(Nail nail, NailBlock block)
    {
        Point2 was = built[nail.Mark].Position;
        return (block.At - new DxfPoint(was.X, was.Y)).Length;
    }

    private void Know(Nail nail, NailBlock block)
    {
        _known[nail] = block;
        _left.Remove(block);
    }

    private void ByMark()
    {
        ILookup<string, NailBlock> byMark = blocks.Where(b => b.Mark is not null).ToLookup(b => b.Mark!);
        foreach (Nail nail in layout.Nails.Where(n => byMark.Contains(n.Mark)))
            Know(nail, byMark[nail.Mark].MinBy(b => Away(nail, b))!);
    }

    /// <summary>Station, elevation and row tell which nail a block was; the program that lost the extended data has kept them.</summary>
    private void ByAttributes()
    {
        double near = 2 * Lengths.Quantum(project.Unit);
        var candidates = new Dictionary<Nail, List<NailBlock>>(ReferenceEqualityComparer.Instance);
        foreach (NailBlock block in _left.Where(b => b.Mark is null && b.HasAttributes))
        {
            double? station = block.Value("STATION") is { } s ? NailBlock.Station(s, project.Unit) : null, elevation = block.Value("ELEVATION") is { } z ? NailBlock.Number(z, project.Unit) : null;
            if (station is null || elevation is null || block.Value("ROW") is not { } row)
                continue;
            Nail? nail = layout.Nails.FirstOrDefault(n => !_known.ContainsKey(n) && n.Row.ToString() == row && Math.Abs(n.Station - station.Value) < near && Math.Abs(n.Elevation - elevation.Value) < near
                && (block.Value(NailSymbols.Mark) is not { } mark || n.Mark.EndsWith(mark, StringComparison.Ordinal)));
            if (nail is null)
                continue;
            if (!candidates.TryGetValue(nail, out List<NailBlock>? list))
                candidates[nail] = list = [];
            list.Add(block);
        }
        foreach ((Nail nail, List<NailBlock> list) in candidates)
            Know(nail, list.MinBy(b => Away(nail, b))!);
    }

    private void ByPlace()
    {
        foreach (Nail nail in layout.Nails.Where(n => !_known.ContainsKey(n)))
        {
            // A copy that carries another nail's mark and was laid over this one's place is not this nail.
            if (_left.Where(b => b.Mark is null && Away(nail, b) <= tolerance).MinBy(b => Away(nail, b)) is { } block)
                Know(nail, block);
        }
    }

    private void ByNearest(Func<Nail, bool> isExploded)
    {
        List<(Nail Nail, NailBlock Block, double Away)> pairs = [.. layout.Nails.Where(n => !_known.ContainsKey(n) && !isExploded(n))
            .SelectMany(n => _left.Where(b => b.Mark is null && !b.HasAttributes).Select(b => (n, b, Away(n, b)))).Where(p => p.Item3 <= p.n.Section.HorizontalSpacing)];
        foreach ((Nail nail, NailBlock block, double away) in pairs.OrderBy(p => p.Away).ThenBy(p => p.Nail.Mark, StringComparer.Ordinal))
        {
            if (_known.ContainsKey(nail) || !_left.Contains(block))
                continue;
            Know(nail, block);
            notes.Add($"{nail.Mark} was known by its place alone: its block has lost mark and attributes");
        }
    }
}
