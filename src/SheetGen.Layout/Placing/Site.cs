using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>What a search works on: the project, its faces, and all that stands still behind them.</summary>
internal sealed class Site
{
    private readonly Obstacles _obstacles;

    public Site(WallProject project)
    {
        Project = project;
        Faces = [.. project.Walls.Select(w => new Face(w))];
        _obstacles = new Obstacles(project);
    }

    public WallProject Project { get; }

    public IReadOnlyList<Face> Faces { get; }

    /// <summary>What a nail that starts at a point of a leg may come near, whatever its direction.</summary>
    public Obstacle[] Near(Face face, int leg, Vector3D head, double reach) =>
        _obstacles.Around(head, reach, new FaceLeg(face.Wall.Name, leg));
}
