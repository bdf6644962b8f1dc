using SheetGen.Model.Problems;

namespace SheetGen.Model.Results;

/// <summary>The words that result files use for kinds, statuses and severities.</summary>
public static class ResultWords
{
    public static string Of(NailKind kind) => kind switch
    {
        NailKind.Production => "production",
        NailKind.Proof => "proof",
        NailKind.Verification => "verification",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    public static string Of(NailStatus status) => status switch
    {
        NailStatus.Grid => "grid",
        NailStatus.Moved => "moved",
        NailStatus.Redirected => "redirected",
        NailStatus.Noted => "noted",
        NailStatus.Unresolved => "unresolved",
        _ => throw new ArgumentOutOfRangeException(nameof(status)),
    };

    public static string Of(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        Severity.Notice => "notice",
        Severity.Accepted => "accepted",
        _ => throw new ArgumentOutOfRangeException(nameof(severity)),
    };
}
