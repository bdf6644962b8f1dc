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

    /// <summary>A place on a leg of the face; one beyond the corner's station, as far as the mitre goes.</summary>
    public Point2 OnLeg(int leg, ProfilePoint place) => new(Sign * Developed.OnLeg(leg, place.Along) + Origin.X, Y(place.Elevation));

    /// <summary>Where the face folds at a corner.</summary>
    public Point2 Fold(Corner corner, double elevation) => new(Sign * Developed.Fold(corner) + Origin.X, Y(elevation));

    public Point2 At(double along, double elevation) => new(X(along), Y(elevation));
}
