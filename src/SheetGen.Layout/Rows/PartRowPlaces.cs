using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>A place for a nail that cures a lack of cover, with the band of levels at which it does.</summary>
internal sealed record PartRowPlace(Along Along, double Low, double High);

/// <summary>Places for the nails of part rows: each lack is cut at the limits between columns, and each piece looks for a place that covers all of it, on a column where one will do.</summary>
internal static class PartRowPlaces
{
    /// <summary>How often a lack that no single place covers is cut in two.</summary>
    private const int Splits = 3;

    /// <summary>The lacks, cut at the limits between columns and joined within a column.</summary>
    public static List<CoverBreak> Cut(Bay bay, GridStations grid, List<CoverBreak> breaks)
    {
        IReadOnlyList<Along> columns = grid.Square;
        var limits = new List<Along> { new(double.NegativeInfinity) };
        for (int i = 0; i + 1 < columns.Count; i++)
            limits.Add(Along.Middle(columns[i], columns[i + 1]));
        limits.Add(new(double.PositiveInfinity));
        var pieces = new List<CoverBreak>();
        int cell = -1;
        foreach (CoverBreak lack in breaks)
        {
            for (int i = 0; i + 1 < limits.Count; i++)
            {
                Along start = Along.Max(lack.Start, limits[i]), end = Along.Min(lack.End, limits[i + 1]);
                if (end - start <= Tolerance.SameLength)
                    continue;
                CoverBreak piece = lack with { Start = start, End = end };
                int last = pieces.Count - 1;
                bool joins = cell == i && piece.Start - pieces[last].End < Lengths.Quantum(bay.Unit) * 2
                    && Same(pieces[last].Upper, piece.Upper) && Same(pieces[last].Lower, piece.Lower);
                if (joins)
                    pieces[last] = pieces[last] with { End = piece.End };
                else
                    pieces.Add(piece);
                cell = i;
            }
        }
        return pieces;
    }

    private static bool Same(double a, double b) => (double.IsNaN(a) && double.IsNaN(b)) || Math.Abs(a - b) < Tolerance.SameLength;

    /// <summary>One place for a lack; where none will do, one for each part of it, cut at a step inside or in the middle.</summary>
    public static IEnumerable<PartRowPlace> Find(Bay bay, GridStations grid, FaceOutline outline, List<Head> heads, CoverBreak lack, int splits = Splits)
    {
        if (FindPlace(bay, grid, outline, heads, lack) is { } found)
            return [found];
        if (splits == 0 || lack.End - lack.Start < 10 * Lengths.Quantum(bay.Unit))
            return [];
        var middle = Along.Middle(lack.Start, lack.End);
        Along cut = bay.Wall.Bottom.Places.Concat(bay.Wall.Top.Places)
            .Where(p => p > lack.Start + Tolerance.SameLength && p < lack.End - Tolerance.SameLength).DefaultIfEmpty(middle).MinBy(p => Math.Abs(p - middle));
        return Find(bay, grid, outline, heads, lack with { End = cut }, splits - 1)
            .Concat(Find(bay, grid, outline, heads, lack with { Start = cut }, splits - 1));
    }

    private static PartRowPlace? FindPlace(Bay bay, GridStations grid, FaceOutline outline, List<Head> heads, CoverBreak lack)
    {
        double quantum = Lengths.Quantum(bay.Unit);
        Along low = Along.Max(lack.End - bay.Reach, bay.FirstPlaceOfAll) - quantum;
        Along high = Along.Min(lack.Start + bay.Reach, bay.LastPlaceOfAll) + quantum;
        var middle = Along.Middle(lack.Start, lack.End);
        PartRowPlace? best = null;
        foreach (Along along in Candidates(bay, grid, low, high, middle))
        {
            (double from, double to) = PartRowBand.Of(bay, outline, heads, along, lack);
            if (!(to - from >= -Tolerance.Rounding))
                continue;
            var found = new PartRowPlace(along, from, to);
            if (to - from >= 10 * quantum)
                return found;
            best ??= found;
        }
        return best;
    }

    /// <summary>Grid places first, then the lattice, each nearest to the middle of the lack first.</summary>
    public static IEnumerable<Along> Candidates(Bay bay, GridStations grid, Along low, Along high, Along middle)
    {
        if (high < low)
            yield break;
        IEnumerable<Along> columns = grid.Square.Concat(bay.Section.Pattern == Pattern.Staggered ? grid.Staggered : []);
        foreach (Along column in columns.Where(c => c >= low && c <= high).Distinct().OrderBy(c => Math.Abs(c - middle)).ThenBy(c => c))
            yield return column;
        double step = Math.Max(bay.Rules.ShiftStep, (high - low) / 200);
        var places = new List<Along> { low, high };
        Along anchor = grid.Square.Count == 0 ? middle : grid.Square.MinBy(c => Math.Abs(c - middle));
        for (double k = Math.Ceiling((low - anchor) / step); anchor + k * step <= high; k++)
            places.Add(anchor + k * step);
        foreach (Along place in places.OrderBy(p => Math.Abs(p - middle)).ThenBy(p => p))
        {
            Along rounded = bay.Rounded(place);
            if (rounded >= low - Tolerance.Rounding && rounded <= high + Tolerance.Rounding)
                yield return rounded;
        }
    }
}
