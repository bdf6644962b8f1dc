namespace SheetGen.Model.Results;

/// <summary>How all bars are cut from stock.</summary>
/// <param name="Patterns">Ways to cut a stock bar, by bar, then the longest stock first.</param>
/// <param name="LeastPiece">No piece that is coupled is shorter.</param>
/// <param name="Stubs">Bars whose length just passes a whole number of stock lengths.</param>
public sealed record CuttingPlan(IReadOnlyList<CutPattern> Patterns, double LeastPiece, IReadOnlyList<StockStub> Stubs)
{
    /// <summary>Length of the stock bars bought.</summary>
    public double Bought => Patterns.Sum(p => p.Count * p.StockLength);

    /// <summary>Length of the bars cut from them.</summary>
    public double Used => Patterns.Sum(p => p.Count * p.Used);

    /// <summary>What is left over, as a share of what is bought; 0 where nothing is.</summary>
    public double DropShare => Bought > 0 ? (Bought - Used) / Bought : 0;

    public int StockBars => Patterns.Sum(p => p.Count);
}

/// <summary>One way to cut a stock bar.</summary>
/// <param name="Pieces">Lengths cut from it, the longest first.</param>
/// <param name="Count">Number of stock bars cut so.</param>
public sealed record CutPattern(Bar Bar, double StockLength, IReadOnlyList<double> Pieces, int Count)
{
    public double Used => Pieces.Sum();

    /// <summary>What is left over of one.</summary>
    public double Drop => StockLength - Used;
}

/// <summary>Bars that need a coupler for little more than a whole number of stock lengths.</summary>
/// <param name="CutLength">Nail length + projection.</param>
/// <param name="Beyond">What they are longer than whole stock bars.</param>
/// <param name="NailLengthWithout">Nail length that would need no such piece.</param>
public sealed record StockStub(Bar Bar, double CutLength, int Count, double Beyond, double StockLength, double NailLengthWithout);
