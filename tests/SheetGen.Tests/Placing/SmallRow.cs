using System.Globalization;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Tests.Walls;

namespace SheetGen.Tests.Placing;

/// <summary>
/// One level row, or two, on a straight wall, or one round a corner, with shafts behind it and perhaps a pinned nail, and its best layout by
/// enumeration: every set of places on the lattice that keeps the spacing (so that the face stays covered), every direction of each, all pairs
/// checked. Written for itself: stations, directions, lengths, holes and the distance to the other leg's face are worked out here. Spacing 3.5,
/// shift step 1, redirect step 5, greatest splay 20, inclination 10 to 20 around 15, field tolerance 10.
/// </summary>
internal sealed class SmallRow
{
    private const double Spacing = 3.5;
    private const double VerticalSpacing = 3.5;
    private const double Elevation = 101.5;
    private const double Quantum = 0.01;
    private const double Top = 103;
    private const double Radius = 0.25;
    private const double Clear = 0.5;

    private readonly double _length;
    private readonly double _bottom;
    private readonly WallProject _project;
    private readonly Leg[] _legs;
    private readonly (Leg Leg, double Elevation)[] _rows;
    private readonly (Leg Leg, double Station, double Splay, double Inclination)? _pin;

    public SmallRow(ulong seed, int rows = 1, bool corner = false, bool pin = false)
    {
        var random = new WallRandom(seed);
        double width = corner ? random.Of(6.0, 7) : rows == 1 ? random.Of(7.0, 9.5, 12, 13.5, 15, 17) : random.Of(6.0, 7, 9.5);
        double second = corner ? random.Of(6.0, 7) : 0, deflection = corner ? random.Of(90, 75, 60, 45, -60) : 0;
        _length = random.Of(12.0, 16, 20);
        _bottom = rows == 1 ? 100 : 95;
        var shafts = new List<string>();
        int count = random.Whole(1, 3);
        for (int i = 0; i < count; i++)
        {
            shafts.Add(string.Create(CultureInfo.InvariantCulture,
                $"  - {{name: S{i + 1}, kind: shaft, at: {{station: {random.Between(0, width + second, 0.25)}, offset: {random.Between(3, 11, 0.25)}}}, diameter: {random.Of(1, 2, 3)}, top: 110, bottom: 80}}"));
        }
        // The line runs east from (5000, 2000); the soil is to the south.
        double azimuth = 90 + deflection;
        var first = new Leg(0, width, new Vector2D(5000, 2000), new Vector2D(0, 1), new Vector2D(-1, 0));
        var turned = new Vector2D(Cos(azimuth), Sin(azimuth));
        _legs = corner ? [first, new Leg(width, second, new Vector2D(5000, 2000 + width), turned, new Vector2D(-turned.E, turned.N))] : [first];
        _rows = corner ? [(_legs[0], Elevation), (_legs[1], Elevation)] : [.. Enumerable.Range(0, rows).Select(r => (first, Elevation - r * VerticalSpacing))];
        string nailClear = random.Of("0.5", "0.5", "1.5", "2.25");
        string[] pins = [];
        if (pin)
        {
            Leg leg = _legs[random.Whole(0, _legs.Length - 1)];
            double[] places = [.. leg.Grid.SelectMany(g => (double[])[g - 1, g, g, g, g, g + 1]).Where(leg.Has)];
            _pin = (leg, places[random.Whole(0, places.Length - 1)], random.Of(-15.0, 0, 0, 5, 20), random.Of(15.0, 15, 20));
            pins = ["fixed:", string.Create(CultureInfo.InvariantCulture,
                $"  - {{wall: Wall 1, row: 1, station: {leg.Start + _pin.Value.Station}, splay: {_pin.Value.Splay}, inclination: {_pin.Value.Inclination}}}")];
        }
        Yaml = new PlacingWall
        {
            Length = width + second,
            CornerAt = corner ? width : null,
            Deflection = deflection,
            Top = "[[0, 103], [END, 103]]",
            Bottom = rows == 1 ? "[[0, 100]]" : "[[0, 95]]",
            TopRowDepth = 1.5,
            Lengths = _length.ToString(CultureInfo.InvariantCulture),
            Blocks =
            [
                "obstructions:",
                .. shafts,
                .. pins,
                "rules:",
                $"  clearance: {{obstruction: 0.5, nail: {nailClear}, boundary: 1}}",
                "  redirect: {field_tolerance: 10, step: 5, maximum: 20, inclination: [10, 20]}",
                "  shift_step: 1",
            ],
        }.Yaml;
        _project = PlacingWall.Read(Yaml);
    }

    /// <summary>A straight piece of the wall; stations of the grid and of places count from its start.</summary>
    private sealed record Leg(double Start, double Width, Vector2D Origin, Vector2D Tangent, Vector2D Normal)
    {
        public double[] Grid { get; } = GridOf(Width);

        public bool Has(double station) => station >= 1 - 1e-9 && station <= Width - 1 + 1e-9;

        private static double[] GridOf(double width)
        {
            int n = (int)Math.Ceiling(width / Spacing);
            double rest = (width - (n - 1) * Spacing) / 2;
            double[] grid = [.. Enumerable.Range(0, n).Select(i => rest + i * Spacing)];
            grid[0] = Math.Max(rest, 1);
            grid[^1] = Math.Min(width - rest, width - 1);
            return grid;
        }
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

    private sealed record Place(double Station, int Label, Choice[] Choices, bool IsPinned);

    /// <summary>The best figures of all layouts.</summary>
    public Figures Best()
    {
        Place[][] rows = [.. _rows.Select(r => Places(r.Leg, r.Elevation).OrderBy(p => p.Station).ToArray())];
        var best = new Figures(int.MaxValue, 0, 0);
        Extend(rows, 0, [], -1, default, ref best);
        return best;
    }

    /// <summary>True where some places of a row have no head within half a spacing; walked in small steps.</summary>
    public bool IsUncovered(IReadOnlyList<Nail> nails) => _rows.Any(row =>
    {
        double[] heads = [.. nails.Where(n => Math.Abs(n.Elevation - row.Elevation) < 0.1).Select(n => n.Along - row.Leg.Start)];
        return Enumerable.Range(0, (int)(row.Leg.Width / 0.05)).Any(i => heads.All(h => Math.Abs(h - i * 0.05) > Spacing / 2 + 2 * Quantum || !row.Leg.Has(h)));
    });

    private void Extend(Place[][] rows, int row, List<Choice> chain, int last, Figures cost, ref Figures best)
    {
        if (cost.CompareTo(best) >= 0)
            return;
        Place[] places = rows[row];
        Leg leg = _rows[row].Leg;
        if (last >= 0 && leg.Width - places[last].Station <= Spacing / 2 + 2 * Quantum && !SkipsPin(places, last, places.Length))
        {
            Figures total = cost.Plus(new Figures(0, 0, 3 * (leg.Grid.Length - 1 - places[last].Label)));
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
            if ((last >= 0 && gap < 2 - Quantum) || SkipsPin(places, last, next))
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

    /// <summary>True where a pinned nail stands between two places.</summary>
    private static bool SkipsPin(Place[] places, int from, int to)
    {
        for (int i = from + 1; i < to; i++)
        {
            if (places[i].IsPinned)
                return true;
        }
        return false;
    }

    private IEnumerable<Place> Places(Leg leg, double elevation)
    {
        double[] grid = leg.Grid;
        int pinned = _pin is { } pin && pin.Leg == leg && elevation == Elevation
            ? Enumerable.Range(0, grid.Length).MinBy(i => Math.Round(Math.Abs(grid[i] - pin.Station), 6)) : -1;
        for (int label = 0; label < grid.Length; label++)
        {
            if (label == pinned)
            {
                yield return Pinned(label);
                continue;
            }
            for (int k = -1; k <= 1; k++)
            {
                double station = grid[label] + k;
                if (leg.Has(station))
                    yield return new Place(station, label, [.. Choices(leg, station, elevation, k == 0).OrderBy(c => c.Cost)], false);
            }
        }
    }

    private Place Pinned(int label)
    {
        (Leg leg, double station, double splay, double inclination) = _pin!.Value;
        double change = inclination - 15;
        Figures cost = new(0, Math.Abs(splay) > 10 ? 1 : 0, Math.Abs(splay) + Math.Abs(change) + (Math.Abs(station - leg.Grid[label]) < 1e-9 ? 0 : 2));
        return new Place(station, label, [new Choice(HoleAt(leg, station, Elevation, splay, change), cost, false)], true);
    }

    private IEnumerable<Choice> Choices(Leg leg, double station, double elevation, bool isGrid)
    {
        for (int splay = -20; splay <= 20; splay += 5)
        {
            for (int change = -5; change <= 5; change += 5)
            {
                Hole hole = HoleAt(leg, station, elevation, splay, change);
                if (IsClear(hole, leg))
                    yield return new Choice(hole, new Figures(0, Math.Abs(splay) > 10 ? 1 : 0, Math.Abs(splay) + Math.Abs(change) + (isGrid ? 0 : 2)), false);
                if (isGrid && splay == 0 && change == 0)
                    yield return new Choice(hole, new Figures(1, 0, 0), true);
            }
        }
    }

    private Hole HoleAt(Leg leg, double station, double elevation, double splay, double change)
    {
        double length = Math.Abs(splay) > 10
            ? Math.Ceiling(Math.Max(_length, _length * Cos(15) / (Cos(15 + change) * Cos(splay))) - 1e-9)
            : _length;
        Vector3D head = (leg.Origin + leg.Tangent * station).At(elevation) - _project.Origin.At(0);
        Vector2D plan = leg.Normal * Cos(splay) + leg.Tangent * Sin(splay);
        return new Hole(head, (plan * Cos(15 + change)).At(-Sin(15 + change)), length, Radius, 0);
    }

    private bool IsClear(Hole hole, Leg own) =>
        _project.Obstructions.SelectMany(o => o.Solids).All(s => HoleDistance.ToSolid(hole, s).Clear >= Clear - 1e-9)
        && _legs.All(l => l == own || ToFace(hole, l) - Radius >= Clear - 1e-9);

    /// <summary>Least distance of a hole's axis to the rectangle of a leg's face, by narrowing down: the distance along the hole is convex.</summary>
    private double ToFace(Hole hole, Leg leg)
    {
        double At(double depth)
        {
            Vector3D p = hole.At(depth) + _project.Origin.At(0);
            Vector2D from = new Vector2D(p.N, p.E) - leg.Origin;
            double s = from.Dot(leg.Tangent), across = from.Dot(leg.Normal);
            double ds = Math.Max(0, Math.Max(-s, s - leg.Width)), dz = Math.Max(0, Math.Max(_bottom - p.Z, p.Z - Top));
            return Math.Sqrt(across * across + ds * ds + dz * dz);
        }
        double low = 0, high = hole.Length;
        for (int i = 0; i < 100; i++)
        {
            double third = (high - low) / 3;
            if (At(low + third) < At(high - third))
                high -= third;
            else
                low += third;
        }
        return At((low + high) / 2);
    }

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);

    private static double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180);
}
