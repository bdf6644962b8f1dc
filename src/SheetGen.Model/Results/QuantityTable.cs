using SheetGen.Model.PayItems;
using SheetGen.Model.Units;

namespace SheetGen.Model.Results;

/// <summary>The take-off of a layout: unrounded amounts by section and in total, and the lists that they are summed from.</summary>
public sealed record QuantityTable
{
    public required LengthUnit Unit { get; init; }

    /// <summary>All quantities in the order in which they are listed.</summary>
    public required IReadOnlyList<QuantityDefinition> Definitions { get; init; }

    /// <summary>In order of wall and station.</summary>
    public required IReadOnlyList<SectionQuantities> Sections { get; init; }

    /// <summary>Totals by name; the sum over the sections.</summary>
    public required IReadOnlyDictionary<string, Quantity> Totals { get; init; }

    /// <summary>Quantities from whose sum parts are missing, in order.</summary>
    public IReadOnlyList<Quantity> Incomplete => [.. Definitions.Select(d => Totals[d.Name]).Where(q => q.State == QuantityState.Incomplete)];

    /// <summary>The quantity that a pay expression names: the total, or the sum over one wall or stage.</summary>
    public Quantity Of(QuantityReference reference) => reference.IsTotal ? Totals[reference.Name] : QuantitySum.Of(
        Totals[reference.Name].Definition,
        Sections.Where(s => (reference.Wall is null || s.Wall.Name == reference.Wall) && (reference.Stage is null || s.Section.Stage == reference.Stage)));

    /// <summary>In the layout's order.</summary>
    public required IReadOnlyList<NailQuantity> Nails { get; init; }

    public required IReadOnlyList<BarCut> Bars { get; init; }

    public required IReadOnlyList<PanelCount> Panels { get; init; }

    /// <summary>Every panel with its outline, in order of wall, leg, column and course.</summary>
    public IReadOnlyList<Panel> PanelPieces { get; init; } = [];

    public required IReadOnlyList<PadRun> Pad { get; init; }

    public required IReadOnlyList<DrainStrip> Strips { get; init; }

    public required IReadOnlyList<ExcavationLift> Lifts { get; init; }

    public required IReadOnlyList<TestPlan> Tests { get; init; }

    /// <summary>How the bars are cut from stock; null where no stock length is given.</summary>
    public CuttingPlan? Cutting { get; init; }

    /// <summary>Holes by soil layer and lift; empty without borings.</summary>
    public IReadOnlyList<SoilLength> Soils { get; init; } = [];

    /// <summary>What the layout does to the engineer's design.</summary>
    public required LayoutEffect Effect { get; init; }

    /// <summary>A second way to the main quantities.</summary>
    public required IReadOnlyList<CheckLine> Checks { get; init; }
}
