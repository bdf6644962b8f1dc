using SheetGen.Model.Corridors;

namespace SheetGen.Model.Studies;

/// <summary>What is kept of one variant of a study, without a clock in it.</summary>
public sealed record VariantState
{
    /// <summary>Version of the form.</summary>
    public int Format { get; init; } = 1;

    /// <summary>0 is the project file as it is.</summary>
    public required int Number { get; init; }

    public required IReadOnlyList<string> Values { get; init; }

    public required WallOutcome Outcome { get; init; }

    /// <summary>Fingerprint of the program's own code.</summary>
    public required string Program { get; init; }

    public required string Options { get; init; }

    /// <summary>SHA-256 of the variant's project file.</summary>
    public required string InputHash { get; init; }

    /// <summary>The files that the project file names.</summary>
    public IReadOnlyList<FileHash> Inputs { get; init; } = [];

    /// <summary>Problems of the variant, a line each.</summary>
    public IReadOnlyList<string> Problems { get; init; } = [];

    /// <summary>Null where nothing was laid out.</summary>
    public VariantFigures? Figures { get; init; }
}

/// <summary>What was measured of a variant; lengths in the project's unit.</summary>
/// <param name="Nails">Production nails.</param>
/// <param name="NailLength">Of the production nails, from head to tip.</param>
/// <param name="PayLength">Null where it is not whole.</param>
/// <param name="UnresolvedBound">Proven least; null where none is known. So is that of the noted.</param>
/// <param name="Cover">Length of wall where the cover rule is broken.</param>
/// <param name="LeastClear">Least clear distance of any hole; null where nothing is near.</param>
/// <param name="MeanArea">Mean face area a nail; null without nails.</param>
/// <param name="Errors">Findings of severity error, those of sheets not counted, since none are drawn.</param>
/// <param name="Bid">Sum of the amounts of priced pay items; null without prices or where it is not whole.</param>
public sealed record VariantFigures(
    int Nails, double NailLength, double? PayLength, double Cover, int Unresolved, double? UnresolvedBound, int Noted, double? NotedBound, int Redirected, int Moved,
    int LeftOut, double Effort, bool IsProvenBest, double? LeastClear, double? MeanArea, int Errors, int Warnings, double? Bid);
