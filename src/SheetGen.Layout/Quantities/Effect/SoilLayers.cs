using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>
/// Soil layers along a wall: straight between two borings next to each other along the layout line, layer by layer of the same name; a
/// layer that only one of the two has runs out to nothing at the other. Before the first and after the last boring they are level.
/// </summary>
internal sealed class SoilLayers
{
    public const string Above = "above the borings", Below = "below the borings";

    private readonly List<(double Along, Boring Boring)> _borings = [];
    private readonly Dictionary<int, IReadOnlyList<LayerPair>> _pairs = [];

    /// <param name="wall">The wall on whose layout line the borings are taken.</param>
    public SoilLayers(WallProject project, Wall wall)
    {
        IEnumerable<(double Along, double Off, Boring Boring)> placed = project.Borings
            .Where(b => NearestLine(project, b) == wall.LayoutLine)
            .Select(b => (LayoutProjection.Locate(wall.LayoutLine, b.At), b))
            .Select(p => (p.Item1.Along, Math.Abs(p.Item1.Right), p.b))
            .OrderBy(p => p.Along).ThenBy(p => p.Item2).ThenBy(p => p.b.Name, StringComparer.Ordinal);
        foreach ((double along, _, Boring boring) in placed)
        {
            // Of two borings at one station the one nearer to the layout line counts.
            if (_borings.Count == 0 || along - _borings[^1].Along > Tolerance.SameLength)
                _borings.Add((along, boring));
        }
    }

    public bool IsEmpty => _borings.Count == 0;

    public IEnumerable<string> Names => _borings.Select(b => b.Boring.Name);

    /// <summary>The layers along a hole, from its head on, neighbours of one name as one.</summary>
    /// <param name="alongRate">Change of place for one of length.</param>
    /// <param name="down">Height lost for one of length.</param>
    public IReadOnlyList<LayerStretch> Of(Head head, double alongRate, double down, double length)
    {
        if (IsEmpty)
            return [];
        var stretches = new List<LayerStretch>();
        double from = 0;
        foreach (double to in Depths(head.Along.Number, alongRate, length))
        {
            int pair = PairAt(head.Along.Number + alongRate * (from + to) / 2);
            foreach (LayerStretch part in Within(pair, head, alongRate, down, from, to))
            {
                if (stretches.Count > 0 && stretches[^1].Layer == part.Layer)
                    stretches[^1] = stretches[^1] with { To = part.To };
                else
                    stretches.Add(part);
            }
            from = to;
        }
        return stretches;
    }

    /// <summary>Depths at which the hole passes a boring's station, and its length.</summary>
    private IEnumerable<double> Depths(double along, double rate, double length) =>
        (rate == 0 ? [] : _borings.Select(b => (b.Along - along) / rate).Where(d => d > Tolerance.Rounding && d < length - Tolerance.Rounding)).Order().Append(length);

    /// <summary>Number of the boring behind a place: 0 before the first, the count after the last.</summary>
    private int PairAt(double along) => _borings.Count(b => b.Along <= along);

    private IEnumerable<LayerStretch> Within(int pair, Head head, double rate, double down, double from, double to)
    {
        if (!_pairs.TryGetValue(pair, out IReadOnlyList<LayerPair>? layers))
            _pairs[pair] = layers = LayerPair.Between(_borings[Math.Max(0, pair - 1)].Boring, _borings[Math.Min(pair, _borings.Count - 1)].Boring);
        double first = _borings[Math.Max(0, pair - 1)].Along, last = _borings[Math.Min(pair, _borings.Count - 1)].Along;
        double Share(double depth) => last > first ? (head.Along.Number + rate * depth - first) / (last - first) : 0;
        // Height of the hole over a layer's lower limit is straight along the hole: it is left where it changes sign.
        double Over(LayerPair layer, double depth)
        {
            double share = Share(depth);
            return double.IsFinite(layer.FirstTo) ? head.Elevation.Number - down * depth - (layer.FirstTo + (layer.LastTo - layer.FirstTo) * share) : double.PositiveInfinity;
        }
        var cuts = new SortedSet<double> { from, to };
        foreach (LayerPair layer in layers)
        {
            double a = Over(layer, from), b = Over(layer, to);
            if ((a > 0 && b < 0) || (a < 0 && b > 0))
                cuts.Add(from + (to - from) * a / (a - b));
        }
        double start = from;
        foreach (double end in cuts.Skip(1))
        {
            double middle = (start + end) / 2;
            yield return new LayerStretch(layers.First(l => Over(l, middle) > 0 || !double.IsFinite(l.FirstTo)).Name, start, end);
            start = end;
        }
    }

    private static LayoutLine NearestLine(WallProject project, Boring boring) =>
        project.Walls.Select(w => w.LayoutLine).Distinct().MinBy(l => Math.Abs(LayoutProjection.Locate(l, boring.At).Right))!;
}
