namespace SheetGen.Dxf;

/// <summary>Arcs of polylines: from a bulge to an arc and back.</summary>
public static class DxfBulge
{
    /// <summary>The arc that a bulge stands for, counter-clockwise from start to end angle (a bulge below 0 runs it backwards).</summary>
    /// <param name="from">Corner with a bulge that is not 0.</param>
    /// <param name="to">The next corner, at another place.</param>
    public static (DxfPoint Center, double Radius, double StartAngle, double EndAngle) Arc(DxfVertex from, DxfPoint to)
    {
        // With chord c and bulge b = tan(a / 4): radius = c (1 + b^2) / (4 |b|), centre c (1 - b^2) / (4 b) to the left of the chord's middle.
        var (chord, bulge) = (to - from.Point, from.Bulge);
        var left = new DxfPoint(-chord.Y, chord.X);
        var center = from.Point + (chord * 0.5) + (left * ((1 - (bulge * bulge)) / (4 * bulge)));
        var radius = chord.Length * (1 + (bulge * bulge)) / (4 * Math.Abs(bulge));
        var (first, last) = (Angle(from.Point - center), Angle(to - center));
        return bulge > 0 ? (center, radius, first, last) : (center, radius, last, first);
    }

    /// <summary>The bulge of an arc.</summary>
    /// <param name="sweep">Its angle in degrees, below 360 in size; above 0 counter-clockwise.</param>
    public static double OfSweep(double sweep) => Math.Tan(sweep * Math.PI / 720);

    private static double Angle(DxfPoint vector) => Math.Atan2(vector.Y, vector.X) * 180 / Math.PI;
}
