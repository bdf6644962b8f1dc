using SheetGen.Model;

namespace SheetGen.ProjectFile.Building;

/// <summary>A vertical curve between two grades.</summary>
/// <param name="In">Horizontal length before the point of vertical intersection.</param>
/// <param name="Out">Horizontal length behind it.</param>
internal sealed record VerticalCurve(double In, double Out, Func<IEnumerable<ProfilePoint>> Points)
{
    /// <summary>
    /// Two parabolas with a common tangent at the point of vertical intersection, one where the lengths are equal. There the curve lies
    /// In * Out * (g2 - g1) / (2 (In + Out)) over the point, and its grade is (g1 In + g2 Out) / (In + Out) (from memory; for equal lengths
    /// it is the usual parabola y = y0 + g1 x + (g2 - g1) x^2 / (2 L)).
    /// </summary>
    public static VerticalCurve Parabolic(ProfilePoint at, double one, double two, double before, double after, double error, int most)
    {
        double middle = at.Elevation + before * after * (two - one) / (2 * (before + after)), grade = (one * before + two * after) / (before + after);
        IEnumerable<ProfilePoint> Points() =>
        [
            .. Parabola(at.Along - before, at.Elevation - one * before, one, grade, before),
            .. Parabola(at.Along, middle, grade, two, after).Skip(1),
        ];
        IEnumerable<ProfilePoint> Parabola(double start, double elevation, double g1, double g2, double length)
        {
            double rate = (g2 - g1) / length;
            int count = Count(Math.Abs(rate) * length * length / (8 * error), most);
            for (int k = 0; k <= count; k++)
            {
                double x = length * k / count;
                yield return new ProfilePoint(start + x, elevation + g1 * x + rate * x * x / 2);
            }
        }
        return new VerticalCurve(before, after, Points);
    }

    /// <summary>An arc of a circle, tangent to both grades.</summary>
    public static VerticalCurve Circular(ProfilePoint at, double one, double two, double radius, double error, int most)
    {
        double a = Math.Atan(one), b = Math.Atan(two), tangent = radius * Math.Tan(Math.Abs(b - a) / 2), up = Math.Sign(b - a);
        double before = tangent * Math.Cos(a), after = tangent * Math.Cos(b), start = at.Along - before, elevation = at.Elevation - one * before;
        IEnumerable<ProfilePoint> Points()
        {
            double angle = Math.Abs(b - a);
            int count = Count(radius * angle * angle / (8 * error), most);
            for (int k = 0; k <= count; k++)
            {
                // From the centre, radius across the first grade above (sag) or below (crest) the start.
                double t = a + (b - a) * k / count;
                yield return new ProfilePoint(start + up * radius * (Math.Sin(t) - Math.Sin(a)), elevation + up * radius * (Math.Cos(a) - Math.Cos(t)));
            }
        }
        return new VerticalCurve(before, after, up == 0 ? () => [at] : Points);
    }

    /// <summary>Chords so that none is off by more than asked: the error of one chord over the whole falls with the square of their number.</summary>
    private static int Count(double wholeOverError, int most) => (int)Math.Clamp(Math.Ceiling(Math.Sqrt(wholeOverError)), 1, most);
}
