using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Labels;

/// <summary>A label that looks for a place near its anchor.</summary>
/// <param name="Variants">The label's lines, in forms to be tried, the best-liked first.</param>
/// <param name="Anchor">What it speaks of.</param>
/// <param name="AnchorRadius">Distance from the anchor that the label and its leader keep.</param>
public sealed record LabelRequest(IReadOnlyList<IReadOnlyList<string>> Variants, TextRole Role, Point2 Anchor, double AnchorRadius)
{
    public LayerRole Layer { get; init; } = LayerRole.Label;

    /// <summary>Direction liked best, radians; null for any.</summary>
    public double? Toward { get; init; }

    /// <summary>True for a text that reads upward.</summary>
    public bool Upright { get; init; }

    /// <summary>Room kept before and behind its lines, mm.</summary>
    public double EndMargin { get; init; } = LabelPlacer.Margin;

    /// <summary>Farthest that the label goes, mm.</summary>
    public double Reach { get; init; } = 90;

    /// <summary>Distance up to which no leader is drawn.</summary>
    public double LeaderFrom { get; init; } = 1.6;

    /// <summary>What stands among the notes where there is no room, in words that need no number at the place; null for a numbered note.</summary>
    public string? Note { get; init; }

    /// <summary>What stands among the notes where not even the number of a note has room at the place, in words that tell it; null for a finding.</summary>
    public string? Otherwise { get; init; }

    /// <summary>What stands with a leader at the one thing it speaks of where no other form has room; null for nothing.</summary>
    public string? Shortest { get; init; }

    public string? Nail { get; init; }

    public string? Obstruction { get; init; }
}
