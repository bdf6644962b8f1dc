using SheetGen.Dxf;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>How an edited drawing lies over the one that was written: scaled alike in both directions, then moved.</summary>
internal readonly record struct DrawingPlace(double Scale, DxfPoint Shift)
{
    public static DrawingPlace Same { get; } = new(1, default);

    public bool IsSame => Scale == 1 && Shift.Length == 0;

    /// <summary>A point of the edited drawing as it would stand on the one that was written.</summary>
    public DxfPoint Back(DxfPoint drawn) => (drawn - Shift) * (1 / Scale);

    /// <summary>
    /// The place that brings most of the points onto where they were. Most nails of an edited drawing stand where they stood, so the right
    /// scale and shift are those that most of them agree on.
    /// </summary>
    /// <param name="pairs">Where a nail stands, and where it stood.</param>
    /// <param name="tolerance">How far a nail may be off, in units of the drawing that was written.</param>
    /// <param name="scales">Scales that are tried beside 1 and those of the points themselves.</param>
    public static (DrawingPlace Place, int Agreeing) Best(IReadOnlyList<(DxfPoint Drawn, DxfPoint Was)> pairs, double tolerance, IEnumerable<double> scales)
    {
        DrawingPlace best = Same;
        int most = Agreeing(pairs, Same, tolerance);
        foreach (double scale in scales.Append(1).Concat(Ratios(pairs)).Where(s => s > 0 && double.IsFinite(s)).Distinct())
        {
            DxfPoint[] shifts = [.. pairs.Select(p => p.Drawn - p.Was * scale)];
            var shift = new DxfPoint(Median(shifts.Select(s => s.X)), Median(shifts.Select(s => s.Y)));
            // Scaled about the origin, nothing was moved: then the shift is nothing but rounding.
            foreach (DxfPoint tried in shift.Length <= tolerance * scale ? new[] { default(DxfPoint) } : [default, shift])
            {
                var place = new DrawingPlace(scale, tried);
                int agreeing = Agreeing(pairs, place, tolerance);
                if (agreeing > most)
                    (best, most) = (place, agreeing);
            }
        }
        return (best, most);
    }

    private static int Agreeing(IReadOnlyList<(DxfPoint Drawn, DxfPoint Was)> pairs, DrawingPlace place, double tolerance) =>
        pairs.Count(p => (place.Back(p.Drawn) - p.Was).Length <= tolerance);

    /// <summary>The scale that most pairs of far nails tell.</summary>
    private static IEnumerable<double> Ratios(IReadOnlyList<(DxfPoint Drawn, DxfPoint Was)> pairs)
    {
        var ratios = new List<double>();
        for (int i = 0; i < pairs.Count; i++)
        {
            (DxfPoint Drawn, DxfPoint Was) a = pairs[i], b = pairs[(i + pairs.Count / 2) % pairs.Count];
            double was = (b.Was - a.Was).Length;
            if (was > 1e-6)
                ratios.Add((b.Drawn - a.Drawn).Length / was);
        }
        return ratios.Count == 0 ? [] : [Rounded(Median(ratios))];
    }

    /// <summary>A scale that a person would give, where it is within rounding of one.</summary>
    private static double Rounded(double scale)
    {
        double[] usual = [1, 12, 1 / 12.0, 0.3048, 1 / 0.3048, 304.8, 25.4, 1 / 25.4, 1000, 0.001, 100, 0.01];
        foreach (double u in usual)
        {
            if (Math.Abs(scale / u - 1) < 1e-6)
                return u;
        }
        return scale;
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? 0 : sorted[sorted.Length / 2];
    }
}
