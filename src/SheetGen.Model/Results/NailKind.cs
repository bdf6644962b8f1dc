namespace SheetGen.Model.Results;

/// <summary>What a nail is for.</summary>
public enum NailKind
{
    Production,

    /// <summary>A production nail marked for a proof test.</summary>
    Proof,

    /// <summary>A sacrificial nail tested before production.</summary>
    Verification,
}
