namespace SheetGen.Model;

/// <summary>How the rows of a section run.</summary>
public enum RowKind
{
    /// <summary>One elevation per row in a section.</summary>
    Level,

    /// <summary>A fixed depth below the top per row.</summary>
    Parallel,

    /// <summary>The first row parallel to the top, the others level.</summary>
    TopParallel,
}
