using SheetGen.Model.Geometry;

namespace SheetGen.Model;

/// <summary>Where a wall stands and looks.</summary>
public static class WallWords
{
    /// <summary>Azimuth (radians) that the face looks to on the whole: away from the soil, square to the wall's chord or mean direction.</summary>
    /// <param name="side">+1 where the soil is to the right looking up-station, -1 to the left.</param>
    public static double FaceAzimuth(LayoutLine line, int side, double start, double end)
    {
        Vector2D chord = line.PointAt(end) - line.PointAt(start);
        Vector2D along = chord.Length > 1e-9 ? chord : line.TangentAt((start + end) / 2);
        return (-(along.Right * side)).Azimuth;
    }
}
