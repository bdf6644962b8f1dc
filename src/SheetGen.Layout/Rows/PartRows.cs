using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>
/// Part rows: short rows that fill what the grid rows leave uncovered along a sloping top or a stepped bottom. For each piece of a lack a
/// place and a band of levels is found (<see cref="PartRowPlaces"/>), and bands that overlap share a row (<see cref="PartRowLevels"/>).
/// </summary>
internal static class PartRows
{
    private const int Passes = 24;

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

    private static bool Add(
        Bay bay, GridStations grid, FaceOutline outline, List<RowHeads> rows, List<CoverBreak> breaks, Lack lack)
    {
        List<Head> heads = Heads(rows);
        var pieces = new List<PartRowPlace>();
        foreach (CoverBreak piece in PartRowPlaces.Cut(bay, grid, breaks))
            pieces.AddRange(PartRowPlaces.Find(bay, grid, outline, heads, piece));
        if (pieces.Count == 0)
            return false;
        bool added = false;
        var placed = new List<Head>();
        while (pieces.Count > 0)
        {
            double edge = lack == Lack.Bottom ? pieces.Max(p => p.Low) : pieces.Min(p => p.High);
            List<PartRowPlace> together = [.. pieces.Where(p => p.Low <= edge + Tolerance.Rounding && p.High >= edge - Tolerance.Rounding)];
            double level = PartRowLevels.Choose(bay, rows, together.Max(p => p.Low), together.Min(p => p.High));
            added |= Put(bay, grid, rows, level, together, placed);
            pieces.RemoveAll(together.Contains);
        }
        return added;
    }

    /// <param name="placed">Heads of this pass. One that leaves a piece no room may have cured its lack: the next pass sees.</param>
    private static bool Put(Bay bay, GridStations grid, List<RowHeads> rows, double level, List<PartRowPlace> pieces, List<Head> placed)
    {
        bool added = false;
        foreach (PartRowPlace piece in pieces.OrderBy(p => p.Along))
        {
            if (PartRowLevels.From(bay, level, piece).Select(l => RowAt(bay, grid, rows, l))
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

    private static RowHeads RowAt(Bay bay, GridStations grid, List<RowHeads> rows, double level) =>
        rows.Find(r => r.IsPart && r.Level == level) ?? new RowHeads(bay, 0, bay.Section.Rows != RowKind.Parallel, level, grid.Square, []);

    private static bool HasRoom(RowHeads row, Along along)
    {
        double least = row.Bay.Rules.MinGap - Lengths.Quantum(row.Bay.Unit) - Tolerance.Rounding;
        return row.Places.TrueForAll(p => row.Bay.Face.Distance(p, along, row.ElevationAt(along)) >= least);
    }
}
