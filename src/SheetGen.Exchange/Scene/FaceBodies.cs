using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Exchange.Scene;

/// <summary>Shotcrete, facing and panels as bodies, from the outlines that the take-off measured.</summary>
internal static class FaceBodies
{
    /// <summary>A layer of a section's face, openings left out: one mesh, or none where the section has no face.</summary>
    /// <param name="depth">From the front of the shotcrete to the layer's front, square to the face, positive into the soil.</param>
    /// <param name="thickness">Of the layer, square to the face; null or 0 for a surface.</param>
    public static IReadOnlyList<Body> Of(ExchangeInput input, SectionQuantities section, double depth, double? thickness) =>
        Layer(input, section, new Face(section.Wall), depth, thickness ?? 0);

    /// <summary>The same as an upright layer whose front has an offset from the layout line.</summary>
    public static IReadOnlyList<Body> Upright(ExchangeInput input, SectionQuantities section, double offset, double thickness) =>
        Layer(input, section, UprightFace(section.Wall, offset), 0, thickness);

    /// <summary>An upright piece of one leg with an outline of its own.</summary>
    public static IReadOnlyList<Body> UprightOutline(
        ExchangeInput input, Wall wall, int leg, IReadOnlyList<IReadOnlyList<ProfilePoint>> outline, double offset, double thickness)
    {
        Face face = UprightFace(wall, offset);
        var mesh = new MeshBuilder();
        Add(mesh, new FaceMapping(face, face.Legs[leg]), outline, 0, thickness, Lengths.Quantum(input.Project.Unit));
        return mesh.IsEmpty ? [] : [mesh.ToMesh()];
    }

    private static Face UprightFace(Wall wall, double offset) => new(wall with { Batter = null, FaceOffset = offset });

    private static IReadOnlyList<Body> Layer(ExchangeInput input, SectionQuantities section, Face face, double depth, double thickness)
    {
        var mesh = new MeshBuilder();
        foreach (ExcavationLift lift in input.Quantities.Lifts.Where(l => l.Wall.Name == section.Wall.Name && l.Section.Name == section.Section.Name))
            Add(mesh, new FaceMapping(face, face.Legs[lift.Leg]), lift.Outline, depth, thickness, Lengths.Quantum(input.Project.Unit));
        return mesh.IsEmpty ? [] : [mesh.ToMesh()];
    }

    private static void Add(
        MeshBuilder mesh, FaceMapping mapping, IReadOnlyList<IReadOnlyList<ProfilePoint>> outline, double depth, double thickness, double sagitta)
    {
        if (outline.Count == 0)
            return;
        double low = outline.Min(r => r.Min(p => p.Along)), high = outline.Max(r => r.Max(p => p.Along));
        foreach (Trapezoid piece in Developed.Cut(outline, mapping.Stops(low, high, sagitta)))
        {
            Vector3D[] front = Corners(mapping, piece, depth);
            if (thickness > 0)
                mesh.AddPrism(front, Corners(mapping, piece, depth + thickness));
            else
                mesh.AddSurface(front);
        }
    }

    private static Vector3D[] Corners(FaceMapping mapping, Trapezoid t, double depth)
    {
        Vector3D At(double along, double elevation) => mapping.PointAt(along, elevation) + mapping.NormalAt(along) * depth;
        return [At(t.From, t.LowFrom), At(t.To, t.LowTo), At(t.To, t.HighTo), At(t.From, t.HighFrom)];
    }
}
