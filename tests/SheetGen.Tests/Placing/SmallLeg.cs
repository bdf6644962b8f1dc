using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Tests.Placing;

/// <summary>
/// A straight leg of the first wall of a project, read from the rules of geometry and of rows, and slowly: where its face is at an elevation between the
/// mitres, where a head may stand, where the cover rule is broken, and how far a hole is from the face. Soil to the right; level rows; feet.
/// </summary>
internal sealed class SmallLeg
{
    public const double Quantum = 0.01;

    /// <summary>The rules of rows are tested with two quanta, and kept with a little over one when nails are placed.</summary>
    public const double Checked = 2 * Quantum + 1e-9, Placed = 1.2 * Quantum + 1e-9;

    private const double Far = 100;

    private readonly WallProject _project;
    private readonly Corner? _before;
    private readonly Corner? _after;
    private readonly Vector2D _origin;
    private readonly Vector2D _tangent;
    private readonly Vector2D _normal;
    private readonly List<Vector3D[]> _panels;

    private SmallLeg(WallProject project, double start, double end, Corner? before, Corner? after, Vector2D origin, Vector2D tangent)
    {
        (_project, Start, End, _before, _after, _origin, _tangent) = (project, start, end, before, after, origin, tangent);
        _normal = new Vector2D(-tangent.E, tangent.N);
        _panels = [.. Panels()];
    }

    public double Start { get; }

    public double End { get; }

    private Wall Wall => _project.Walls[0];

    private Section Section => Wall.Sections[0];

    private Rules Rules => _project.Rules;

    private double Bottom(double along) => Wall.Bottom.At(along);

    /// <summary>The legs of the wall from a point and an azimuth on.</summary>
    public static SmallLeg[] Of(WallProject project, Vector2D start, double azimuth)
    {
        Wall wall = project.Walls[0];
        Corner?[] limits = [null, .. wall.LayoutLine.Corners, null];
        var legs = new SmallLeg[limits.Length - 1];
        Vector2D at = start - project.Origin;
        double angle = azimuth * Math.PI / 180;
        for (int i = 0; i < legs.Length; i++)
        {
            double from = limits[i]?.Along ?? wall.Start, to = limits[i + 1]?.Along ?? wall.End;
            angle += limits[i]?.Deflection ?? 0;
            var tangent = new Vector2D(Math.Cos(angle), Math.Sin(angle));
            legs[i] = new SmallLeg(project, from, to, limits[i], limits[i + 1], at, tangent);
            at += tangent * (to - from);
        }
        return legs;
    }

    public bool Has(double along) => along >= Start && (along < End || (_after is null && along <= End));

    private double Offset(double elevation) =>
        Wall.FaceOffset + (Wall.Batter is { } batter ? (elevation - batter.Elevation) * Math.Tan(batter.Angle * Math.PI / 180) : 0);

    /// <summary>Where the mitre before or behind the leg stands at an elevation, beyond the corner's station where the legs reach there; its end where there is none.</summary>
    private double MitreBefore(double elevation) => Start + (_before is null ? 0 : Offset(elevation) * Math.Tan(_before.Deflection / 2));

    private double MitreAfter(double elevation) => End - (_after is null ? 0 : Offset(elevation) * Math.Tan(_after.Deflection / 2));

    private double FaceStart(double elevation) => Math.Max(Start, MitreBefore(elevation));

    private double FaceEnd(double elevation) => Math.Min(End, MitreAfter(elevation));

    private double FirstPlace(double elevation) =>
        _before is null ? Start + Rules.EdgeMin : Math.Max(Start, MitreBefore(elevation) + Rules.CornerClear);

    private double LastPlace(double elevation) =>
        _after is null ? End - Rules.EdgeMin : Math.Min(End - Quantum / 2, MitreAfter(elevation) - Rules.CornerClear);

    /// <summary>The columns of a row at an elevation: n = ceil(width / spacing), all gaps the spacing, the rest shared by both ends; see the contract's rule 1.</summary>
    public double[] Columns(double elevation)
    {
        double start = MitreBefore(elevation), width = MitreAfter(elevation) - start, spacing = Section.HorizontalSpacing;
        double first = FirstPlace(elevation) - start, last = LastPlace(elevation) - start;
        int n = Math.Max(1, (int)Math.Ceiling(width / spacing - 1e-9));
        while (n > 1 && (Math.Min(last, width - Rest(n)) - Math.Max(first, Rest(n))) / (n - 1) < Rules.MinGap - 1e-9)
            n--;
        double[] places = [.. Enumerable.Range(0, n).Select(i => Rest(n) + i * spacing)];
        if (n == 1)
            return [OwnSide(start + Math.Clamp(width / 2, first, Math.Max(first, last)))];
        places[0] = Math.Max(places[0], first);
        places[^1] = Math.Min(places[^1], last);
        if (places[1] - places[0] < Rules.MinGap - 1e-9 || places[^1] - places[^2] < Rules.MinGap - 1e-9)
            places = [.. Enumerable.Range(0, n).Select(i => places[0] + i * (places[^1] - places[0]) / (n - 1))];
        return [.. places.Select(p => OwnSide(start + p))];

        double Rest(int count) => (width - (count - 1) * spacing) / 2;
    }

    /// <summary>A corner's own place belongs to the leg that starts there.</summary>
    private double OwnSide(double along) => Rounded(_after is null || Rounded(along) < End ? along : along - Quantum);

    public static double Rounded(double along) => Math.Round(along / Quantum, MidpointRounding.AwayFromZero) * Quantum;

    /// <summary>True where a head may stand: on the leg's face, clear of its ends, mitres, top and bottom.</summary>
    public bool Holds(double along, double elevation) =>
        Has(along) && along >= FirstPlace(elevation) - 1e-9 && along <= LastPlace(elevation) + 1e-9 && IsOnFace(along, elevation);

    /// <summary>True where top and bottom leave a head its place: steps of theirs are edges too.</summary>
    public bool IsOnFace(double along, double elevation)
    {
        double top = Math.Min(Wall.Top.At(along), Wall.Top.Before(along)), bottom = Math.Max(Wall.Bottom.At(along), Wall.Bottom.Before(along));
        return elevation <= top + Quantum && elevation >= bottom - Quantum
            && ToLine(Wall.Top, along, elevation) >= Rules.EdgeMin - Quantum && ToLine(Wall.Bottom, along, elevation) >= Rules.EdgeMin - Quantum;
    }

    private double ToLine(Profile profile, double along, double elevation)
    {
        ProfilePoint[] line = [.. profile.Between(Start, End)];
        return Enumerable.Range(1, line.Length - 1).Min(i => Small3.ToSegment(
            new Vector3D(along, elevation, 0), new Vector3D(line[i - 1].Along, line[i - 1].Elevation, 0), new Vector3D(line[i].Along, line[i].Elevation, 0)));
    }

    public Vector3D Point(double along, double elevation) => (_origin + _tangent * (along - Start) + _normal * Offset(elevation)).At(elevation);

    public Vector3D Direction(double splay, double inclination)
    {
        double a = splay * Math.PI / 180, i = inclination * Math.PI / 180;
        return ((_normal * Math.Cos(a) + _tangent * Math.Sin(a)) * Math.Cos(i)).At(-Math.Sin(i));
    }

    /// <summary>Least distance of a line from the face, pieces of which are convex.</summary>
    public double ToFace(Vector3D head, Vector3D tip) => _panels.Min(panel => Small3.LeastAlong(head, tip, p => Small3.ToPanel(p, panel)));

    /// <summary>Flat convex pieces of the face between places where top or bottom change, cut or lengthened to the mitres.</summary>
    private IEnumerable<Vector3D[]> Panels()
    {
        double[] stops = [.. Wall.Top.Points.Concat(Wall.Bottom.Points).Select(p => p.Along).Where(s => s > Start && s < End).Append(Start).Append(End).Distinct().Order()];
        for (int i = 0; i + 1 < stops.Length; i++)
        {
            (double a, double b) = (stops[i], stops[i + 1]);
            List<Vector2D> shape = [new(a, Wall.Bottom.At(a)), new(b, Wall.Bottom.Before(b)), new(b, Wall.Top.Before(b)), new(a, Wall.Top.At(a))];
            // Beyond its last station a leg goes on level.
            if (i == 0 && _before is not null)
                yield return OnFace(Cut([new(a - Far, shape[0].E), new(a, shape[0].E), new(a, shape[3].E), new(a - Far, shape[3].E)]));
            if (i + 2 == stops.Length && _after is not null)
                yield return OnFace(Cut([new(b, shape[1].E), new(b + Far, shape[1].E), new(b + Far, shape[2].E), new(b, shape[2].E)]));
            yield return OnFace(Cut(shape));
        }
    }

    private Vector3D[] OnFace(List<Vector2D> shape) => [.. shape.Select(p => Point(p.N, p.E))];

    private List<Vector2D> Cut(List<Vector2D> shape)
    {
        if (_before is not null)
            shape = Small3.Cut(shape, p => p.N - MitreBefore(p.E));
        return _after is null ? shape : Small3.Cut(shape, p => MitreAfter(p.E) - p.N);
    }

    /// <summary>Length of the leg where the cover rule is broken with these heads.</summary>
    public double Uncovered(IEnumerable<(double Along, double Elevation)> heads) => UncoveredSpans(heads, Checked).Sum(s => s.To - s.From);

    /// <summary>
    /// The spans where the cover rule is broken with these heads: what holds between two places where a head or a profile begins or ends to count is looked
    /// at half way. Shorter than the tolerance is none.
    /// </summary>
    public IEnumerable<(double From, double To)> UncoveredSpans(IEnumerable<(double Along, double Elevation)> heads, double tolerance)
    {
        double low = Wall.Bottom.Lowest(Start, End), high = Wall.Top.Highest(Start, End), half = Section.HorizontalSpacing / 2;
        double from = Math.Min(FaceStart(low), FaceStart(high)), to = Math.Max(FaceEnd(low), FaceEnd(high));
        // A nail that covers the face up to its own mitre covers what lies beyond it.
        (double Along, double Elevation, double From, double To)[] nails = [.. heads.Select(h => (h.Along, h.Elevation,
            Wall.Batter is not null && h.Along - half <= FaceStart(h.Elevation) ? from : h.Along - half,
            Wall.Batter is not null && h.Along + half >= FaceEnd(h.Elevation) ? to : h.Along + half))];
        List<double> events = [from, to, .. nails.SelectMany(n => new[] { n.From, n.To }), .. Wall.Top.Points.Concat(Wall.Bottom.Points).Select(p => p.Along)];
        events = [.. events.Where(s => s >= from && s <= to).Order()];
        AddVoidLimits(events);
        for (int i = 0; i + 1 < events.Count; i++)
        {
            double s = (events[i] + events[i + 1]) / 2, length = events[i + 1] - events[i];
            if (length > tolerance && !IsVoid(s) && IsBroken(s, [.. nails.Where(n => n.From <= s && s <= n.To).Select(n => (n.Along, n.Elevation))], tolerance))
                yield return (events[i], events[i + 1]);
        }
    }

    private bool IsBroken(double s, (double Along, double Elevation)[] near, double tolerance)
    {
        if (near.Length == 0)
            return true;
        double[] levels = [.. near.Select(n => n.Elevation).Order()];
        double lowest = levels[0] + 1e-6, highest = levels[^1] - 1e-6;
        return near.Where(n => n.Elevation >= highest).Min(n => Wall.Top.At(n.Along) - n.Elevation) > Rules.TopMax + tolerance
            || near.Where(n => n.Elevation <= lowest).Min(n => n.Elevation - Math.Min(Bottom(n.Along), Bottom(s))) > Rules.BottomMax + tolerance
            || levels.Zip(levels.Skip(1), (a, b) => b - a).Any(gap => gap > Section.VerticalSpacing + tolerance);
    }

    /// <summary>True where the wall, or what a leaning mitre leaves of it, is lower than a head needs; only one end of a leg has a mitre.</summary>
    private bool IsVoid(double s)
    {
        bool IsIn(double z) => FaceStart(z) <= s && s <= FaceEnd(z);
        double low = Bottom(s), high = Wall.Top.At(s);
        if (IsIn(low) && IsIn(high))
            return high - low < 2 * Rules.EdgeMin - 1e-9;
        if (!IsIn(low) && !IsIn(high))
            return true;
        (double end, double cut) = IsIn(low) ? (low, high) : (high, low);
        return Math.Abs(Turn(end, cut, IsIn) - end) < 2 * Rules.EdgeMin - 1e-9;
    }

    /// <summary>The last place, from one where something holds to one where it does not, where it still holds.</summary>
    private static double Turn(double holds, double fails, Func<double, bool> predicate)
    {
        for (int i = 0; i < 60; i++)
        {
            double middle = (holds + fails) / 2;
            (holds, fails) = predicate(middle) ? (middle, fails) : (holds, middle);
        }
        return holds;
    }

    /// <summary>Looked for in steps: between two events the face may be cut away, then high enough, then too low.</summary>
    private void AddVoidLimits(List<double> events)
    {
        for (double s = events[0] + 0.25; s < events[^1]; s += 0.25)
        {
            if (events.All(e => Math.Abs(e - s) > 0.1))
                events.Add(s);
        }
        events.Sort();
        foreach ((double a, double b) in events.Zip(events.Skip(1)).ToArray())
        {
            bool isVoid = IsVoid(a + 1e-9);
            if (b - a > 2e-9 && IsVoid(b - 1e-9) != isVoid)
                events.Add(Turn(a + 1e-9, b - 1e-9, s => IsVoid(s) == isVoid));
        }
        events.Sort();
    }
}
