using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>
/// Part rows: short rows that fill what the grid rows leave uncovered along a sloping top or a stepped bottom. Every lack is cut at
/// the column limits; for each piece a place (a grid place where one will do) and a band of levels is found, and bands that overlap
/// share a row.
/// </summary>
internal static class PartRows
{
    private const int Passes = 24;
    private const int Splits = 3;

    /// <summary>Adds part rows until the cover rule holds, or nothing more can be done; what is left the checker reports.</summary>
    public static void Fill(Bay bay, FaceOutline outline, List<RowHeads> rows)
    {
        var grid = GridStations.At(bay, bay.HalfHeight);
        for (int pass = 0; pass < Passes; pass++)
        {
            List<CoverBreak> breaks = CoverRule.Breaks(bay, Heads(rows), strict: true);
            if (breaks.Count == 0)
                return;
            bool added = false;
            foreach (Lack lack in (Lack[])[Lack.Nails, Lack.Top, Lack.Bottom, Lack.Gap])
            {
                List<CoverBreak> mine = [.. breaks.Where(b => b.Lack == lack)];
                if (mine.Count > 0 && Add(bay, grid, outline, rows, mine, lack))
                {
                    added = true;
                    break;
                }
            }
            if (!added)
                return;
        }
    }

    private static List<Head> Heads(List<RowHeads> rows) => [.. rows.SelectMany(r => r.Places.Select(r.HeadAt))];

    private sealed record Piece(double Along, double Low, double High);

    private static bool Add(
        Bay bay, GridStations grid, FaceOutline outline, List<RowHeads> rows, List<CoverBreak> breaks, Lack lack)
    {
        List<Head> heads = Heads(rows);
        var pieces = new List<Piece>();
        foreach (CoverBreak piece in Cut(bay, grid, breaks))
            pieces.AddRange(FindPlaces(bay, grid, outline, heads, piece, Splits));
        if (pieces.Count == 0)
            return false;
        bool added = false;
        var placed = new List<Head>();
        while (pieces.Count > 0)
        {
            double edge = lack == Lack.Bottom ? pieces.Max(p => p.Low) : pieces.Min(p => p.High);
            List<Piece> together = [.. pieces.Where(p => p.Low <= edge + Tolerance.Rounding && p.High >= edge - Tolerance.Rounding)];
            double level = Choose(bay, rows, together.Max(p => p.Low), together.Min(p => p.High));
            added |= Put(bay, grid, rows, level, together, placed);
            pieces.RemoveAll(together.Contains);
        }
        return added;
    }

    /// <summary>An existing part row's level where one fits, else a round figure near the middle of the band.</summary>
    private static double Choose(Bay bay, List<RowHeads> rows, double low, double high)
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

    /// <param name="placed">Heads of this pass. One that leaves a piece no room may have cured its lack: the next pass sees.</param>
    private static bool Put(Bay bay, GridStations grid, List<RowHeads> rows, double level, List<Piece> pieces, List<Head> placed)
    {
        bool added = false;
        foreach (Piece piece in pieces.OrderBy(p => p.Along))
        {
            if (Levels(bay, level, piece).Select(l => RowAt(bay, grid, rows, l))
                .FirstOrDefault(r => HasRoom(r, piece.Along) && PartRowBand.IsClear(bay, placed, r.HeadAt(piece.Along))) is not { } row)
                continue;
            placed.Add(row.HeadAt(piece.Along));
            if (row.Places.Count == 0)
                rows.Add(row);
            row.Places.Add(piece.Along);
            row.Places.Sort();
            added = true;
        }
        return added;
    }

    /// <summary>The level asked for, then others of the piece's band, the nearest first: where a row has no room for a nail, a row beside it may.</summary>
    private static IEnumerable<double> Levels(Bay bay, double level, Piece piece)
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

    private static RowHeads RowAt(Bay bay, GridStations grid, List<RowHeads> rows, double level) =>
        rows.Find(r => r.IsPart && r.Level == level) ?? new RowHeads(bay, 0, bay.Section.Rows != RowKind.Parallel, level, grid.Square, []);

    private static bool HasRoom(RowHeads row, double along)
    {
        double least = row.Bay.Rules.MinGap - Lengths.Quantum(row.Bay.Unit) - Tolerance.Rounding;
        return row.Places.TrueForAll(p => row.Bay.Face.Distance(p, along, row.ElevationAt(along)) >= least);
    }

    /// <summary>The lacks, cut at the limits between columns and joined within a column.</summary>
    private static List<CoverBreak> Cut(Bay bay, GridStations grid, List<CoverBreak> breaks)
    {
        IReadOnlyList<double> columns = grid.Square;
        var limits = new List<double> { double.NegativeInfinity };
        for (int i = 0; i + 1 < columns.Count; i++)
            limits.Add((columns[i] + columns[i + 1]) / 2);
        limits.Add(double.PositiveInfinity);
        var pieces = new List<CoverBreak>();
        foreach (CoverBreak lack in breaks)
        {
            for (int i = 0; i + 1 < limits.Count; i++)
            {
                double start = Math.Max(lack.Start, limits[i]), end = Math.Min(lack.End, limits[i + 1]);
                if (end - start <= Tolerance.SameLength)
                    continue;
                CoverBreak piece = lack with { Start = start, End = end };
                int last = pieces.Count - 1;
                bool joins = last >= 0 && piece.Start - pieces[last].End < Lengths.Quantum(bay.Unit) * 2 && SameCell(limits, pieces[last], piece)
                    && Same(pieces[last].Upper, piece.Upper) && Same(pieces[last].Lower, piece.Lower);
                if (joins)
                    pieces[last] = pieces[last] with { End = piece.End };
                else
                    pieces.Add(piece);
            }
        }
        return pieces;
    }

    private static bool Same(double a, double b) => (double.IsNaN(a) && double.IsNaN(b)) || Math.Abs(a - b) < Tolerance.SameLength;

    private static bool SameCell(List<double> limits, CoverBreak a, CoverBreak b)
    {
        double from = (a.Start + a.End) / 2, to = (b.Start + b.End) / 2;
        return !limits.Any(l => l > from && l < to);
    }

    /// <summary>One place for a lack; where none will do, one for each part of it, cut at a step inside or in the middle.</summary>
    private static IEnumerable<Piece> FindPlaces(
        Bay bay, GridStations grid, FaceOutline outline, List<Head> heads, CoverBreak lack, int splits)
    {
        if (FindPlace(bay, grid, outline, heads, lack) is { } found)
            return [found];
        if (splits == 0 || lack.End - lack.Start < 10 * Lengths.Quantum(bay.Unit))
            return [];
        double middle = (lack.Start + lack.End) / 2;
        double cut = bay.Wall.Bottom.Points.Concat(bay.Wall.Top.Points).Select(p => p.Along)
            .Where(p => p > lack.Start + Tolerance.SameLength && p < lack.End - Tolerance.SameLength).DefaultIfEmpty(middle).MinBy(p => Math.Abs(p - middle));
        return FindPlaces(bay, grid, outline, heads, lack with { End = cut }, splits - 1)
            .Concat(FindPlaces(bay, grid, outline, heads, lack with { Start = cut }, splits - 1));
    }

    private static Piece? FindPlace(Bay bay, GridStations grid, FaceOutline outline, List<Head> heads, CoverBreak lack)
    {
        double quantum = Lengths.Quantum(bay.Unit);
        double low = Math.Max(lack.End - bay.Reach, bay.FirstPlaceOfAll) - quantum;
        double high = Math.Min(lack.Start + bay.Reach, bay.LastPlaceOfAll) + quantum;
        double middle = (lack.Start + lack.End) / 2;
        Piece? best = null;
        foreach (double along in Candidates(bay, grid, low, high, middle))
        {
            (double from, double to) = PartRowBand.Of(bay, outline, heads, along, lack);
            if (!(to - from >= -Tolerance.Rounding))
                continue;
            var found = new Piece(along, from, to);
            if (to - from >= 10 * quantum)
                return found;
            best ??= found;
        }
        return best;
    }

    /// <summary>Grid places first, then the lattice, each nearest to the middle of the lack first.</summary>
    private static IEnumerable<double> Candidates(Bay bay, GridStations grid, double low, double high, double middle)
    {
        if (high < low)
            yield break;
        IEnumerable<double> columns = grid.Square.Concat(bay.Section.Pattern == Pattern.Staggered ? grid.Staggered : []);
        foreach (double column in columns.Where(c => c >= low && c <= high).Distinct().OrderBy(c => Math.Abs(c - middle)).ThenBy(c => c))
            yield return column;
        double step = Math.Max(bay.Rules.ShiftStep, (high - low) / 200);
        var places = new List<double> { low, high };
        double anchor = grid.Square.Count == 0 ? middle : grid.Square.MinBy(c => Math.Abs(c - middle));
        for (double k = Math.Ceiling((low - anchor) / step); anchor + k * step <= high; k++)
            places.Add(anchor + k * step);
        foreach (double place in places.OrderBy(p => Math.Abs(p - middle)).ThenBy(p => p))
        {
            double rounded = bay.Rounded(place);
            if (rounded >= low - Tolerance.Rounding && rounded <= high + Tolerance.Rounding)
                yield return rounded;
        }
    }
}
