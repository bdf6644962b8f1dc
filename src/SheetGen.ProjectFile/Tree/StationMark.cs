namespace SheetGen.ProjectFile.Tree;

/// <summary>What stands beside the digits of a station.</summary>
internal enum StationMark
{
    /// <summary>Nothing: a printed station.</summary>
    None,

    /// <summary>BK: the printed station before the equation.</summary>
    Back,

    /// <summary>AH: the printed station after the equation.</summary>
    Ahead,

    /// <summary>@: not a station but the distance along the layout line from its start.</summary>
    Along,
}
