namespace SheetGen.Model.Results;

/// <summary>Where every nail goes, and why. Nails are in order of wall, section, row, station; verification nails last in their section.</summary>
public sealed record NailLayout
{
    public required IReadOnlyList<Nail> Nails { get; init; }

    public required IReadOnlyList<NailRow> Rows { get; init; }

    public required IReadOnlyList<LeftOut> LeftOut { get; init; }

    public required LayoutScore Score { get; init; }

    /// <summary>What would free the nails that are left unresolved.</summary>
    public IReadOnlyList<NailHelp> Help { get; init; } = [];

    /// <summary>Things the placer has to say to a person (such as where the search stopped at a limit).</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Where the search ended at its counts while it was still finding better layouts.</summary>
    public IReadOnlyList<CutShort> CutShort { get; init; } = [];
}
