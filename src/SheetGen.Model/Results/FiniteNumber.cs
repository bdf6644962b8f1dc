namespace SheetGen.Model.Results;

/// <summary>The guard at every place where a number becomes part of an output.</summary>
public static class FiniteNumber
{
    /// <summary>The number itself.</summary>
    /// <exception cref="InvalidOperationException">It is not a number, or infinite: the program is at fault, and nothing is written.</exception>
    public static double Of(double value) =>
        double.IsFinite(value) ? value : throw new InvalidOperationException($"a result is not a finite number ({value}); no output is made with it");

    /// <summary>The number itself; null where there is none, or nothing that it could be measured to (plus infinity).</summary>
    /// <exception cref="InvalidOperationException">It is not a number, or minus infinity: the program is at fault, and nothing is written.</exception>
    public static double? OrNone(double? value) => value is null or double.PositiveInfinity ? null : Of(value.Value);

    /// <summary>The layout as it is, with every nail's own numbers looked at.</summary>
    /// <exception cref="InvalidOperationException">One of them is not finite; the message names the nail.</exception>
    public static NailLayout Of(NailLayout layout)
    {
        Nail? bad = layout.Nails.FirstOrDefault(n =>
            !double.IsFinite(n.Station + n.Elevation + n.Splay + n.Inclination + n.Length + n.HoleDiameter));
        return bad is null ? layout : throw new InvalidOperationException($"nail {bad.Mark} has a value that is not a finite number; no output is made with it");
    }
}
