using System.Globalization;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Tests.Walls;

namespace SheetGen.Tests.Placing;

/// <summary>
/// One level row, or two, on a straight wall with shafts behind it, and its best layout by enumeration: every set of places on the lattice that
/// keeps the spacing, every direction of each, all pairs checked. Written for itself: stations, directions, lengths and holes are worked
/// out here. Spacing 3.5, shift step 1, redirect step 5, greatest splay 20, inclination 10 to 20 around 15, field tolerance 10.
/// </summary>
internal sealed class SmallRow
{
    private const double Spacing = 3.5;
    private const double VerticalSpacing = 3.5;
    private const double Elevation = 101.5;
    private const double Quantum = 0.01;

    private readonly double _width;
    private readonly double _length;
    private readonly WallProject _project;
    private readonly double[] _grid;
    private readonly int _rows;

    public SmallRow(ulong seed, int rows = 1)
    {
        var random = new WallRandom(seed);
        _rows = rows;
        _width = rows == 1 ? random.Of(7.0, 9.5, 12, 13.5, 15, 17) : random.Of(6.0, 7, 9.5);
        _length = random.Of(12.0, 16, 20);
        var shafts = new List<string>();
        int count = random.Whole(1, 3);
        for (int i = 0; i < count; i++)
        {
            shafts.Add(string.Create(CultureInfo.InvariantCulture,
                $"  - {{name: S{i + 1}, kind: shaft, at: {{station: {random.Between(0, _width, 0.25)}, offset: {random.Between(3, 11, 0.25)}}}, diameter: {random.Of(1, 2, 3)}, top: 110, bottom: 80}}"));
        }
        Yaml = new PlacingWall
        {
            Length = _width,
            Top = "[[0, 103], [END, 103]]",
            Bottom = rows == 1 ? "[[0, 100]]" : "[[0, 95]]",
            TopRowDepth = 1.5,
            Lengths = _length.ToString(CultureInfo.InvariantCulture),
            Blocks =
            [
                "obstructions:",
                .. shafts,
                "rules:",
                $"  clearance: {{obstruction: 0.5, nail: {random.Of("0.5", "0.5", "1.5", "2.25")}, boundary: 1}}",
                "  redirect: {field_tolerance: 10, step: 5, maximum: 20, inclination: [10, 20]}",
                "  shift_step: 1",
            ],
        }.Yaml;
        _project = PlacingWall.Read(Yaml);
        int n = (int)Math.Ceiling(_width / Spacing);
        double rest = (_width - (n - 1) * Spacing) / 2;
        _grid = [.. Enumerable.Range(0, n).Select(i => rest + i * Spacing)];
        _grid[0] = Math.Max(rest, 1);
        _grid[^1] = Math.Min(_width - rest, _width - 1);
    }

    public string Yaml { get; }

    public WallProject Project => _project;

    /// <summary>Figures in order: unresolved, noted, effort.</summary>
    public readonly record struct Figures(int Unresolved, int Noted, double Effort) : IComparable<Figures>
    {
        public int CompareTo(Figures other) => (Unresolved, Noted, Math.Round(Effort, 6)).CompareTo((other.Unresolved, other.Noted, Math.Round(other.Effort, 6)));

        public Figures Plus(Figures o) => new(Unresolved + o.Unresolved, Noted + o.Noted, Effort + o.Effort);
    }

    private sealed record Choice(Hole Hole, Figures Cost, bool IsUnresolved);

    private sealed record Place(double Station, int Label, Choice[] Choices);

    /// <summary>The best figures of all layouts.</summary>
    public Figures Best()
    {
        Place[][] rows = [.. Enumerable.Range(0, _rows).Select(r => Places(Elevation - r * VerticalSpacing).OrderBy(p => p.Station).ToArray())];
        var best = new Figures(int.MaxValue, 0, 0);
        Extend(rows, 0, [], -1, default, ref best);
        return best;
    }

    private void Extend(Place[][] rows, int row, List<Choice> chain, int last, Figures cost, ref Figures best)
    {
        if (cost.CompareTo(best) >= 0)
            return;
        Place[] places = rows[row];
        if (last >= 0 && _width - places[last].Station <= Spacing / 2 + 2 * Quantum)
        {
            Figures total = cost.Plus(new Figures(0, 0, 3 * (_grid.Length - 1 - places[last].Label)));
            if (row + 1 < rows.Length)
                Extend(rows, row + 1, chain, -1, total, ref best);
            else if (total.CompareTo(best) < 0)
                best = total;
        }
        for (int next = last + 1; next < places.Length; next++)
        {
            double gap = last < 0 ? 0 : places[next].Station - places[last].Station;
            if (last < 0 ? places[next].Station > Spacing / 2 + 2 * Quantum : gap > Spacing + 2 * Quantum)
                break;
            if (last >= 0 && gap < 2 - Quantum)
                continue;
            int skipped = Math.Max(0, places[next].Label - (last < 0 ? -1 : places[last].Label) - 1);
            foreach (Choice choice in places[next].Choices)
            {
                if (!choice.IsUnresolved && chain.Any(c => !c.IsUnresolved && HoleDistance.Between(c.Hole, choice.Hole).Clear < _project.Rules.NailClearance - 1e-9))
                    continue;
                chain.Add(choice);
                Extend(rows, row, chain, next, cost.Plus(choice.Cost).Plus(new Figures(0, 0, 3 * skipped)), ref best);
                chain.RemoveAt(chain.Count - 1);
            }
        }
    }

    private IEnumerable<Place> Places(double elevation)
    {
        for (int label = 0; label < _grid.Length; label++)
        {
            for (int k = -1; k <= 1; k++)
            {
                double station = _grid[label] + k;
                if (station >= 1 - 1e-9 && station <= _width - 1 + 1e-9)
                    yield return new Place(station, label, [.. Choices(station, elevation, k == 0).OrderBy(c => c.Cost)]);
            }
        }
    }

    private IEnumerable<Choice> Choices(double station, double elevation, bool isGrid)
    {
        for (int splay = -20; splay <= 20; splay += 5)
        {
            for (int change = -5; change <= 5; change += 5)
            {
                bool noted = Math.Abs(splay) > 10;
                double length = noted
                    ? Math.Ceiling(Math.Max(_length, _length * Cos(15) / (Cos(15 + change) * Cos(splay))) - 1e-9)
                    : _length;
                // The line runs east from (5000, 2000); the soil is to the south.
                var head = new Vector3D(5000, 2000 + station, elevation) - _project.Origin.At(0);
                var direction = new Vector3D(-Cos(15 + change) * Cos(splay), Cos(15 + change) * Sin(splay), -Sin(15 + change));
                var hole = new Hole(head, direction, length, 0.25, 0);
                if (_project.Obstructions.SelectMany(o => o.Solids).All(s => HoleDistance.ToSolid(hole, s).Clear >= 0.5 - 1e-9))
                    yield return new Choice(hole, new Figures(0, noted ? 1 : 0, Math.Abs(splay) + Math.Abs(change) + (isGrid ? 0 : 2)), false);
                if (isGrid && splay == 0 && change == 0)
                    yield return new Choice(hole, new Figures(1, 0, 0), true);
            }
        }
    }

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);

    private static double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180);
}
