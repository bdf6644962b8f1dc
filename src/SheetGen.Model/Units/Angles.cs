namespace SheetGen.Model.Units;

/// <summary>Degrees and radians.</summary>
public static class Angles
{
    public static double ToRadians(double degrees) => degrees * Math.PI / 180.0;

    public static double ToDegrees(double radians) => radians * 180.0 / Math.PI;

    /// <summary>The azimuth brought into 0 (included) to 2 pi (excluded).</summary>
    public static double NormalizeAzimuth(double radians)
    {
        double full = 2 * Math.PI;
        double turned = radians % full;
        return turned < 0 ? turned + full : turned;
    }
}
