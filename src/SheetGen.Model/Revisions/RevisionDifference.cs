using SheetGen.Model.Problems;
using SheetGen.Model.Units;

namespace SheetGen.Model.Revisions;

/// <summary>What happened to a nail between two states.</summary>
public enum NailChangeKind
{
    Added,
    Removed,

    /// <summary>There in both, with another place, direction, length, bar, hole or mark.</summary>
    Changed,
}

/// <summary>A nail that is not the same in two states.</summary>
/// <param name="Before">Null for an added nail; in the old state's unit.</param>
/// <param name="After">Null for a removed nail; in the new state's unit.</param>
/// <param name="What">What changed, in words with both figures.</param>
public sealed record NailChange(NailChangeKind Kind, RevisionNail? Before, RevisionNail? After, string What)
{
    public string Mark => (After ?? Before)!.Mark;

    public string Wall => (After ?? Before)!.Wall;
}

/// <summary>A finding that is new (no before), gone (no after) or tells other figures.</summary>
public sealed record FindingChange(RevisionFinding? Before, RevisionFinding? After)
{
    public Severity Severity => (After ?? Before)!.Severity;
}

/// <summary>A quantity in both states, in one unit. Null where a state does not have it.</summary>
/// <param name="Wall">Empty for the total.</param>
/// <param name="Stage">Empty where there are no stages, and for the total.</param>
public sealed record AmountChange(string Name, string Text, string Unit, string Wall, string Stage, double? Before, double? After)
{
    public double Difference => (After ?? 0) - (Before ?? 0);
}

/// <summary>A bid item in both states.</summary>
public sealed record ItemChange(string Number, string Description, string Unit, double? Before, double? After, double? AmountBefore, double? AmountAfter);

/// <summary>Everything that is not the same in two states; empty lists where nothing changed.</summary>
public sealed record RevisionDifference
{
    public required RevisionState Old { get; init; }

    public required RevisionState New { get; init; }

    /// <summary>The unit of everything that is told of both: that of the new state.</summary>
    public required LengthUnit Unit { get; init; }

    /// <summary>Walls in that unit, whose station equations stations are printed with; empty where neither state knows them.</summary>
    public IReadOnlyList<Wall> Walls { get; init; } = [];

    /// <summary>True where a printed station may be another than the internal one, which runs on without a jump.</summary>
    public bool HasStationEquations => Walls.Any(w => w.LayoutLine.Stationing.Equations.Count > 0);

    /// <summary>A station of a wall as the sheets print it.</summary>
    /// <param name="wall">Name of the wall.</param>
    /// <param name="station">Internal station, in the unit of the new state.</param>
    public string PrintedStation(string wall, double station) =>
        Walls.FirstOrDefault(w => w.Name == wall)?.TextOf(station, Unit) ?? new PrintedStation(station).Text(Unit);

    public required IReadOnlyList<NailChange> Nails { get; init; }

    public required IReadOnlyList<FindingChange> Findings { get; init; }

    /// <summary>Totals first, then by wall and stage.</summary>
    public required IReadOnlyList<AmountChange> Amounts { get; init; }

    public required IReadOnlyList<ItemChange> Items { get; init; }

    /// <summary>What could not be compared because one of the states does not have it; a sentence each.</summary>
    public required IReadOnlyList<string> NotCompared { get; init; }

    public bool IsEmpty => Nails.Count + Findings.Count + Amounts.Count + Items.Count == 0;
}
