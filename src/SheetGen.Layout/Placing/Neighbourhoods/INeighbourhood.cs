namespace SheetGen.Layout.Placing;

/// <summary>A way to look for a better layout around a slot: it frees slots of the district and rebuilds them inside the district's trial.</summary>
internal interface INeighbourhood
{
    /// <summary>True where a rebuild that is neither better nor worse is kept, so that the search goes sideways.</summary>
    bool MovesSideways { get; }

    /// <summary>Frees and rebuilds; false where there is nothing to try or the rebuild failed. The caller ends the trial.</summary>
    bool Propose(Slot seed);
}
