namespace SheetGen.Model.Results;

/// <summary>How a nail stands to its grid place and direction.</summary>
public enum NailStatus
{
    /// <summary>At its grid place, in the grid's direction.</summary>
    Grid,

    /// <summary>Off its grid place, in the grid's direction; also a nail added between grid places.</summary>
    Moved,

    /// <summary>Turned within the field tolerance, moved or not.</summary>
    Redirected,

    /// <summary>Turned beyond the field tolerance: noted on the sheet.</summary>
    Noted,

    /// <summary>At its grid place in the grid's direction although something is too close: not to be drilled.</summary>
    Unresolved,
}
