namespace SheetGen.Model.Results;

/// <summary>A line of the bar list: bars of one size, grade and cut length.</summary>
/// <param name="NailLength">Length from the face of the nails that take it.</param>
/// <param name="CutLength">Nail length + projection.</param>
/// <param name="Sacrificial">True for verification test nails.</param>
/// <param name="Marks">Nails that take such a bar.</param>
/// <param name="CouplersEach">Couplers in one bar; null where no stock length is given.</param>
/// <param name="StockBars">Bars of the longest stock length, cut only for this line; the cutting plan over all bars needs no more. Null where no stock length is given.</param>
public sealed record BarCut(
    Bar Bar, double NailLength, double CutLength, bool Sacrificial, double? UnitWeight, IReadOnlyList<string> Marks, int? CouplersEach, int? StockBars)
{
    public int Count => Marks.Count;

    public double TotalLength => Count * CutLength;

    /// <summary>Null where the bar has no published weight and the project file gives none.</summary>
    public double? Weight => TotalLength * UnitWeight;
}
