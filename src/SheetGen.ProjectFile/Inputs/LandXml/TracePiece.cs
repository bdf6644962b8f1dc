using SheetGen.Model.Geometry;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>A piece of an alignment, its directions taken from its own coordinates. Lengths are in the file's unit; curvature is positive to the right.</summary>
/// <param name="Start">Plan point where it starts.</param>
/// <param name="End">Plan point where it ends, as the file gives it.</param>
/// <param name="Azimuth">Azimuth at its start, radians.</param>
/// <param name="Curvature">Curvature at its start.</param>
/// <param name="EndCurvature">Curvature at its end; in between it changes evenly.</param>
/// <param name="Part">The element of the file.</param>
internal sealed record TracePiece(Vector2D Start, Vector2D End, double Azimuth, double Length, double Curvature, double EndCurvature, XmlPart Part)
{
    public double EndAzimuth => Azimuth + (Curvature + EndCurvature) / 2 * Length;

    public double Sharpness => (EndCurvature - Curvature) / Length;

    public Vector2D ComputedEnd => Start + Clothoid.Chord(Azimuth, Curvature, Sharpness, Length);
}
