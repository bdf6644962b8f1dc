using SheetGen.Layout.Rows;
using SheetGen.Model;

namespace SheetGen.Layout.Clearance;

/// <summary>The leg of a wall's face that a hole starts from. Walls are told apart by their name, which is unique in a project.</summary>
internal readonly record struct FaceLeg(string Wall, int Leg)
{
    public static FaceLeg Of(Face face, Along along) => new(face.Wall.Name, face.LegAt(along).Index);
}
