using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Tests.Properties;

/// <summary>
/// Rule 1 by brute force: N(s) taken literally at many stations. Broken means broken by more than two quanta, held means held without any
/// tolerance; in between no claim is made, as where the mitre takes the face or the wall is too low for nails.
/// </summary>
internal sealed class CoverTwin(WallProject project, IEnumerable<(double Along, double Elevation)> heads, Wall wall, Section section, Leg leg)
{
    // A hair more than the program's own, so that a lack of just that length is not a matter of rounding.
    private readonly double _tolerance = (project.Unit == Model.Units.LengthUnit.Metre ? 0.002 : 0.02) + 1e-9;
    private readonly Face _face = new(wall);
    private readonly (double Along, double Elevation)[] _nails = [.. heads];

    public CoverTwin(WallProject project, NailLayout layout, Wall wall, Section section, Leg leg)
        : this(project, layout.Nails.Where(n => n.Wall == wall && n.Section == section && n.Kind != NailKind.Verification && leg.Has(n.Along)).Select(n => (n.Along, n.Elevation)), wall, section, leg)
    {
    }

    public double Start { get; } = Math.Max(section.Start, leg.Start);

    public double End { get; } = Math.Min(section.End, leg.End);

    public static IEnumerable<CoverTwin> All(WallProject project, NailLayout layout) =>
        from wall in project.Walls
        from section in wall.Sections
        from leg in new Face(wall).Legs
        let twin = new CoverTwin(project, layout, wall, section, leg)
        where twin.End > twin.Start + 1e-9
        select twin;

    public Wall Wall => wall;

    public Section Section => section;

    public Leg Leg => leg;

    /// <summary>The same stretch with other heads.</summary>
    public CoverTwin With(IEnumerable<(double Along, double Elevation)> others) => new(project, others, wall, section, leg);

    /// <summary>Stations to look at: halfway between all places where N(s) or a profile changes, and close to both sides of them.</summary>
    public IEnumerable<double> Samples()
    {
        double half = section.HorizontalSpacing / 2;
        IEnumerable<double> changes = _nails.SelectMany(n => new[] { n.Along - half, n.Along, n.Along + half })
            .Concat(wall.Top.Points.Select(p => p.Along)).Concat(wall.Bottom.Points.Select(p => p.Along)).Append(Start).Append(End);
        double[] places = [.. changes.Where(s => s >= Start && s <= End).Distinct().Order()];
        for (int i = 0; i + 1 < places.Length; i++)
        {
            double gap = places[i + 1] - places[i];
            if (gap < 1e-9)
                continue; // One place, written in two ways: a station less the wall's start, and a length along the line.
            foreach (double share in (double[])[0.02, 0.25, 0.5, 0.75, 0.98])
                yield return places[i] + gap * share;
        }
    }

    /// <summary>Broken over more than the tolerance along the wall: what is shorter is no claim.</summary>
    public bool IsBroken(double s) => IsBrokenAt(s) && IsBrokenAt(s - _tolerance / 2) && IsBrokenAt(s + _tolerance / 2);

    private bool IsBrokenAt(double s) => !IsVoid(s, _tolerance) && Worst(s, _tolerance, false) > _tolerance && Worst(s, 0, false) > _tolerance;

    public bool IsHeld(double s) => Worst(s, 0, true) <= 1e-6;

    private bool IsVoid(double s, double tolerance)
    {
        double height = wall.Top.At(s) - wall.Bottom.At(s);
        if (height < 2 * project.Rules.EdgeMin + tolerance)
            return true;
        bool Cut(Corner? corner) => corner is not null && Math.Abs(s - corner.Along) <=
            Math.Max(_face.MitreCut(corner, wall.Top.At(s)), _face.MitreCut(corner, wall.Bottom.At(s))) + tolerance;
        return Cut(leg.StartCorner) || Cut(leg.EndCorner);
    }

    /// <summary>By how much the worst part of the rule is broken. Highest and lowest, and the order, by elevation or by depth: where both
    /// readings differ the harsher or the milder counts.</summary>
    private double Worst(double s, double wider, bool harsher)
    {
        (double Along, double Elevation)[] near = [.. _nails.Where(n => Math.Abs(n.Along - s) <= section.HorizontalSpacing / 2 + wider + 1e-9)];
        if (near.Length == 0)
            return double.PositiveInfinity;
        double Depth((double Along, double Elevation) n) => wall.Top.At(n.Along) - n.Elevation;
        double ByOrder(Func<(double Along, double Elevation), double> depth)
        {
            (double Along, double Elevation)[] sorted = [.. near.OrderBy(depth)];
            // Where several are equally high or low, any of them will do, or all must.
            double Among((double Along, double Elevation) extreme, Func<(double Along, double Elevation), double> measure)
            {
                IEnumerable<double> values = near.Where(n => Math.Abs(depth(n) - depth(extreme)) < 1e-6).Select(measure);
                return harsher ? values.Max() : values.Min();
            }
            double worst = Math.Max(
                Among(sorted[0], Depth) - project.Rules.TopMax,
                Among(sorted[^1], n => n.Elevation - Math.Min(wall.Bottom.At(n.Along), wall.Bottom.At(s))) - project.Rules.BottomMax);
            for (int i = 1; i < sorted.Length; i++)
                worst = Math.Max(worst, depth(sorted[i]) - depth(sorted[i - 1]) - section.VerticalSpacing);
            return worst;
        }
        double level = ByOrder(n => -n.Elevation);
        if (section.Rows == RowKind.Level)
            return level;
        double parallel = ByOrder(Depth);
        if (section.Rows == RowKind.Parallel && !harsher)
            return Math.Min(level, parallel);
        return harsher ? Math.Max(level, parallel) : Math.Min(level, parallel);
    }
}
