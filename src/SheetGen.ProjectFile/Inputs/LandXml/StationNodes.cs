using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>The stations of an alignment: that of its start, and its equations.</summary>
/// <param name="Equations">Null where there are none.</param>
internal sealed record StationNodes(Node Start, ListNode? Equations)
{
    private const string Mend = "mend it in the program that wrote it";

    /// <summary>Null where the start's station or an equation cannot be used, which is reported.</summary>
    /// <param name="factor">Project units in one of the file.</param>
    /// <param name="length">Length of the alignment in the file's unit.</param>
    public static StationNodes? Read(XmlPart alignment, LandXmlFile file, double factor, double length, ProblemList problems)
    {
        SourceSpot spot = file.File.At(alignment.Line, alignment.Column);
        double start = alignment.Number("staStart") ?? 0, printed = start, at = start;
        string? digits = alignment.Attribute("staStart")?.Trim();
        var nodes = new List<Node>();
        bool good = digits is null || alignment.Number("staStart") is not null;
        if (!good)
            problems.Add(ProblemCodes.CannotUse, spot, "the station of the alignment's start (staStart) is not a number", Mend, file.File.Spot);
        else if (digits is null)
            problems.Add(ProblemCodes.Inexact, spot, "the alignment does not tell the station of its start (staStart): 0 is taken", "compare the stations with those of the plans", file.File.Spot);
        XmlPart[] equations = [.. alignment.All("StaEquation")];
        // With their places they may stand in any order; without, each goes on from the one before.
        if (Array.TrueForAll(equations, p => p.Number("staInternal") is not null))
            equations = [.. equations.OrderBy(p => p.Number("staInternal"))];
        foreach (XmlPart part in equations)
        {
            SourceSpot here = file.File.At(part.Line, part.Column);
            if (part.Number("staAhead") is not { } ahead || (part.Number("staInternal") ?? at + part.Number("staBack") - printed) is not { } place)
            {
                problems.Add(ProblemCodes.CannotUse, here, "the station equation lacks its place (staInternal) or its ahead station (staAhead)", Mend, file.File.Spot);
                good = false;
                continue;
            }
            if (part.Attribute("staIncrement")?.Trim() == "decreasing")
            {
                problems.Add(ProblemCodes.CannotUse, here, "stations fall from this equation on (staIncrement), which a layout line cannot have", "take an alignment whose stations rise, or type the layout line", file.File.Spot);
                good = false;
                continue;
            }
            double back = printed + place - at;
            if (part.Number("staBack") is { } told && Math.Abs(told - back) > 0.01)
                problems.Add(ProblemCodes.Inexact, here, FormattableString.Invariant($"the station equation's back station is {told}, but {back:0.####} by its place {place}: its place is taken"), "", file.File.Spot);
            if (place <= start)
                (printed, at, digits) = (ahead + start - place, start, null);
            else if (place < start + length)
            {
                nodes.Add(Nodes.Map(here, ("back", Nodes.Number(back * factor, here)), ("ahead", Nodes.Number(ahead * factor, here))));
                (printed, at) = (ahead, place);
            }
        }
        if (!good)
            return null;
        double first = nodes.Count == 0 ? printed : start;
        Node station = factor == 1 && digits is not null ? new ScalarNode(digits, false, spot) : Nodes.Number(first * factor, spot);
        return new StationNodes(station, nodes.Count == 0 ? null : Nodes.List(spot, nodes));
    }
}
