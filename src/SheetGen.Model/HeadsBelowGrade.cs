namespace SheetGen.Model;

/// <summary>What is done about nail heads below the finished grade.</summary>
public enum HeadsBelowGrade
{
    /// <summary>They may stand there; nothing is said.</summary>
    Allow,

    /// <summary>They may stand there, and are counted in a warning.</summary>
    Warn,

    /// <summary>None is placed there.</summary>
    None,
}
