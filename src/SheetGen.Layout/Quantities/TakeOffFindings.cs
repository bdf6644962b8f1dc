using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>What the take-off has to say to a person: what its quantities lack, and sizes that nobody would buy or cast.</summary>
public static class TakeOffFindings
{
    /// <summary>Panels narrower or lower than this are named: 1 ft or 0.3 m (this program's own).</summary>
    public static double LeastPanel(LengthUnit unit) => Lengths.IsFoot(unit) ? 1 : 0.3;

    public static IReadOnlyList<Finding> Make(WallProject project, QuantityTable quantities, BidTable bid) =>
        [.. IncompleteFindings.Make(quantities, bid), .. Slivers(quantities, project.Unit), .. Stubs(quantities.Cutting, project)];

    private static IEnumerable<Finding> Slivers(QuantityTable quantities, LengthUnit unit)
    {
        double least = LeastPanel(unit);
        string symbol = Lengths.IsFoot(unit) ? "ft" : "m";
        foreach (IGrouping<(Wall Wall, int Leg, int Column), Panel> column in quantities.PanelPieces.GroupBy(p => (p.Wall, p.Leg, p.Column)))
        {
            Panel narrow = column.First();
            if (narrow.Width < least)
                yield return Warning(narrow, FormattableString.Invariant($"a panel column is only {narrow.Width:0.###} {symbol} wide: move first_break, or let its neighbour take it"));
            foreach (Panel low in column.Where(p => p.Size == PanelSize.SpecialHeight && Math.Max(p.StartHeight, p.EndHeight) < least))
                yield return Warning(low, FormattableString.Invariant($"a panel of course {low.Course} is only {Math.Max(low.StartHeight, low.EndHeight):0.###} {symbol} high: change the panel height or the top, or let the panel below take it"));
        }
    }

    private static Finding Warning(Panel panel, string message) => new()
    {
        Code = FindingCode.Guidance,
        Severity = Severity.Warning,
        Wall = panel.Wall,
        Station = panel.Wall.StationOf(Math.Clamp(panel.Start, panel.Wall.Start, panel.Wall.End)),
        ToStation = panel.Wall.StationOf(Math.Clamp(panel.End, panel.Wall.Start, panel.Wall.End)),
        Message = message,
    };

    private static IEnumerable<Finding> Stubs(CuttingPlan? plan, WallProject project)
    {
        string symbol = Lengths.IsFoot(project.Unit) ? "ft" : "m";
        return (plan?.Stubs ?? []).Select(s => new Finding
        {
            Code = FindingCode.Guidance,
            Severity = Severity.Warning,
            Message = FormattableString.Invariant(
                $"{s.Count} bars of {s.Bar}, {s.CutLength:0.###} {symbol} long, each need a coupler for {s.Beyond:0.###} {symbol} beyond stock of {s.StockLength:0.###} {symbol}: nails of {s.NailLengthWithout:0.###} {symbol}, or stock of {s.CutLength:0.###} {symbol}, would need none; the plan couples no piece under {plan!.LeastPiece:0.###} {symbol}"),
        });
    }
}
