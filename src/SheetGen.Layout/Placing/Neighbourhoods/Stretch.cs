namespace SheetGen.Layout.Placing;

/// <summary>The stretch of a row around a nail is solved by chain search, all others standing as they are.</summary>
internal sealed class Stretch(District district) : INeighbourhood
{
    public bool MovesSideways => false;

    public bool Propose(Slot seed) =>
        ChainRebuild.Stretch(district, district.Layout.Rows[seed.Row.Index], seed.Ordinal, seed.Ordinal, Surroundings.Of(district.Layout)) is not null;
}
