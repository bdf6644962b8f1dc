namespace SheetGen.Layout.Placing;

/// <summary>How far a search goes.</summary>
internal enum SearchDepth
{
    /// <summary>Each nail put once, in the order of insertion.</summary>
    Insertion,

    /// <summary>And the first short loop.</summary>
    Short,

    /// <summary>All of it, with limits and care for effort.</summary>
    Whole,
}
