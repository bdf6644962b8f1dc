using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>A ball in the ground through which at most one hole may pass, and what passing through it is charged.</summary>
/// <param name="Radius">So small that two holes whose axes pass through the ball are too close to each other.</param>
internal sealed record Price(Vector3D Center, double Radius)
{
    public Cost Charge { get; set; }

    public bool IsPassedBy(in Hole hole)
    {
        double depth = Math.Clamp((Center - hole.Head).Dot(hole.Direction), 0, hole.Length);
        return (hole.At(depth) - Center).Length <= Radius;
    }
}
