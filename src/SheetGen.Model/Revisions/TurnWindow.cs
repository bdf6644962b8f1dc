using SheetGen.Model.Results;

namespace SheetGen.Model.Revisions;

/// <summary>What a hole meets in a direction.</summary>
public enum TurnState
{
    /// <summary>Every clear distance is at least the rule's.</summary>
    Free,

    /// <summary>Something is nearer than the rule asks, nothing is met.</summary>
    Near,

    /// <summary>The hole runs into something.</summary>
    Blocked,
}

/// <summary>One direction of a nail.</summary>
/// <param name="Splay">Degrees, positive up-station.</param>
/// <param name="Inclination">Degrees below horizontal.</param>
/// <param name="Other">What is nearest below the rule's clearance; empty where the direction is free.</param>
/// <param name="Clear">Clear distance to it; plus infinity where the direction is free.</param>
public readonly record struct TurnCell(double Splay, double Inclination, TurnState State, string Other, double Clear);

/// <summary>A shorter nail, and how much more room it has.</summary>
/// <param name="Free">Free directions at that length.</param>
/// <param name="IsStandingFree">True where the nail's present direction is free then.</param>
public readonly record struct ShorterNail(double Length, int Free, bool IsStandingFree);

/// <summary>The room that one nail has to turn about its head, all others standing as they are.</summary>
public sealed record TurnWindow
{
    public required Nail Nail { get; init; }

    /// <summary>Splays of the columns, degrees, rising.</summary>
    public required IReadOnlyList<double> Splays { get; init; }

    /// <summary>Inclinations of the rows, degrees, rising (steeper).</summary>
    public required IReadOnlyList<double> Inclinations { get; init; }

    /// <summary>Row by row.</summary>
    public required IReadOnlyList<TurnCell> Cells { get; init; }

    public required double FieldTolerance { get; init; }

    /// <summary>The present direction, checked as every other.</summary>
    public required TurnCell Now { get; init; }

    /// <summary>The free directions nearest to the present one to each side: up-station, down-station, flatter, steeper; null where there is none.</summary>
    public required TurnCell? UpStation { get; init; }

    public required TurnCell? DownStation { get; init; }

    public required TurnCell? Flatter { get; init; }

    public required TurnCell? Steeper { get; init; }

    /// <summary>Lengths at which more directions become free, the longest first.</summary>
    public required IReadOnlyList<ShorterNail> Shorter { get; init; }

    public TurnCell At(int inclination, int splay) => Cells[inclination * Splays.Count + splay];

    public int FreeCount => Cells.Count(c => c.State == TurnState.Free);

    /// <summary>Everything that is in the way of some direction, with how many directions it spoils, most first.</summary>
    public IEnumerable<(string Name, int Directions)> InTheWay =>
        Cells.Where(c => c.State != TurnState.Free).CountBy(c => c.Other).OrderByDescending(c => c.Value).ThenBy(c => c.Key, StringComparer.Ordinal).Select(c => (c.Key, c.Value));
}
