using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Sheets;

/// <summary>A window from a sheet into model space.</summary>
/// <param name="Frame">The window on the paper, mm.</param>
/// <param name="Center">Model point seen in its middle.</param>
/// <param name="UnitsPerMillimetre">Project units per millimetre of paper, over 0.</param>
/// <param name="Twist">Radians by which the model is seen turned, counter-clockwise.</param>
public sealed record Viewport(Box Frame, Point2 Center, double UnitsPerMillimetre, double Twist = 0)
{
    /// <summary>From model space to the paper.</summary>
    public PlaneTransform ToPaper
    {
        get
        {
            double scale = 1 / UnitsPerMillimetre;
            return new(scale, Twist, Frame.Center - Center.Turned(Twist) * scale);
        }
    }
}
