using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>
/// Everything that a hole of a project must keep clear of: obstructions, boundaries, faces and a set of other holes. The search, the
/// checker and every tool ask here, with holes at any station and angle. It never changes; reading it from several threads is safe.
/// </summary>
public sealed class ClearanceScene
{
    private readonly Hole[] _holes;
    private readonly HoleIndex _holeIndex;
    private readonly SolidIndex _solidIndex;
    private readonly double _mostRequired;

    /// <summary>The obstructions and faces of a project, and the holes that stand already (none for a search that keeps its own).</summary>
    public ClearanceScene(WallProject project, IReadOnlyList<Hole> holes)
    {
        Rules = project.Rules;
        Obstacles = MakeObstacles(project);
        _mostRequired = Obstacles.Count == 0 ? 0 : Obstacles.Max(o => o.Required);
        _holes = holes.ToArray();
        _holeIndex = new HoleIndex(_holes);
        _solidIndex = new SolidIndex(Obstacles.Select(o => o.Solid).ToList());
    }

    public Rules Rules { get; }

    /// <summary>Pieces of obstructions in the project's order, then faces by wall and leg.</summary>
    public IReadOnlyList<Obstacle> Obstacles { get; }

    public IReadOnlyList<Hole> Holes => _holes;

    /// <summary>Pairs of the scene's holes that come nearer than a limit, in order of their numbers.</summary>
    public IReadOnlyList<HolePair> PairsCloserThan(double limit, int threads = 1) => _holeIndex.PairsCloserThan(limit, threads);

    /// <summary>Fills the list with the numbers of the holes whose clear distance to a candidate is under the limit, in order.</summary>
    public void HolesCloserThan(in Hole candidate, double limit, List<int> found)
    {
        found.Clear();
        _holeIndex.CloserThan(candidate, limit, found);
        found.Sort();
    }

    /// <summary>
    /// Fills the list with the numbers of the obstacles that a candidate comes nearer to than the rules ask, in order.
    /// </summary>
    /// <param name="start">The leg that the candidate starts from: its own face does not count.</param>
    public void ObstaclesTooClose(in Hole candidate, FacePlace start, List<int> found)
    {
        Near(candidate, _mostRequired, found);
        int kept = 0;
        for (int i = 0; i < found.Count; i++)
        {
            Obstacle obstacle = Obstacles[found[i]];
            if (obstacle.Concerns(start) && HoleDistance.CloserThan(candidate, obstacle.Solid, obstacle.Required))
                found[kept++] = found[i];
        }
        found.RemoveRange(kept, found.Count - kept);
    }

    /// <summary>Fills the list with the numbers of the obstacles whose box is within reach of a candidate's, in order.</summary>
    public void Near(in Hole candidate, double reach, List<int> found)
    {
        found.Clear();
        _solidIndex.Near(Bounds.Of(candidate).Grow(Math.Max(0, reach)), found);
        found.Sort();
    }

    private static List<Obstacle> MakeObstacles(WallProject project)
    {
        var obstacles = new List<Obstacle>();
        foreach (Obstruction obstruction in project.Obstructions)
        {
            double required = project.Rules.ClearanceTo(obstruction.Kind);
            foreach (Solid solid in obstruction.Solids)
                obstacles.Add(new Obstacle(obstruction.Name, solid, required, obstruction, null));
        }
        foreach (Wall wall in project.Walls)
        {
            IReadOnlyList<IReadOnlyList<FaceSolid>> legs = FacePanels.Of(new Face(wall));
            for (int leg = 0; leg < legs.Count; leg++)
            {
                string name = legs.Count == 1 ? $"the face of {wall.Name}" : $"the face of {wall.Name}, leg {leg + 1}";
                foreach (FaceSolid panel in legs[leg])
                    obstacles.Add(new Obstacle(name, panel, project.Rules.ObstructionClearance, null, new FacePlace(wall.Name, leg)));
            }
        }
        return obstacles;
    }
}
