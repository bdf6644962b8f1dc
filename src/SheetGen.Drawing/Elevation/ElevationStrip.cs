using SheetGen.Drawing.Primitives;
using SheetGen.Model;

namespace SheetGen.Drawing.Elevation;

/// <summary>Where a wall's developed elevation lies in model space: x = sign * developed distance + origin, y = elevation + origin.</summary>
public sealed record ElevationStrip(Wall Wall, int Sign, Point2 Origin, double Low, double High)
{
    public DevelopedFace Developed { get; } = new(Wall);

    public double X(double along) => Sign * Developed.At(along) + Origin.X;

    public double Y(double elevation) => elevation + Origin.Y;

    /// <summary>A profile between two places as it is drawn: straight in elevation, bent where the developed distance is.</summary>
    public IEnumerable<Point2> Path(Profile profile, double start, double end)
    {
        double[] bends = [start, .. Developed.Bends(start, end).Order(), end];
        for (int i = 0; i + 1 < bends.Length; i++)
        {
            foreach (ProfilePoint p in ElevationModel.Pieces(profile, bends[i], bends[i + 1]))
            {
                double developed = p.Along < bends[i + 1] ? Developed.At(p.Along) : Developed.Before(p.Along);
                yield return new(Sign * developed + Origin.X, Y(p.Elevation));
            }
        }
    }

    public Point2 At(double along, double elevation) => new(X(along), Y(elevation));
}
