namespace SheetGen.Model.Geometry;

/// <summary>
/// Clothoids: curves whose curvature changes evenly with the length along them. Their points are integrals of cosine and sine of the
/// azimuth, taken here by Gauss-Legendre quadrature with eight nodes for each radian of turning, which is exact to the last digits of a double.
/// </summary>
public static class Clothoid
{
    /// <summary>Positive nodes and weights of the eight-point Gauss-Legendre rule on -1 to 1 (Abramowitz and Stegun, table 25.4; from memory, proven by the tests).</summary>
    private static readonly (double Node, double Weight)[] Rule =
    [
        (0.1834346424956498, 0.3626837833783620),
        (0.5255324099163290, 0.3137066458778873),
        (0.7966664774136267, 0.2223810344533745),
        (0.9602898564975363, 0.1012285362903763),
    ];

    /// <summary>The vector from a start to the place at a length along the curve.</summary>
    /// <param name="azimuth">Azimuth at the start, radians clockwise from north.</param>
    /// <param name="curvature">Curvature at the start, positive to the right.</param>
    /// <param name="sharpness">Change of the curvature per length.</param>
    /// <param name="length">Length along the curve; negative goes back from the start.</param>
    public static Vector2D Chord(double azimuth, double curvature, double sharpness, double length)
    {
        double turning = Math.Max(Math.Abs(curvature), Math.Abs(curvature + sharpness * length)) * Math.Abs(length);
        int panels = (int)Math.Clamp(Math.Ceiling(turning), 1, MostPanels);
        double n = 0, e = 0, half = length / panels / 2;
        for (int i = 0; i < panels; i++)
        {
            double middle = (2 * i + 1) * half;
            foreach ((double node, double weight) in Rule)
            {
                Add(middle - half * node, weight);
                Add(middle + half * node, weight);
            }
        }
        return new Vector2D(n * half, e * half);

        void Add(double s, double weight)
        {
            double direction = azimuth + (curvature + sharpness * s / 2) * s;
            n += weight * Math.Cos(direction);
            e += weight * Math.Sin(direction);
        }
    }

    private const double MostPanels = 1000;
}
