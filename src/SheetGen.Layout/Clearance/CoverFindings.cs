using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Clearance;

/// <summary>Where the rows of a finished layout leave the face uncovered, and where the face is too low for any nail.</summary>
internal static class CoverFindings
{
    public static IReadOnlyList<Finding> Of(WallProject project, NailLayout layout)
    {
        var findings = new List<Finding>();
        ILookup<Section, Nail> bySection = layout.Nails.Where(n => n.Kind != NailKind.Verification)
            .ToLookup(n => n.Section, (IEqualityComparer<Section>)ReferenceEqualityComparer.Instance);
        foreach (Wall wall in project.Walls)
        {
            var face = new Face(wall);
            foreach (Bay bay in Bay.Of(face, project.Rules, project.Unit))
            {
                Head[] heads = [.. bySection[bay.Section].Where(n => bay.Leg.Has(n.Along)).Select(Head.Of)];
                foreach (CoverBreak lack in Joined(CoverRule.Breaks(bay, heads, strict: false), Lengths.Quantum(project.Unit)))
                    findings.Add(CoverOf(bay, lack));
                foreach ((Along start, Along end) in CoverRule.NoNailHeight(bay))
                    findings.Add(NoNailHeightOf(bay, start, end));
            }
        }
        return findings;
    }

    /// <summary>Neighbouring spans with the same lack become one, with its worst figure.</summary>
    private static List<CoverBreak> Joined(List<CoverBreak> breaks, double quantum)
    {
        var joined = new List<CoverBreak>();
        foreach (CoverBreak lack in breaks)
        {
            int same = joined.FindLastIndex(b => b.Lack == lack.Lack);
            if (same >= 0 && lack.Start - joined[same].End <= 4 * quantum)
                joined[same] = joined[same] with { End = Along.Max(joined[same].End, lack.End), Amount = Math.Max(joined[same].Amount, lack.Amount) };
            else
                joined.Add(lack);
        }
        return joined;
    }

    private static Finding CoverOf(Bay bay, CoverBreak lack)
    {
        string Show(double length) => Figures.Length(length, bay.Unit);
        string what = lack.Lack switch
        {
            Lack.Nails when !bay.HasRoom => NoRoom(bay),
            Lack.Nails => $"no nail within {Show(bay.HalfWindow)} along the wall",
            Lack.Top => $"the highest nail is {Figures.Beside(lack.Amount, bay.Rules.TopMax, bay.Unit)} below the top; {Show(bay.Rules.TopMax)} is allowed",
            Lack.Bottom => $"the lowest nail is {Figures.Beside(lack.Amount, bay.Rules.BottomMax, bay.Unit)} above the bottom; {Show(bay.Rules.BottomMax)} is allowed",
            _ => $"nails one above the other are {Figures.Beside(lack.Amount, bay.Section.VerticalSpacing, bay.Unit)} apart; {Show(bay.Section.VerticalSpacing)} is allowed",
        };
        double? required = lack.Lack switch
        {
            Lack.Nails => null,
            Lack.Top => bay.Rules.TopMax,
            Lack.Bottom => bay.Rules.BottomMax,
            _ => bay.Section.VerticalSpacing,
        };
        return new Finding
        {
            Code = FindingCode.Cover,
            Severity = Severity.Error,
            Wall = bay.Wall,
            Station = bay.Wall.StationOf(lack.Start).Number,
            ToStation = bay.Wall.StationOf(lack.End).Number,
            Clear = null,
            Required = required,
            Message = $"section {bay.Section.Name}, {Between(bay, lack.Start, lack.End)}: {what}{Closed(bay, lack)}",
        };
    }

    /// <summary>What leaves no head its place in a bay, and what a designer can do about it.</summary>
    private static string NoRoom(Bay bay)
    {
        string Show(double length) => Figures.Length(length, bay.Unit);
        string Kept(BayEnd end) => end == BayEnd.Corner ? $"{Show(bay.Rules.CornerClear)} from a corner" : $"{Show(bay.Rules.EdgeMin)} from the wall's end";
        BayEnd[] ends = [.. new[] { bay.StartEnd, bay.EndEnd }.Where(e => e != BayEnd.SectionLimit).Distinct()];
        bool isCorner = ends.Contains(BayEnd.Corner), isEnd = ends.Contains(BayEnd.WallEnd);
        string between = bay.StartEnd == bay.EndEnd
            ? isCorner ? "between two corners" : "between the wall's ends"
            : $"from {Named(bay.StartEnd)} to {Named(bay.EndEnd)}";
        double width = bay.FaceEndAt(bay.HalfHeight) - bay.FaceStartAt(bay.HalfHeight);
        return $"no nail has room, the face is {Show(width)} wide {between} and a head keeps {string.Join(" and ", ends.Select(Kept))}; "
            + $"move {(isCorner ? "the corner" : "the wall's end")}, lower {(isCorner && isEnd ? "corner_clear or edge_min" : isCorner ? "corner_clear" : "edge_min")}, or let the engineer accept a face without nails";
    }

    private static string Named(BayEnd end) => end switch { BayEnd.WallEnd => "the wall's end", BayEnd.Corner => "a corner", _ => "the section's limit" };

    /// <summary>Spans closed to nails are not exempt: what they uncover is reported with their reason.</summary>
    private static string Closed(Bay bay, CoverBreak lack)
    {
        string[] reasons = [.. bay.Wall.ClosedStretches
            .Where(c => new Along(c.Start) - bay.HalfWindow < lack.End && lack.Start < new Along(c.End) + bay.HalfWindow).Select(c => c.Reason).Where(r => !string.IsNullOrWhiteSpace(r)).Distinct()!];
        return reasons.Length == 0 ? "" : $"; no nails are allowed there ({string.Join("; ", reasons)})";
    }

    private static Finding NoNailHeightOf(Bay bay, Along start, Along end) => new()
    {
        Code = FindingCode.NoNailHeight,
        Severity = Severity.Notice,
        Wall = bay.Wall,
        Station = bay.Wall.StationOf(start).Number,
        ToStation = bay.Wall.StationOf(end).Number,
        Required = 2 * bay.Rules.EdgeMin,
        Message = $"section {bay.Section.Name}, {Between(bay, start, end)}: less than twice edge_min between top and bottom, no nail fits",
    };

    private static string Between(Bay bay, Along start, Along end) =>
        $"{bay.Wall.StationText(start, bay.Unit)} to {bay.Wall.StationText(end, bay.Unit)}";
}
