using SheetGen.Drawing.Primitives;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The face of a wall that leans into the soil by its batter, seen along the wall: the origin is on the face, the soil on the right.</summary>
/// <param name="Degrees">The batter; 0 for an upright face.</param>
internal readonly record struct FaceFrame(double Degrees)
{
    public static FaceFrame Of(Wall wall) => new(wall.Batter?.Angle ?? 0);

    public double Radians => Angles.ToRadians(Degrees);

    /// <summary>A point at a distance behind the face, square to it, and a distance up along it.</summary>
    public (double X, double Y) On(double behind, double along) =>
        (behind * Math.Cos(Radians) + along * Math.Sin(Radians), along * Math.Cos(Radians) - behind * Math.Sin(Radians));

    /// <summary>A point at a distance behind the face, square to it, at a level.</summary>
    public (double X, double Y) At(double behind, double level) => (behind / Math.Cos(Radians) + level * Math.Tan(Radians), level);

    /// <summary>What lies between two distances behind the face, cut off at two levels.</summary>
    public (double X, double Y)[] Band(double front, double back, double low, double high) => [At(front, low), At(back, low), At(back, high), At(front, high)];

    /// <summary>The box about an upright one once it leans with the face.</summary>
    public Box Leaned(Box upright)
    {
        double turn = -Radians;
        return Box.Around(new Point2[] { new(upright.Left, upright.Bottom), new(upright.Right, upright.Bottom), new(upright.Right, upright.Top), new(upright.Left, upright.Top) }.Select(c => c.Turned(turn)));
    }
}
