using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>A surface of triangles as ground of the project file: along the face, or in front of it.</summary>
internal sealed class SurfaceNodes(ForeignFile file, XmlPart surface, TinSurface tin, WallPlace wall, double raise, LengthUnit unit, ProblemList problems)
{
    /// <summary>Distances within which two places are one, project units.</summary>
    private const double Same = 1e-6;

    private readonly FileUnit _own = FileUnit.Of(unit);
    private readonly SourceSpot _spot = file.At(surface.Line, surface.Column);
    private readonly string _name = Shown.Short(surface.Attribute("name") ?? "");

    /// <summary>Points of a profile wherever the face, at face_offset, passes an edge of a triangle; null where the surface does not go over all of it, which is reported.</summary>
    public IReadOnlyList<Node>? Profile(string key)
    {
        if (wall.Start is not { } start || wall.End is not { } end)
            return null;
        double[] stops = Stops(start, end);
        TinSurface near = tin.Around([.. stops.Select(At)], 1);
        var points = new List<(double Along, double Z)>();
        for (int i = 0; i + 1 < stops.Length; i++)
        {
            (Vector2D a, Vector2D b) = (At(stops[i]), Before(stops[i + 1]));
            double length = (b - a).Length, per = length < Same ? 0 : (stops[i + 1] - stops[i]) / length;
            if (length < Same)
                continue;
            (double reached, IReadOnlyList<(double At, double Z)> line) = Joined(near.Over(a, b), 0, out string? twice);
            if (twice is not null)
                return Bad($"it lies over itself near {Station(stops[i])}: {twice}");
            if (line.Count == 0 || line[0].At > Same || reached < length - Same)
                return Bad($"it does not go over the face at {Station(stops[i] + (line.Count == 0 || line[0].At > Same ? 0 : reached * per))}");
            points.AddRange(line.Select(p => (stops[i] + p.At * per, p.Z)));
        }
        IReadOnlyList<(double Along, double Z)> kept = Straightened(points);
        problems.Add(ProblemCodes.Imported, _spot, FormattableString.Invariant($"\"{key}\" is surface \"{_name}\" along the face: {kept.Count} points"));
        return [.. kept.Select(p => Nodes.Map(_spot, ("station", Nodes.Along(p.Along, _spot)), ("elevation", Nodes.Length(p.Z + raise, _own, _spot))))];
    }

    /// <summary>Cross sections square to the layout line, from the face outward as far as the surface goes without a gap.</summary>
    public IReadOnlyList<Node>? CrossSections(double every, double reach)
    {
        if (wall.Start is not { } start || wall.End is not { } end)
            return null;
        int count = Math.Max(1, (int)Math.Ceiling((end - start) / every - Same));
        double[] places = [.. Enumerable.Range(0, count + 1).Select(i => i == count ? end : start + i * every)];
        TinSurface near = tin.Around([.. places.Select(At)], reach + 1);
        var nodes = new List<Node>();
        foreach (double place in places)
        {
            Vector2D face = At(place), outward = wall.Line.TangentAt(place).Right * -wall.Side;
            (double reached, IReadOnlyList<(double At, double Z)> line) = Joined(near.Over(face, face + outward * reach), 0, out string? twice);
            if (twice is not null || line.Count < 2 || line[0].At > Same)
            {
                problems.Add(ProblemCodes.LeftOut, _spot, $"the cross section at {Station(place)} is left out: surface \"{_name}\" {(twice is null ? "does not go over the face there" : "lies over itself there")}", "", file.Spot);
                continue;
            }
            nodes.Add(Nodes.Map(_spot, ("station", Nodes.Along(place, _spot)), ("ground", Nodes.List(_spot, Straightened(line).Select(p => Nodes.Map(_spot, ("in_front", Nodes.Length(p.Along, _own, _spot)), ("elevation", Nodes.Length(p.Z + raise, _own, _spot))))))));
        }
        if (nodes.Count == 0)
            return Bad("it goes over no part of the face");
        problems.Add(ProblemCodes.Imported, _spot, FormattableString.Invariant($"\"cross_sections\" are {nodes.Count} cuts through surface \"{_name}\", up to {reach:0.##} {_own.Symbol} in front of the face"));
        return nodes;
    }

    /// <summary>Ends of straight pieces of the face: the line's own, and on curves chords that leave it by no more than a thousandth of a foot.</summary>
    private double[] Stops(double start, double end)
    {
        double error = 0.001 * FileUnit.Foot.In(unit);
        var stops = new SortedSet<double> { start, end };
        foreach (LayoutPiece piece in wall.Line.Pieces.Where(p => p.End > start && p.Start < end))
        {
            (double from, double to) = (Math.Max(start, piece.Start), Math.Min(end, piece.End));
            stops.Add(from);
            stops.Add(to);
            double turn = Math.Abs(wall.Line.AzimuthBefore(to) - wall.Line.AzimuthAt(from));
            if (!piece.IsCurved)
                continue;
            double bend = Math.Max(turn / Math.Max(to - from, Same), 1e-9) * 2;
            int parts = Math.Clamp((int)Math.Ceiling((to - from) / Math.Sqrt(8 * error / bend)), 1, 2_000);
            for (int i = 1; i < parts; i++)
                stops.Add(from + (to - from) * i / parts);
        }
        return [.. stops];
    }

    private Vector2D At(double along) => wall.Line.PointAt(along, wall.FaceOffset * wall.Side);

    /// <summary>As <see cref="At"/>, at a corner on the leg that ends there.</summary>
    private Vector2D Before(double along) => wall.Line.PointAt(along) + Vector2D.FromAzimuth(wall.Line.AzimuthBefore(along)).Right * (wall.FaceOffset * wall.Side);

    /// <summary>The pieces that follow each other from a distance on without a gap, as points.</summary>
    /// <param name="twice">Where two pieces lie over each other at different elevations; null for nowhere.</param>
    private static (double Reached, IReadOnlyList<(double At, double Z)> Points) Joined(IReadOnlyList<(double From, double To, double FromZ, double ToZ)> pieces, double from, out string? twice)
    {
        const double Level = 1e-3;
        twice = null;
        double reached = from;
        var points = new List<(double At, double Z)>();
        foreach ((double start, double end, double startZ, double endZ) in pieces)
        {
            if (start > reached + Same)
                break;
            double At(double d) => end - start < Same ? startZ : startZ + (endZ - startZ) * (d - start) / (end - start);
            // Two that share an edge, or run along it, agree wherever both are.
            if (points.Count > 1 && start < reached - 10 * Same)
            {
                int i = points.FindLastIndex(p => p.At <= start + Same);
                double there = i < 0 ? startZ : i + 1 < points.Count ? points[i].Z + (points[i + 1].Z - points[i].Z) * (start - points[i].At) / Math.Max(Same, points[i + 1].At - points[i].At) : points[i].Z;
                if (Math.Abs(there - startZ) > Level)
                    twice = FormattableString.Invariant($"{there:0.##} and {startZ:0.##}");
            }
            if (points.Count == 0)
                points.Add((Math.Max(start, from), At(Math.Max(start, from))));
            if (end > reached + Same || points.Count == 1)
            {
                points.Add((end, endZ));
                reached = Math.Max(reached, end);
            }
        }
        return (reached, points);
    }

    /// <summary>Without the points that lie on the straight line between their neighbours.</summary>
    private static List<(double Along, double Z)> Straightened(IReadOnlyList<(double Along, double Z)> points)
    {
        var kept = new List<(double Along, double Z)>();
        foreach ((double Along, double Z) p in points)
        {
            if (kept.Count > 0 && p.Along - kept[^1].Along < Same)
                continue;
            if (kept.Count > 1 && Math.Abs(kept[^2].Z + (p.Z - kept[^2].Z) * (kept[^1].Along - kept[^2].Along) / (p.Along - kept[^2].Along) - kept[^1].Z) < Same)
                kept.RemoveAt(kept.Count - 1);
            kept.Add(p);
        }
        return kept;
    }

    private string Station(double along) => wall.Line.StationText(along, unit);

    private IReadOnlyList<Node>? Bad(string why)
    {
        problems.Add(ProblemCodes.CannotUse, _spot, $"surface \"{_name}\" cannot be used: {why}", "take a surface that covers the wall, or type the ground", file.Spot);
        return null;
    }
}
