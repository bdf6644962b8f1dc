namespace SheetGen.Layout.Rows;

/// <summary>An end of a bay.</summary>
/// <param name="Clear">Least distance of a head from it, along the face.</param>
/// <param name="LeastCut">Least that the mitre takes at any elevation of the bay; negative where the face reaches beyond.</param>
/// <param name="GreatestCut">Greatest that the mitre takes.</param>
public readonly record struct BayEnd(BayEndKind Kind, double Clear, double LeastCut, double GreatestCut)
{
    /// <summary>Least distance of a head from the bay's end along the layout line, at every elevation.</summary>
    public double Inset => Math.Max(0, GreatestCut + Clear);

    /// <summary>How far the face reaches beyond the bay's end.</summary>
    public double Beyond => Math.Max(0, -LeastCut);
}

/// <summary>What a bay ends at.</summary>
public enum BayEndKind
{
    WallEnd,
    Corner,
    SectionLimit,
}
