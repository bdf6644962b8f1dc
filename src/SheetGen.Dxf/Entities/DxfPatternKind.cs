namespace SheetGen.Dxf;

/// <summary>Where a hatch pattern comes from. All kinds carry their lines with them.</summary>
public enum DxfPatternKind
{
    /// <summary>Made on the spot.</summary>
    UserDefined = 0,

    /// <summary>One that programs know by name, such as ANSI31.</summary>
    Predefined = 1,

    /// <summary>From a file of patterns of one's own.</summary>
    Custom = 2,
}
