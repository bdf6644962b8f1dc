using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>What the take-off has to say to a person: what its quantities lack, and sizes that nobody would buy or cast.</summary>
internal static class TakeOffFindings
{
    /// <summary>Panels narrower or lower than this are named: 1 ft or 0.3 m (this program's own).</summary>
    public static double LeastPanel(LengthUnit unit) => Lengths.IsFoot(unit) ? 1 : 0.3;

    public static IReadOnlyList<Finding> Make(WallProject project, QuantityTable quantities, BidTable bid) =>
        [.. IncompleteFindings.Make(quantities, bid), .. Slivers(quantities, project.Unit), .. Stubs(quantities.Cutting, project)];

    private static IEnumerable<Finding> Slivers(QuantityTable quantities, LengthUnit unit)
    {
        double least = LeastPanel(unit);
        string symbol = Lengths.IsFoot(unit) ? "ft" : "m";
        foreach (IGrouping<Wall, Panel> wall in quantities.PanelPieces.GroupBy(p => p.Wall))
        {
            foreach (Panel narrow in wall.DistinctBy(p => (p.Leg, p.Column)).Where(p => p.Width < least))
                yield return Warning([narrow], FormattableString.Invariant($"a panel column is only {narrow.Width:0.###} {symbol} wide: move first_break, or let its neighbour take it"));
            List<Panel> low = [.. wall.Where(p => p.Size == PanelSize.SpecialHeight && Math.Max(p.StartHeight, p.EndHeight) < least).OrderBy(p => p.Start)];
            if (low.Count > 0)
                yield return Warning(low, FormattableString.Invariant($"{(low.Count == 1 ? "a panel is" : low.Count + " panels are")} under {least:0.###} {symbol} high, the lowest {low.Min(p => Math.Max(p.StartHeight, p.EndHeight)):0.###} {symbol}: change the panel height or the top, or let the panels below take them"));
        }
    }

    private static Finding Warning(IReadOnlyList<Panel> panels, string message) => new()
    {
        Code = FindingCode.Guidance,
        Severity = Severity.Warning,
        Wall = panels[0].Wall,
        Station = StationOf(panels[0].Wall, panels[0].Start),
        ToStation = StationOf(panels[0].Wall, panels.Max(p => p.End)),
        Message = message,
    };

    private static double StationOf(Wall wall, double along) => wall.StationOf(Math.Clamp(along, wall.Start, wall.End));

    private static IEnumerable<Finding> Stubs(CuttingPlan? plan, WallProject project)
    {
        string symbol = Lengths.IsFoot(project.Unit) ? "ft" : "m";
        return (plan?.Stubs ?? []).Select(s => new Finding
        {
            Code = FindingCode.Guidance,
            Severity = Severity.Warning,
            Message = FormattableString.Invariant(
                $"{s.Count} {(s.Count == 1 ? "bar" : "bars")} of {s.Bar}, {s.CutLength:0.###} {symbol} long, {(s.Count == 1 ? "needs" : "each need")} a coupler for {s.Beyond:0.###} {symbol} beyond stock of {s.StockLength:0.###} {symbol}: nails of {s.NailLengthWithout:0.###} {symbol}, or stock of {s.CutLength:0.###} {symbol}, would need none; the plan couples no piece under {plan!.LeastPiece:0.###} {symbol}"),
        });
    }
}
