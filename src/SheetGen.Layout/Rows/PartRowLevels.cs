using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>At which levels a part row may lie that holds the nails of some bands, the best first.</summary>
internal static class PartRowLevels
{
    /// <summary>An existing part row's level where one fits, else a round figure near the middle of the band.</summary>
    public static double Choose(Bay bay, List<RowHeads> rows, double low, double high)
    {
        double middle = (low + high) / 2;
        RowHeads? shared = rows.Where(r => r.IsPart && r.Level >= low - Tolerance.Rounding && r.Level <= high + Tolerance.Rounding)
            .OrderBy(r => Math.Abs(r.Level - middle)).ThenBy(r => r.Level).FirstOrDefault();
        if (shared is not null)
            return shared.Level;
        double step = bay.Rules.ShiftStep;
        double round = Math.Round(middle / step) * step;
        if (round < low || round > high)
            round = middle;
        double quantum = Lengths.RoundToQuantum(round, bay.Unit);
        return quantum < low && quantum + Lengths.Quantum(bay.Unit) <= high ? quantum + Lengths.Quantum(bay.Unit) : quantum;
    }

    /// <summary>The level asked for, then others of the piece's band, the nearest first: where a row has no room for a nail, a row beside it may.</summary>
    public static IEnumerable<double> From(Bay bay, double level, PartRowPlace piece)
    {
        yield return level;
        double step = bay.Rules.ShiftStep;
        for (int k = 1; level - k * step >= piece.Low - Tolerance.Rounding || level + k * step <= piece.High + Tolerance.Rounding; k++)
        {
            if (level - k * step >= piece.Low - Tolerance.Rounding)
                yield return Lengths.RoundToQuantum(level - k * step, bay.Unit);
            if (level + k * step <= piece.High + Tolerance.Rounding)
                yield return Lengths.RoundToQuantum(level + k * step, bay.Unit);
        }
    }
}
