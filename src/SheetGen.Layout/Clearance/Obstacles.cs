using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>
/// All that stands still and that holes of a project keep clear of: pieces of obstructions in the project's order, then faces by wall and
/// leg. It never changes; reading it from several threads is safe.
/// </summary>
internal sealed class Obstacles
{
    private readonly SolidIndex _index;
    private readonly double _mostRequired;

    public Obstacles(WallProject project)
    {
        All = Make(project);
        _mostRequired = All.Count == 0 ? 0 : All.Max(o => o.Required);
        _index = new SolidIndex(All.Select(o => o.Solid).ToList());
    }

    public IReadOnlyList<Obstacle> All { get; }

    /// <summary>Fills the list with the numbers of the obstacles whose box is within reach of a hole's, in order.</summary>
    public void Near(in Hole hole, double reach, List<int> found)
    {
        found.Clear();
        _index.Near(Bounds.Of(hole).Grow(Math.Max(0, reach)), found);
        found.Sort();
    }

    /// <summary>Fills the list with the numbers of the obstacles that a hole comes nearer to than the rules ask, in order.</summary>
    /// <param name="start">The leg that the hole starts from: its own face does not count.</param>
    public void TooClose(in Hole hole, FaceLeg start, List<int> found)
    {
        Near(hole, _mostRequired, found);
        int kept = 0;
        for (int i = 0; i < found.Count; i++)
        {
            Obstacle obstacle = All[found[i]];
            if (obstacle.Concerns(start) && HoleDistance.CloserThan(hole, obstacle.Solid, obstacle.Required))
                found[kept++] = found[i];
        }
        found.RemoveRange(kept, found.Count - kept);
    }

    /// <summary>What a hole that starts at a point of a leg may come too near to, whatever its direction, in order.</summary>
    /// <param name="reach">Length of the hole with its radius.</param>
    public Obstacle[] Around(Vector3D head, double reach, FaceLeg start)
    {
        var box = new Bounds(head, head).Grow(reach);
        var found = new List<int>();
        _index.Near(box.Grow(_mostRequired), found);
        found.Sort();
        return [.. found.Select(i => All[i]).Where(o => o.Concerns(start) && o.Solid.Bounds.Grow(o.Required).Meets(box)
            && o.Solid.SignedDistance(head) < reach + o.Required)];
    }

    private static List<Obstacle> Make(WallProject project)
    {
        var obstacles = new List<Obstacle>();
        foreach (Obstruction obstruction in project.Obstructions)
        {
            double required = project.Rules.ClearanceTo(obstruction.Kind);
            foreach (Solid solid in obstruction.Solids)
                obstacles.Add(new Obstacle(obstruction.Name, solid, required, obstruction));
        }
        foreach (Wall wall in project.Walls)
        {
            IReadOnlyList<IReadOnlyList<FaceSolid>> legs = FacePanels.Of(new Face(wall));
            for (int leg = 0; leg < legs.Count; leg++)
            {
                string name = legs.Count == 1 ? $"the face of {wall.Name}" : $"the face of {wall.Name}, leg {leg + 1}";
                foreach (FaceSolid panel in legs[leg])
                    obstacles.Add(new Obstacle(name, panel, project.Rules.ObstructionClearance, null) { Leg = new FaceLeg(wall.Name, leg) });
            }
        }
        return obstacles;
    }
}
