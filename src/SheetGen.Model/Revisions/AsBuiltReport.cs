using SheetGen.Model.Results;

namespace SheetGen.Model.Revisions;

/// <summary>A tolerance that a drilled nail does not keep.</summary>
/// <param name="What">In words, with both figures.</param>
public sealed record ToleranceMiss(string Mark, string What);

/// <summary>A planned nail that is in trouble with what has been drilled, and where it could go.</summary>
/// <param name="Because">The findings that name it, in words.</param>
/// <param name="Could">Where a new search with the drilled nails fixed puts it; empty where it finds no place.</param>
public sealed record OpenTrouble(string Mark, string Because, string Could);

/// <summary>What the record of drilled nails says of the wall.</summary>
public sealed record AsBuiltReport
{
    /// <summary>The layout with the drilled nails as drilled, the others as planned.</summary>
    public required NailLayout Layout { get; init; }

    /// <summary>Marks of the nails in the record.</summary>
    public required IReadOnlyList<string> Drilled { get; init; }

    public required IReadOnlyList<ToleranceMiss> Misses { get; init; }

    /// <summary>Findings of that layout that the plan does not have.</summary>
    public required IReadOnlyList<Finding> NewFindings { get; init; }

    public required IReadOnlyList<OpenTrouble> Open { get; init; }

    /// <summary>Production nails drilled and planned, and their lengths.</summary>
    public required int DrilledProduction { get; init; }

    public required int PlannedProduction { get; init; }

    public required double DrilledLength { get; init; }

    public required double PlannedLengthOfDrilled { get; init; }

    public required double PlannedLength { get; init; }

    /// <summary>Grout placed, and the theoretical hole volume of the nails for which it was measured.</summary>
    public required double Grout { get; init; }

    public required double HoleVolumeOfGrouted { get; init; }
}
