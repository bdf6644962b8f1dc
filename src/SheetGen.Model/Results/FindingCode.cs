namespace SheetGen.Model.Results;

/// <summary>Codes of findings, as printed in findings.json.</summary>
public static class FindingCode
{
    /// <summary>A nail whose hole is not the one that its printed figures give: the program is at fault.</summary>
    public const string Hole = "hole";

    public const string NailNail = "nail-nail";
    public const string NailObstruction = "nail-obstruction";
    public const string NailBoundary = "nail-boundary";
    public const string NailFace = "nail-face";
    public const string Cover = "cover";
    public const string Unresolved = "unresolved";
    public const string NotedRedirect = "noted-redirect";
    public const string LeftOut = "left-out";
    public const string NoNailHeight = "no-nail-height";
    public const string Guidance = "guidance";
    public const string Spacing = "spacing";
    public const string Edge = "edge";
    public const string Sheet = "sheet";

    /// <summary>A verification test nail that found no place.</summary>
    public const string TestNail = "test-nail";

    /// <summary>Two nails whose heads stand on one another.</summary>
    public const string DuplicateHead = "duplicate-head";

    /// <summary>A changed nail that carries more, or resists less, than the engineer's values allow.</summary>
    public const string Load = "load";

    /// <summary>A quantity or a price that stands for less than it should.</summary>
    public const string Incomplete = "incomplete";
}
