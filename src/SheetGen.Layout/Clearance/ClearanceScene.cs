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
    private readonly Obstacles _obstacles;

    /// <summary>The obstructions and faces of a project, and the holes that stand already (none for a search that keeps its own).</summary>
    public ClearanceScene(WallProject project, IReadOnlyList<Hole> holes)
    {
        Rules = project.Rules;
        _obstacles = new Obstacles(project);
        _holes = holes.ToArray();
        _holeIndex = new HoleIndex(_holes);
    }

    public Rules Rules { get; }

    /// <summary>Pieces of obstructions in the project's order, then faces by wall and leg.</summary>
    public IReadOnlyList<Obstacle> Obstacles => _obstacles.All;

    public IReadOnlyList<Hole> Holes => _holes;

    /// <summary>Pairs of the scene's holes that come nearer than a limit, in order of their numbers.</summary>
    internal IReadOnlyList<HolePair> PairsCloserThan(double limit, int threads = 1) => _holeIndex.PairsCloserThan(limit, threads);

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
    internal void ObstaclesTooClose(in Hole candidate, FaceLeg start, List<int> found) => _obstacles.TooClose(candidate, start, found);

    /// <summary>Fills the list with the numbers of the obstacles whose box is within reach of a candidate's, in order.</summary>
    public void Near(in Hole candidate, double reach, List<int> found) => _obstacles.Near(candidate, reach, found);
}
