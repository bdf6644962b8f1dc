using SheetGen.Layout.Quantities.Effect;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>The take-off: measures a finished layout. Nothing is rounded and nothing is assumed; what is missing is said.</summary>
public static class TakeOff
{
    /// <summary>Every item of a set of pay items with its raw and its rounded quantity and the user's price; faults where an item has no value.</summary>
    public static BidTable Bid(QuantityTable quantities, PayItemSet set, Rates rates) => BidQuantities.Make(quantities, set, rates);

    /// <summary>What the layout does to the engineer's design, and what the take-off and the pay items lack: warnings and notices.</summary>
    public static IReadOnlyList<Finding> Findings(WallProject project, NailLayout layout, QuantityTable quantities, BidTable bid) =>
        [.. LoadFindings.Make(project, layout, quantities.Effect), .. TakeOffFindings.Make(project, quantities, bid)];

    /// <summary>Measures every section of every wall and adds them up.</summary>
    public static QuantityTable Measure(WallProject project, NailLayout layout)
    {
        IReadOnlyList<QuantityDefinition> definitions = QuantityCatalog.For(project.Unit);
        var sections = new List<SectionQuantities>();
        var byMark = new Dictionary<string, NailQuantity>();
        var panels = new List<Panel>();
        var pad = new List<PadRun>();
        var strips = new List<DrainStrip>();
        var lifts = new List<ExcavationLift>();
        var tests = new List<TestPlan>();
        var columnSums = new Dictionary<Section, double>(ReferenceEqualityComparer.Instance);
        var walls = new List<WallTakeOff>();
        foreach (Wall wall in project.Walls)
        {
            List<Nail> nails = [.. layout.Nails.Where(n => n.Wall == wall)];
            WallTakeOff parts = WallTakeOff.Measure(project, wall, nails, layout);
            foreach (NailQuantity nail in parts.Nails)
                byMark[nail.Nail.Mark] = nail;
            panels.AddRange(parts.Panels);
            pad.AddRange(parts.Pad);
            strips.AddRange(parts.Strips);
            lifts.AddRange(parts.Lifts);
            walls.Add(parts);
        }
        List<NailQuantity> inOrder = [.. layout.Nails.Select(n => byMark[n.Mark])];
        List<BarCut> bars = BarList.Make(project, inOrder);
        CuttingPlan? cutting = StockPlan.Make(project, bars);
        foreach (WallTakeOff parts in walls)
        {
            foreach (Section section in parts.Wall.Sections)
            {
                SectionTakeOff measured = SectionTakeOff.Measure(project, layout, parts, section, definitions, cutting);
                sections.Add(measured.Quantities);
                tests.Add(measured.Tests);
                columnSums[section] = ColumnSums.Area(parts.Regions.Face, section);
            }
        }
        panels = PanelTakeOff.Marked(panels);
        List<PanelCount> panelCounts = [.. project.Walls.SelectMany(w => PanelTakeOff.Count(panels.Where(p => p.Wall == w), project.Unit))];
        return new QuantityTable
        {
            Unit = project.Unit,
            Definitions = definitions,
            Sections = sections,
            Totals = definitions.ToDictionary(d => d.Name, d => QuantitySum.Of(d, sections)),
            Nails = inOrder,
            Bars = bars,
            Cutting = cutting,
            Soils = SoilTakeOff.Measure(project, layout.Nails, lifts),
            Panels = panelCounts,
            PanelPieces = panels,
            Pad = pad,
            Strips = strips,
            Lifts = lifts,
            Tests = tests,
            Effect = EffectTakeOff.Make(project, layout),
            Checks = SecondWays.Make(project, sections, inOrder, columnSums, lifts, panelCounts),
        };
    }
}
