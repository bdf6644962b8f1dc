using SheetGen.Model.Geometry;

namespace SheetGen.Model;

/// <summary>Where an obstruction comes nearest to the plane of a wall's face.</summary>
/// <param name="Along">Distance along the layout line of that place.</param>
/// <param name="Behind">Distance behind the face there, to the obstruction's surface; negative in front of it or through it.</param>
/// <param name="Start">Least distance along the layout line that it takes.</param>
/// <param name="End">Greatest distance along the layout line that it takes.</param>
public readonly record struct ObstructionPlace(double Along, double Behind, double Start, double End)
{
    private const int MostSteps = 400;

    /// <summary>The place, by points along the outline no more than a unit apart (on very long ones by 400 points a side); null beside the wall.</summary>
    public static ObstructionPlace? Of(Face face, Obstruction obstruction)
    {
        Wall wall = face.Wall;
        Vector3D[] shape = [.. obstruction.Shape];
        bool closed = obstruction.Kind is ObstructionKind.Solid or ObstructionKind.Beam;
        double low = Math.Max(obstruction.Bottom, wall.Bottom.Points.Min(p => p.Elevation)), high = Math.Min(obstruction.Top, wall.Top.Points.Max(p => p.Elevation));
        double offset = Math.Max(face.OffsetAt(Math.Min(low, high)), face.OffsetAt(Math.Max(low, high)));
        ObstructionPlace? nearest = null;
        for (int i = 0; i < shape.Length - (closed || shape.Length == 1 ? 0 : 1); i++)
        {
            Vector2D a = shape[i].Plan, b = shape[(i + 1) % shape.Length].Plan;
            int steps = Math.Clamp((int)(b - a).Length, 1, MostSteps);
            for (int k = 0; k <= steps; k++)
            {
                LinePlace place = LayoutProjection.Locate(wall.LayoutLine, a + (b - a) * (k / (double)steps));
                if (place.Along < wall.Start || place.Along > wall.End)
                    continue;
                double behind = place.Right * wall.Side - offset - obstruction.Diameter / 2;
                nearest = nearest is not { } known
                    ? new ObstructionPlace(place.Along, behind, place.Along, place.Along)
                    : new ObstructionPlace(
                        behind < known.Behind ? place.Along : known.Along, Math.Min(behind, known.Behind), Math.Min(known.Start, place.Along), Math.Max(known.End, place.Along));
            }
        }
        return nearest;
    }
}
