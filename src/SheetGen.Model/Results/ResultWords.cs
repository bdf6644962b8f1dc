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

    public static string Of(FaceZone zone) => zone switch
    {
        FaceZone.Inner => "inner",
        FaceZone.UpperRow => "upper row",
        FaceZone.Corner => "corner",
        FaceZone.End => "end",
        _ => throw new ArgumentOutOfRangeException(nameof(zone)),
    };

    public static string Of(LimitState state) => state switch
    {
        LimitState.Pullout => "pullout",
        LimitState.Bar => "bar",
        LimitState.Front => "head and pullout in front",
        LimitState.Flexure => "flexure",
        LimitState.Punching => "punching",
        LimitState.PermanentFlexure => "flexure, permanent facing",
        LimitState.PermanentPunching => "punching, permanent facing",
        LimitState.Studs => "studs",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
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
