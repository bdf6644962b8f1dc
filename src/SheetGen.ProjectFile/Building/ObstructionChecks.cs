using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.ProjectFile.Building;

/// <summary>Whether obstructions stand where they can mean something: behind a face, near a wall, through an opening.</summary>
internal sealed class ObstructionChecks(LayoutLines lines, LengthUnit unit, ProblemList problems)
{
    private double Far => Lengths.IsFoot(unit) ? 500 : 150;

    public void Check(IReadOnlyList<Wall> walls, IReadOnlyList<Obstruction> obstructions)
    {
        if (walls.Count == 0)
            return;
        var front = new List<(Obstruction Obstruction, double Nearest)>();
        foreach (Obstruction obstruction in obstructions.DistinctBy(o => o.Name))
        {
            List<Vector2D> plan = Sampled(obstruction);
            if (walls.Min(w => Distance(w, plan)) > Far)
                ReportFar(walls, obstruction, plan);
            else if (!obstruction.KnownInFront && InFront(walls, obstruction, plan) is { } nearest)
                front.Add((obstruction, nearest));
            if (obstruction.Kind == ObstructionKind.Pipe)
                CheckFace(walls, obstruction);
        }
        bool all = front.Count > 1 && front.Count == obstructions.Count;
        foreach ((Obstruction obstruction, double nearest) in front)
        {
            string hint = all ? "all obstructions lie in front: is retained_side right?" : "check the sign of the offset (positive into the soil); if it is meant: in_front: true";
            problems.Add(ProblemCodes.InFront, obstruction.Spot, FormattableString.Invariant($"{Tree.Shown.Short(obstruction.Name)} lies wholly in front of the face, {nearest:0.00} {Lengths.Symbol(unit)} from it: no hole goes there"), hint);
        }
    }

    /// <summary>Points of its outline in plan, close enough together to tell where it lies.</summary>
    private List<Vector2D> Sampled(Obstruction obstruction)
    {
        Vector2D[] shape = [.. obstruction.Shape.Select(p => p.Plan)];
        bool closed = obstruction.Kind is ObstructionKind.Solid or ObstructionKind.Beam;
        var points = new List<Vector2D>(shape);
        for (int i = 0; i + 1 < shape.Length + (closed ? 1 : 0); i++)
        {
            Vector2D a = shape[i], b = shape[(i + 1) % shape.Length];
            int count = Math.Clamp((int)((b - a).Length / (Far / 250)), 1, 200);
            points.AddRange(Enumerable.Range(1, count - 1).Select(k => a + (b - a) * (k / (double)count)));
        }
        return points;
    }

    private static double Distance(Wall wall, List<Vector2D> plan) => plan.Min(p =>
    {
        double along = Math.Clamp(LayoutProjection.Locate(wall.LayoutLine, p).Along, wall.Start, wall.End);
        return (p - wall.LayoutLine.PointAt(along)).Length;
    });

    /// <summary>How far it is in front of the nearest face; null where some of it lies behind a face, or beside all walls.</summary>
    private static double? InFront(IReadOnlyList<Wall> walls, Obstruction obstruction, List<Vector2D> plan)
    {
        double? nearest = null;
        foreach (Wall wall in walls)
        {
            var face = new Face(wall);
            double low = Math.Max(obstruction.Bottom, wall.Bottom.Points.Min(p => p.Elevation)), high = Math.Min(obstruction.Top, wall.Top.Points.Max(p => p.Elevation));
            double offset = Math.Min(face.OffsetAt(Math.Min(low, high)), face.OffsetAt(Math.Max(low, high)));
            LinePlace[] places = [.. plan.Select(p => LayoutProjection.Locate(wall.LayoutLine, p)).Where(p => p.Along >= wall.Start && p.Along <= wall.End)];
            if (places.Length == 0)
                continue;
            double behind = places.Max(p => p.Right * wall.Side) - offset + obstruction.Diameter / 2;
            if (behind >= 0)
                return null;
            nearest = nearest is { } known ? Math.Min(known, -behind) : -behind;
        }
        return nearest;
    }

    private void ReportFar(IReadOnlyList<Wall> walls, Obstruction obstruction, List<Vector2D> plan)
    {
        Vector2D origin = lines.Origin;
        List<Vector2D> swapped = [.. plan.Select(p => new Vector2D(p.E + origin.E, p.N + origin.N) - origin)];
        string hint = walls.Min(w => Distance(w, swapped)) <= Far ? "northing and easting are swapped, here or in the layout line's start" : "check its coordinates, or its station";
        problems.Add(ProblemCodes.FarAway, obstruction.Spot, FormattableString.Invariant($"{Tree.Shown.Short(obstruction.Name)} lies {walls.Min(w => Distance(w, plan)):0} {Lengths.Symbol(unit)} from the nearest wall: no hole reaches it"), hint);
    }

    /// <summary>Warns where a pipe comes through a face that has no opening there.</summary>
    private void CheckFace(IReadOnlyList<Wall> walls, Obstruction pipe)
    {
        double radius = pipe.Diameter / 2;
        foreach (Wall wall in walls)
        {
            var face = new Face(wall);
            foreach ((Vector3D a, Vector3D b) in pipe.Shape.Zip(pipe.Shape.Skip(1)))
            {
                int count = Math.Clamp((int)((b - a).Length / Math.Max(radius, 0.1)), 4, 2000);
                (Vector3D Point, double Behind)[] run = [.. Enumerable.Range(0, count + 1).Select(k => a + (b - a) * (k / (double)count)).Select(p => (p, Behind(face, p)))];
                if (run.Min(p => Math.Abs(p.Behind)) > radius && !run.Zip(run.Skip(1)).Any(p => p.First.Behind * p.Second.Behind < 0))
                    continue;
                Vector3D at = run.MinBy(p => Math.Abs(p.Behind)).Point;
                double along = LayoutProjection.Locate(wall.LayoutLine, at.Plan).Along;
                bool onFace = along > wall.Start && along < wall.End && at.Z + radius > wall.Bottom.At(along) && at.Z - radius < wall.Top.At(along);
                if (!onFace || wall.Openings.Any(o => along > o.Start - radius && along < o.End + radius && at.Z > o.Bottom - radius && at.Z < o.Top + radius))
                    continue;
                problems.Add(ProblemCodes.PipeThroughFace, pipe.Spot, FormattableString.Invariant($"{Tree.Shown.Short(pipe.Name)} meets the face of {Tree.Shown.Short(wall.Name)} at {wall.StationText(along, unit)}, elevation {at.Z:0.00}, where there is no opening"), "add it to the wall's openings, or correct its points");
                break;
            }
        }
    }

    /// <summary>How far a point lies behind the face at its own elevation.</summary>
    private static double Behind(Face face, Vector3D point) =>
        LayoutProjection.Locate(face.Wall.LayoutLine, point.Plan).Right * face.Wall.Side - face.OffsetAt(point.Z);
}
