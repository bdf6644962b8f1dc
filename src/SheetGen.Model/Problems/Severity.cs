namespace SheetGen.Model.Problems;

/// <summary>How much a problem or finding weighs.</summary>
public enum Severity
{
    /// <summary>Must be mended (input) or decided by the engineer (result).</summary>
    Error,

    /// <summary>Outside what is usual.</summary>
    Warning,

    /// <summary>Good to know.</summary>
    Notice,

    /// <summary>An error that the engineer has accepted in the project file.</summary>
    Accepted,
}
