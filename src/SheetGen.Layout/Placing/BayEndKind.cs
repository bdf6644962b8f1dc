namespace SheetGen.Layout.Placing;

/// <summary>What a bay ends at.</summary>
public enum BayEndKind
{
    WallEnd,
    Corner,
    SectionLimit,
}
