using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Clearance;

/// <summary>Findings of clear distances under the rules: each pair once, at its least clear distance.</summary>
internal static class ClearFindings
{
    /// <summary>Every pair of nails counts: of different walls, with verification test nails and unresolved ones too.</summary>
    public static IEnumerable<Finding> OfNails(ClearanceScene scene, IReadOnlyList<Nail> nails, LengthUnit unit, int threads)
    {
        double required = scene.Rules.NailClearance;
        foreach (HolePair pair in scene.PairsCloserThan(required - Tolerance.Rounding, threads))
        {
            Nail a = nails[pair.First], b = nails[pair.Second];
            Nearest near = HoleDistance.Between(scene.Holes[pair.First], scene.Holes[pair.Second]);
            yield return Measured(FindingCode.NailNail, a, near, required) with
            {
                Nails = [a.Mark, b.Mark],
                Message = near.RunsInto
                    ? $"{a.Mark} and {b.Mark} run {Figures.Depth(-near.Clear, unit)} into each other; {Figures.Length(required, unit)} clear is required"
                    : $"{a.Mark} comes within {Figures.Beside(near.Clear, required, unit)} of {b.Mark}; {Figures.Length(required, unit)} is required",
            };
        }
    }

    public static IEnumerable<Finding> OfObstacles(
        ClearanceScene scene, IReadOnlyList<Nail> nails, IReadOnlyList<FaceLeg> legs, LengthUnit unit)
    {
        var found = new List<int>();
        for (int i = 0; i < nails.Count; i++)
        {
            scene.ObstaclesTooClose(scene.Holes[i], legs[i], found);
            foreach (IGrouping<(string Name, bool IsFace), int> pieces in found.GroupBy(k => (scene.Obstacles[k].Name, scene.Obstacles[k].Leg is not null)))
            {
                Obstacle? worst = null;
                Nearest least = default;
                foreach (int k in pieces)
                {
                    Nearest near = HoleDistance.ToSolid(scene.Holes[i], scene.Obstacles[k].Solid);
                    if (worst is null || near.Clear < least.Clear)
                        (worst, least) = (scene.Obstacles[k], near);
                }
                if (worst is not null && least.Clear < worst.Required - Tolerance.Rounding)
                    yield return OfObstacle(nails[i], worst, least, unit);
            }
        }
    }

    private static Finding OfObstacle(Nail nail, Obstacle obstacle, Nearest near, LengthUnit unit)
    {
        string asked = Figures.Length(obstacle.Required, unit);
        string name = obstacle.Obstruction is null ? obstacle.Name : Figures.Named(obstacle.Obstruction);
        bool crosses = obstacle.Solid.IsSurface && near.IsCrossing;
        string message = (crosses, near.RunsInto) switch
        {
            (true, _) => $"{nail.Mark} crosses {name} at a depth of {Figures.Length(near.DepthFirst, unit)}; {asked} clear is required",
            (false, true) => $"{nail.Mark} runs {Figures.Depth(-near.Clear, unit)} into {name}; {asked} clear is required",
            _ => $"{nail.Mark} comes within {Figures.Beside(near.Clear, obstacle.Required, unit)} of {name}; {asked} is required",
        };
        string code = obstacle.Obstruction?.Kind switch
        {
            null => FindingCode.NailFace,
            ObstructionKind.Boundary => FindingCode.NailBoundary,
            _ => FindingCode.NailObstruction,
        };
        return Measured(code, nail, near, obstacle.Required) with { Obstruction = obstacle.Name, Message = message };
    }

    private static Finding Measured(string code, Nail nail, Nearest near, double required) => new()
    {
        Code = code,
        Severity = Severity.Error,
        Wall = nail.Wall,
        Nails = [nail.Mark],
        Station = nail.Station,
        Elevation = nail.Elevation,
        Clear = near.Clear,
        Required = required,
        Points = [near.OnFirst, near.OnSecond],
        Depths = double.IsNaN(near.DepthSecond) ? [near.DepthFirst] : [near.DepthFirst, near.DepthSecond],
        Message = "",
    };
}
