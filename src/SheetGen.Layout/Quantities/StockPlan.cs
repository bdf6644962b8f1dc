using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// The cutting plan: a bar longer than the longest stock is coupled from whole stock bars and a rest. No coupled piece is shorter than
/// the least piece: the one before it gives up what is missing. The pieces of all bars of one kind are cut together: each time the stock
/// length and the way to fill it that leave the least share, the longest piece still wanted being in it.
/// </summary>
internal static class StockPlan
{
    /// <summary>Least coupled piece where the project file gives none: 3 ft or 1 m (this program's own).</summary>
    public static double DefaultLeastPiece(LengthUnit unit) => Lengths.IsFoot(unit) ? 3 : 1;

    public static CuttingPlan? Make(WallProject project, IReadOnlyList<BarCut> bars)
    {
        double[] stock = [.. project.Rates.StockLengths.Order()];
        if (stock.Length == 0)
            return null;
        double longest = stock[^1], least = Math.Min(project.Rates.LeastPiece ?? DefaultLeastPiece(project.Unit), longest / 2);
        var patterns = new List<CutPattern>();
        foreach (IGrouping<Bar, BarCut> kind in bars.GroupBy(b => b.Bar))
        {
            var wanted = new SortedDictionary<double, int>();
            foreach (BarCut cut in kind)
            {
                foreach (double piece in Pieces(cut.CutLength, longest, least))
                    wanted[piece] = wanted.GetValueOrDefault(piece) + cut.Count;
            }
            patterns.AddRange(Patterns(kind.Key, stock, wanted));
        }
        return new CuttingPlan(patterns, least, [.. bars.Select(b => Stub(b, longest, least)).OfType<StockStub>()]);
    }

    /// <summary>Couplers in a bar.</summary>
    public static int Couplers(double cut, double longest) => NailTakeOff.CeilingOf(cut / longest) - 1;

    /// <summary>Pieces of a bar, rounded to a millionth so that equal ones are one.</summary>
    public static IReadOnlyList<double> Pieces(double cut, double longest, double least)
    {
        int couplers = Couplers(cut, longest);
        double rest = cut - couplers * longest, missing = couplers > 0 ? Math.Max(0, least - rest) : 0;
        IEnumerable<double> pieces = Enumerable.Repeat(longest, Math.Max(0, couplers - 1));
        if (couplers > 0)
            pieces = pieces.Append(longest - missing);
        return [.. pieces.Append(rest + missing).Select(p => Math.Round(p, Tolerance.Decimals))];
    }

    private static StockStub? Stub(BarCut bar, double longest, double least)
    {
        int couplers = Couplers(bar.CutLength, longest);
        double beyond = bar.CutLength - couplers * longest;
        return couplers == 0 || beyond >= least - Tolerance.Rounding ? null
            : new StockStub(bar.Bar, bar.CutLength, bar.Count, beyond, longest, bar.NailLength - beyond);
    }

    private static IEnumerable<CutPattern> Patterns(Bar bar, double[] stock, SortedDictionary<double, int> wanted)
    {
        while (wanted.Count > 0)
        {
            double first = wanted.Keys.Last();
            (double Length, List<double> Pieces) best = stock.Where(s => s >= first - Tolerance.SameLength)
                .Select(s => (s, Fill(s, first, wanted)))
                .MinBy(f => (f.s - f.Item2.Sum()) / f.s);
            int count = best.Pieces.GroupBy(p => p).Min(g => wanted[g.Key] / g.Count());
            foreach (IGrouping<double, double> piece in best.Pieces.GroupBy(p => p))
            {
                wanted[piece.Key] -= count * piece.Count();
                if (wanted[piece.Key] == 0)
                    wanted.Remove(piece.Key);
            }
            yield return new CutPattern(bar, best.Length, best.Pieces, count);
        }
    }

    /// <summary>The pieces that leave least of a stock bar, its first piece given: all ways, up to a number of them, the longest first.</summary>
    private static List<double> Fill(double length, double first, SortedDictionary<double, int> wanted)
    {
        double[] kinds = [.. wanted.Keys.Reverse()];
        var chosen = new List<double> { first };
        var best = new List<double>(chosen);
        double bestLeft = length - first;
        int looks = 0;
        Look(0, length - first);
        return best;

        void Look(int from, double left)
        {
            if (left < bestLeft - Tolerance.Rounding)
            {
                bestLeft = left;
                best = [.. chosen];
            }
            for (int i = from; i < kinds.Length && bestLeft > Tolerance.Rounding && looks < 5000; i++)
            {
                if (kinds[i] > left + Tolerance.Rounding || chosen.Count(p => p == kinds[i]) >= wanted[kinds[i]])
                    continue;
                looks++;
                chosen.Add(kinds[i]);
                Look(i, left - kinds[i]);
                chosen.RemoveAt(chosen.Count - 1);
            }
        }
    }
}
