using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Model.Revisions;

/// <summary>A nail and what is near it: another nail or an obstruction.</summary>
/// <param name="Other">The other nail; null where it is an obstruction or a face.</param>
/// <param name="Name">Name of the other.</param>
/// <param name="Solid">The piece of the obstruction; null for a nail.</param>
/// <param name="Clear">Clear distance, negative where they run into each other.</param>
/// <param name="Margin">Degrees by which the nail's hole may stray before it touches the other; 0 where it does.</param>
public sealed record ClashPair(Nail Nail, Nail? Other, string Name, Solid? Solid, double Clear, double Required, Vector3D OnNail, Vector3D OnOther, double Depth, double? OtherDepth, double Margin)
{
    /// <summary>How far over the rule it is; negative where it is under.</summary>
    public double Over => Clear - Required;
}
