using System.Globalization;
using SheetGen.Model.Units;

namespace SheetGen.Model.Results;

/// <summary>Tables that stand on the sheets and in the workbook with the same figures, cell for cell.</summary>
public static class SummaryTables
{
    /// <summary>One row a section, and a row of totals.</summary>
    public static TableData BySection(QuantityTable quantities)
    {
        LengthUnit unit = quantities.Unit;
        string length = Lengths.IsFoot(unit) ? "ft" : "m";
        TableColumn[] columns =
        [
            new("Wall", false), new("Section", false), new("Stations", false), new($"Height, {length}", false),
            new($"Face area, {length}2", true), new("Rows", true), new($"Spacing H x V, {length}", false), new("Non-typical gaps", true),
            new("Nails", true), new("Nails by length", false), new($"Pay length, {length}", true), new($"Projection, {length}", true),
            new($"Bar length, {length}", true), new($"Hole, {(Lengths.IsFoot(unit) ? "in" : "mm")}", true), new("Bar", false),
            new($"Area a nail, mean, {length}2", true), new($"Area a nail, greatest, {length}2", true), new($"H x V, {length}2", true),
            new("Verification", true), new("Proof", true), new("Unresolved", true),
        ];
        List<IReadOnlyList<string>> rows = [.. quantities.Sections.Select(s => Row(s, unit))];
        string Total(string name, int decimals) => Fixed(quantities.Totals[name].Amount, decimals);
        rows.Add(
        [
            "Total", "", "", "", Total(QuantityName.FaceArea, 1), "", "", Fixed(quantities.Sections.Sum(s => s.Gaps.Count), 0),
            Total(QuantityName.NailCount, 0), "", Total(QuantityName.PayLength, 2), Total(QuantityName.Projection, 2),
            Total(QuantityName.BarLength, 2), "", "", "", "", "",
            Total(QuantityName.VerificationCount, 0), Total(QuantityName.ProofCount, 0), Total(QuantityName.UnresolvedCount, 0),
        ]);
        return new TableData("Summary by section", columns, rows);
    }

    /// <summary>One row a pay item: what is bid, by the agency's rounding; empty quantities say in the last column what is missing.</summary>
    public static TableData Bid(BidTable bid) => new(
        "Bid quantities",
        [new("Item", false), new("Description", false), new("Unit", false), new("Quantity", true), new("Remark", false)],
        [
            .. bid.Lines.Select(l => (IReadOnlyList<string>)
            [
                l.Item.Number, l.Item.Description, l.Item.Unit,
                l.Rounded is { } rounded ? Fixed(rounded, Math.Max(0, l.Item.Rounding.Decimals)) : "", l.Note,
            ]),
        ]);

    /// <summary>The typed lengths of a section's production nails: "24: 30; 22: 15".</summary>
    public static string LengthList(SectionQuantities section) => string.Join("; ", section.Lengths
        .Where(l => l.Kind != NailKind.Verification).GroupBy(l => l.Length).OrderByDescending(g => g.Key)
        .Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Key:0.###}: {g.Sum(l => l.Count)}")));

    /// <summary>"10.00 to 19.50", or one figure where they are the same.</summary>
    public static string HeightRange(SectionQuantities section)
    {
        string least = Fixed(section.LeastHeight, 2), most = Fixed(section.GreatestHeight, 2);
        return least == most ? least : least + " to " + most;
    }

    public static string StationsOf(SectionQuantities section, LengthUnit unit) =>
        StationRange.Of(section.Wall, section.Section.Start, section.Section.End, unit);

    public static string SpacingOf(SectionQuantities section) => string.Create(
        CultureInfo.InvariantCulture, $"{section.Section.HorizontalSpacing:0.###} x {section.Section.VerticalSpacing:0.###}");

    private static string[] Row(SectionQuantities section, LengthUnit unit)
    {
        string Of(string name, int decimals) => Fixed(section.Amounts[name].Amount, decimals);
        double hole = Lengths.IsFoot(unit) ? section.Section.HoleDiameter * 12 : section.Section.HoleDiameter * 1000;
        return
        [
            section.Wall.Name, section.Section.Name, StationsOf(section, unit), HeightRange(section), Of(QuantityName.FaceArea, 1),
            Fixed(section.Rows.Count, 0), SpacingOf(section), Fixed(section.Gaps.Count, 0), Of(QuantityName.NailCount, 0),
            LengthList(section), Of(QuantityName.PayLength, 2), Of(QuantityName.Projection, 2), Of(QuantityName.BarLength, 2),
            Fixed(hole, 2), section.Section.Bar.ToString(), Fixed(section.MeanArea, 2), Fixed(section.GreatestArea, 2),
            Fixed(section.Section.HorizontalSpacing * section.Section.VerticalSpacing, 2), Of(QuantityName.VerificationCount, 0),
            Of(QuantityName.ProofCount, 0), Of(QuantityName.UnresolvedCount, 0),
        ];
    }

    private static string Fixed(double? value, int decimals)
    {
        if (value is not { } number)
            return "";
        double rounded = Math.Round(number, decimals, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals, CultureInfo.InvariantCulture);
    }
}
