using SheetGen.Model.Geometry;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>How the curvature of LandXML's spirals goes from one end (0) to the other (1). Formulas from memory; the tests hold their ends and slopes.</summary>
internal static class SpiralLaws
{
    /// <summary>Parts that stand for a spiral other than a clothoid.</summary>
    public const int Parts = 32;

    /// <summary>Share of the change of curvature at a share of the length; null for a type that is not read.</summary>
    public static Func<double, double>? Of(string type) => type switch
    {
        "clothoid" => t => t,
        "bloss" => t => t * t * (3 - 2 * t),
        "cosine" => t => (1 - Math.Cos(Math.PI * t)) / 2,
        "sinusoid" => t => t - Math.Sin(2 * Math.PI * t) / (2 * Math.PI),
        "biquadratic" => t => t < 0.5 ? 2 * t * t : 1 - 2 * (1 - t) * (1 - t),
        _ => null,
    };

    /// <summary>Curvature at the ends of equal parts of a spiral.</summary>
    public static double[] Curvatures(Func<double, double> law, double start, double end, int parts) =>
        [.. Enumerable.Range(0, parts + 1).Select(i => start + (end - start) * law(i / (double)parts))];

    /// <summary>Vectors from the start to the ends of parts with the given curvatures, each part a clothoid.</summary>
    public static IEnumerable<Vector2D> Ends(double azimuth, double[] curvatures, double length)
    {
        double part = length / (curvatures.Length - 1);
        Vector2D at = default;
        for (int i = 0; i + 1 < curvatures.Length; i++)
        {
            at += Clothoid.Chord(azimuth, curvatures[i], (curvatures[i + 1] - curvatures[i]) / part, part);
            azimuth += (curvatures[i] + curvatures[i + 1]) / 2 * part;
            yield return at;
        }
    }

    /// <summary>Greatest distance between a spiral laid in <see cref="Parts"/> parts and the same in 32 times as many.</summary>
    public static double Error(Func<double, double> law, double start, double end, double length)
    {
        Vector2D[] coarse = [.. Ends(0, Curvatures(law, start, end, Parts), length)], fine = [.. Ends(0, Curvatures(law, start, end, Parts * 32), length)];
        return coarse.Select((p, i) => (p - fine[(i + 1) * 32 - 1]).Length).Max();
    }
}
