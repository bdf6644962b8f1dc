using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Corridors;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Neighbours;

/// <summary>
/// Checks the nails of each set of a corridor against those, the faces and the obstructions of all others, in common coordinates: metres
/// from one place. A pair is told once; an obstruction that the nail's own file holds too is left to that file's own check, and one that
/// several others hold is told once.
/// </summary>
public static class Neighbours
{
    /// <summary>Metres by which two files may place one obstruction differently.</summary>
    private const double SamePlace = 0.03;

    /// <returns>In the order of the sets and of their holes: other nails, then faces and obstructions.</returns>
    public static IReadOnlyList<Clash> Check(IReadOnlyList<NeighbourSet> sets)
    {
        var clashes = new List<(int Set, int Hole, Clash Clash)>();
        foreach (IGrouping<string, Placed> group in sets.Select((s, i) => new Placed(s, i)).GroupBy(p => p.Set.System))
        {
            Placed[] placed = [.. group];
            if (Array.Find(placed, p => p.Set.Holes.Count > 0) is not { } first)
                continue;
            Vector3D origin = first.Set.Holes[0].Hole.Head * Lengths.MetresPer(first.Set.Unit);
            foreach (Placed p in placed)
                p.MoveTo(origin);
            clashes.AddRange(NailsOfOthers(placed));
            clashes.AddRange(BodiesOfOthers(placed));
        }
        return [.. clashes.OrderBy(c => c.Set).ThenBy(c => c.Hole).Select(c => c.Clash)];
    }

    private static IEnumerable<(int, int, Clash)> NailsOfOthers(Placed[] placed)
    {
        // A project is opened only where another set comes near, and those that lie alone have no part in the search.
        Placed[] near = [.. placed.Where(p => p.Holes.Length > 0 && placed.Any(o => o != p && o.Holes.Length > 0 && o.HoleBox.Grow(Placed.Farthest).Meets(p.HoleBox)))];
        (Placed Of, int Number)[] owners = [.. near.SelectMany(p => p.Set.Holes.Select((_, i) => (p, i)))];
        Hole[] holes = [.. near.SelectMany(p => p.Holes)];
        double most = near.Length == 0 ? 0 : near.Max(p => p.NailClearance);
        foreach (HolePair pair in new HoleIndex(holes).PairsCloserThan(most - Tolerance.LargeCoordinates))
        {
            (Placed a, int i) = owners[pair.First];
            (Placed b, int k) = owners[pair.Second];
            double required = Math.Max(a.NailClearance, b.NailClearance);
            if (a == b || pair.Clear >= required - Tolerance.LargeCoordinates)
                continue;
            Nearest measured = HoleDistance.Between(holes[pair.First], holes[pair.Second]);
            yield return (a.Number, i, Tell(a, i, b, b.Set.Holes[k].Mark, $"{b.Set.Holes[k].Mark} of {b.Set.Name}", FindingCode.NailNail, measured, required));
        }
    }

    private static IEnumerable<(int, int, Clash)> BodiesOfOthers(Placed[] placed)
    {
        foreach (Placed a in placed.Where(p => p.Holes.Length > 0))
        {
            Placed[] others = [.. placed.Where(b => b != a && b.Reach.Grow(Placed.Farthest).Meets(a.HoleBox))];
            if (others.Length == 0)
                continue;
            IReadOnlyList<(string Kind, Bounds Box)> own = a.Obstructions;
            for (int i = 0; i < a.Holes.Length; i++)
            {
                var told = new List<(string Kind, Bounds Box)>();
                foreach (Placed b in others)
                {
                    foreach (Clash clash in OfOther(a, i, b, own, told))
                        yield return (a.Number, i, clash);
                }
            }
        }
    }

    private static IEnumerable<Clash> OfOther(Placed a, int hole, Placed b, IReadOnlyList<(string Kind, Bounds Box)> own, List<(string Kind, Bounds Box)> told)
    {
        if (b.Obstacles is not { } obstacles)
            yield break;
        double scale = 1 / b.Metres;
        Hole seen = b.Back(a.Holes[hole]);
        var found = new List<int>();
        obstacles.Near(seen, Placed.Farthest * scale, found);
        foreach (IGrouping<(string Name, bool IsFace), int> pieces in found.GroupBy(k => (obstacles.All[k].Name, obstacles.All[k].Leg is not null)))
        {
            Obstacle first = obstacles.All[pieces.First()];
            double required = Math.Max(first.Required * b.Metres, a.RequiredTo(first)) * scale;
            Nearest? least = null;
            foreach (int k in pieces)
            {
                Solid solid = obstacles.All[k].Solid;
                if (HoleDistance.CloserThan(seen, solid, required - Tolerance.LargeCoordinates * scale) && HoleDistance.ToSolid(seen, solid) is var near && (least is null || near.Clear < least.Value.Clear))
                    least = near;
            }
            if (least is not { } nearest)
                continue;
            if (first.Obstruction is { } obstruction)
            {
                (string Kind, Bounds Box) body = b.BodyOf(obstruction);
                if (own.Any(o => IsSame(o, body)) || told.Any(o => IsSame(o, body)))
                    continue;
                told.Add(body);
            }
            string code = first.Obstruction?.Kind switch { null => FindingCode.NailFace, ObstructionKind.Boundary => FindingCode.NailBoundary, _ => FindingCode.NailObstruction };
            string name = first.Obstruction is null ? first.Name : Figures.Named(first.Obstruction);
            yield return Tell(a, hole, b, first.Name, $"{name} of {b.Set.Name}", code, Metric(nearest, b), required * b.Metres);
        }
    }

    /// <summary>A distance measured in another unit, in metres; the points stay where they were measured.</summary>
    private static Nearest Metric(Nearest near, Placed measuredIn) => near with
    {
        Clear = near.Clear * measuredIn.Metres,
        DepthFirst = near.DepthFirst * measuredIn.Metres,
    };

    private static bool IsSame((string Kind, Bounds Box) a, (string Kind, Bounds Box) b)
    {
        return a.Kind == b.Kind && Close(a.Box.Low, b.Box.Low) && Close(a.Box.High, b.Box.High);

        static bool Close(Vector3D p, Vector3D q) => Near(p.N, q.N) && Near(p.E, q.E) && Near(p.Z, q.Z);
        static bool Near(double x, double y) => x == y || Math.Abs(x - y) <= SamePlace;
    }

    private static Clash Tell(Placed a, int hole, Placed b, string other, string named, string code, Nearest near, double required)
    {
        LengthUnit unit = a.Set.Unit;
        double clear = near.Clear / a.Metres, asked = required / a.Metres, depth = near.DepthFirst / a.Metres;
        string who = $"{a.Set.Holes[hole].Mark} of {a.Set.Name}", ask = $"{Figures.Length(asked, unit)} clear is required";
        string message = code is FindingCode.NailFace or FindingCode.NailBoundary && near.IsCrossing
            ? $"{who} crosses {named} at a depth of {Figures.Length(depth, unit)}; {ask}"
            : near.RunsInto
            ? $"{who} runs {Figures.Depth(-clear, unit)} into {named}; {ask}"
            : $"{who} comes within {Figures.Beside(clear, asked, unit)} of {named}; {Figures.Length(asked, unit)} is required";
        Vector3D at = a.Set.Holes[hole].Hole.At(depth);
        return new Clash(code, a.Set.Name, a.Set.Holes[hole].Mark, b.Set.Name, other, Lengths.Symbol(unit), clear, asked, at.N, at.E, at.Z, depth, message);
    }

    /// <summary>A set in common coordinates.</summary>
    private sealed class Placed(NeighbourSet set, int number)
    {
        /// <summary>Metres beyond which nothing is too close, whatever a project asks for.</summary>
        public const double Farthest = 10;

        private Vector3D _origin;
        private IReadOnlyList<(string, Bounds)>? _obstructions;
        private Obstacles? _obstacles;

        public NeighbourSet Set => set;

        public int Number => number;

        public double Metres { get; } = Lengths.MetresPer(set.Unit);

        public Hole[] Holes { get; private set; } = [];

        /// <summary>Around all holes; of no meaning where there are none.</summary>
        public Bounds HoleBox { get; private set; }

        public Bounds Reach { get; private set; }

        public double NailClearance => Rules.NailClearance * Metres;

        public Obstacles? Obstacles => set.Project.Value is { } project ? _obstacles ??= new Obstacles(project) : null;

        public IReadOnlyList<(string Kind, Bounds Box)> Obstructions => _obstructions ??= [.. (set.Project.Value?.Obstructions ?? []).Select(BodyOf)];

        private Rules Rules => set.Project.Value?.Rules ?? Rules.Default(set.Unit);

        public double RequiredTo(Obstacle obstacle) =>
            Metres * (obstacle.Obstruction is { } o ? Rules.ClearanceTo(o.Kind) : Rules.ObstructionClearance);

        public void MoveTo(Vector3D origin)
        {
            _origin = origin;
            Holes = [.. set.Holes.Select(h => new Hole(h.Hole.Head * Metres - origin, h.Hole.Direction, h.Hole.Length * Metres, h.Hole.Radius * Metres, h.Hole.Drift))];
            HoleBox = Holes.Length == 0 ? default : Holes.Select(Bounds.Of).Aggregate((a, b) => a.With(b));
            Bounds box = set.Reach;
            Reach = new Bounds((box.Low * Metres - origin) with { Z = double.NegativeInfinity }, (box.High * Metres - origin) with { Z = double.PositiveInfinity });
        }

        /// <summary>A hole of the common coordinates in the unit and about the origin of this set's project.</summary>
        public Hole Back(in Hole hole)
        {
            Vector2D own = set.Project.Value!.Origin;
            return new Hole((hole.Head + _origin) * (1 / Metres) - own.At(0), hole.Direction, hole.Length / Metres, hole.Radius / Metres, hole.Drift);
        }

        /// <summary>Kind and box of an obstruction in common coordinates.</summary>
        public (string Kind, Bounds Box) BodyOf(Obstruction obstruction)
        {
            Vector3D shift = set.Project.Value!.Origin.At(0);
            Bounds box = obstruction.Solids.Select(s => s.Bounds).Aggregate((a, b) => a.With(b));
            return (obstruction.Kind.ToString(), new Bounds((box.Low + shift) * Metres - _origin, (box.High + shift) * Metres - _origin));
        }
    }
}
