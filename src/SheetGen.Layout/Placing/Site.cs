using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>All that stands still behind the faces: obstructions and the faces themselves.</summary>
public sealed class Site
{
    private readonly List<StillSolid> _solids = [];

    public Site(WallProject project)
    {
        Project = project;
        foreach (Obstruction obstruction in project.Obstructions)
        {
            double required = project.Rules.ClearanceTo(obstruction.Kind);
            foreach (Solid solid in obstruction.Solids)
                _solids.Add(new StillSolid(obstruction.Name, solid, required, null, 0));
        }
        Faces = [.. project.Walls.Select(w => new Face(w))];
        foreach (Face face in Faces)
        {
            IReadOnlyList<IReadOnlyList<FaceSolid>> legs = FacePanels.Of(face);
            for (int leg = 0; leg < legs.Count; leg++)
            {
                foreach (FaceSolid panel in legs[leg])
                    _solids.Add(new StillSolid("face of " + face.Wall.Name, panel, project.Rules.ObstructionClearance, face, leg));
            }
        }
    }

    public WallProject Project { get; }

    public IReadOnlyList<Face> Faces { get; }

    /// <summary>What a nail that starts at a point of a leg may come near, whatever its direction.</summary>
    public StillSolid[] Near(Face face, int leg, Vector3D head, double reach)
    {
        var box = new Bounds(head, head).Grow(reach);
        var near = new List<StillSolid>();
        foreach (StillSolid still in _solids)
        {
            if (still.Face == face && still.Leg == leg)
                continue;
            if (still.Solid.Bounds.Grow(still.Required).Meets(box) && still.Solid.SignedDistance(head) < reach + still.Required)
                near.Add(still);
        }
        return [.. near];
    }
}
