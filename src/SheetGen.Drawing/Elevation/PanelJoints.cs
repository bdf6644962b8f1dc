using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>
/// The joints between the take-off's panels: where the outlines of two of them touch, so that what is drawn is what is counted and paid.
/// Joints in one line that touch are one joint.
/// </summary>
public static class PanelJoints
{
    private const double Tiny = 1e-6;

    /// <summary>Joints of a wall as segments of (distance along the layout line, elevation) on a leg of its face.</summary>
    public static IEnumerable<PanelJoint> Of(IEnumerable<Panel> panels)
    {
        foreach (IGrouping<int, Panel> leg in panels.GroupBy(p => p.Leg).OrderBy(g => g.Key))
        {
            Side[] sides = [.. leg.SelectMany(p => p.Outline.SelectMany(SidesOf))];
            foreach (bool upright in new[] { true, false })
            {
                foreach (IGrouping<double, Side> line in sides.Where(s => s.IsUpright == upright).GroupBy(s => Math.Round(s.At, 6)).OrderBy(g => g.Key))
                {
                    foreach ((double from, double to) in Merged(Shared([.. line])))
                        yield return upright ? new(leg.Key, new(line.First().At, from), new(line.First().At, to)) : new(leg.Key, new(from, line.First().At), new(to, line.First().At));
                }
            }
        }
    }

    /// <summary>A plumb or level side of an outline.</summary>
    private readonly record struct Side(bool IsUpright, double At, double From, double To);

    private static IEnumerable<Side> SidesOf(IReadOnlyList<ProfilePoint> ring)
    {
        for (int i = 0; i < ring.Count; i++)
        {
            ProfilePoint a = ring[i], b = ring[(i + 1) % ring.Count];
            if (Math.Abs(a.Along - b.Along) < Tiny && Math.Abs(a.Elevation - b.Elevation) > Tiny)
                yield return new(true, a.Along, Math.Min(a.Elevation, b.Elevation), Math.Max(a.Elevation, b.Elevation));
            else if (Math.Abs(a.Elevation - b.Elevation) < Tiny && Math.Abs(a.Along - b.Along) > Tiny)
                yield return new(false, a.Elevation, Math.Min(a.Along, b.Along), Math.Max(a.Along, b.Along));
        }
    }

    /// <summary>Stretches where two of the sides lie on each other.</summary>
    private static IEnumerable<(double From, double To)> Shared(Side[] sides)
    {
        for (int i = 0; i < sides.Length; i++)
        {
            for (int k = i + 1; k < sides.Length; k++)
            {
                double from = Math.Max(sides[i].From, sides[k].From), to = Math.Min(sides[i].To, sides[k].To);
                if (to - from > Tiny)
                    yield return (from, to);
            }
        }
    }

    private static List<(double From, double To)> Merged(IEnumerable<(double From, double To)> stretches)
    {
        var merged = new List<(double From, double To)>();
        foreach ((double from, double to) in stretches.OrderBy(s => s.From))
        {
            if (merged.Count > 0 && from <= merged[^1].To + Tiny)
                merged[^1] = (merged[^1].From, Math.Max(merged[^1].To, to));
            else
                merged.Add((from, to));
        }
        return merged;
    }
}

/// <summary>A plumb or level joint between panels on a leg of the face.</summary>
public sealed record PanelJoint(int Leg, ProfilePoint From, ProfilePoint To);
