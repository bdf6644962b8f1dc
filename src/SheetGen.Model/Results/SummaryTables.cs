using System.Globalization;
using SheetGen.Model.Units;

namespace SheetGen.Model.Results;

/// <summary>Tables that stand on the sheets and in the workbook with the same figures, cell for cell.</summary>
public static class SummaryTables
{
    /// <summary>One row a section, and a row of totals. The stage stands there where the project file gives any.</summary>
    public static TableData BySection(QuantityTable quantities)
    {
        IReadOnlyList<SummaryColumn> columns = SectionColumns(quantities);
        return new TableData(
            "Summary by section",
            [.. columns.Select(c => new TableColumn(c.Head, c.IsNumeric))],
            [
                .. quantities.Sections.Select(s => (IReadOnlyList<string>)[.. columns.Select(c => c.Text(s))]),
                [.. columns.Select(c => c.Total)],
            ]);
    }

    /// <summary>The columns of the summary by section, in order.</summary>
    public static IReadOnlyList<SummaryColumn> SectionColumns(QuantityTable quantities)
    {
        LengthUnit unit = quantities.Unit;
        bool feet = Lengths.IsFoot(unit);
        string l = feet ? "ft" : "m";
        SummaryColumn Words(string key, string head, Func<SectionQuantities, string> text, string total = "") => new(key, head, null, text, total);
        SummaryColumn Figure(string key, string head, int decimals, Func<SectionQuantities, double?> of, double? total = null) =>
            new(key, head, decimals, s => Fixed(of(s), decimals), Fixed(total, decimals));
        SummaryColumn Measured(string name, string head, int decimals) =>
            Figure(name, head, decimals, s => s.Amounts[name].Amount, quantities.Totals[name].Amount);
        List<SummaryColumn> columns =
        [
            Words("wall", "Wall", s => s.Wall.Name, "Total"),
            Words("section", "Section", s => s.Section.Name),
            Words("stations", "Stations", s => StationsOf(s, unit)),
            Words("height", $"Height, {l}", HeightRange),
            Measured(QuantityName.FaceArea, $"Face area, {l}2", 1),
            Figure("rows", "Rows", 0, s => s.Rows.Count),
            Figure("horizontal", $"Spacing H, {l}", 2, s => s.Section.HorizontalSpacing),
            Figure("vertical", $"Spacing V max, {l}", 2, s => s.Section.VerticalSpacing),
            Words("built", $"Rows apart, {l}", s => s.RowGaps is not { } g ? "" : Fixed(g.Least, 2) == Fixed(g.Greatest, 2) ? Fixed(g.Least, 2) : $"{Fixed(g.Least, 2)} to {Fixed(g.Greatest, 2)}"),
            Figure("gaps", "Non-typical gaps", 0, s => s.Gaps.Count, quantities.Sections.Sum(s => s.Gaps.Count)),
            Words("gap_range", $"Non-typical gaps, {l}", GapRange),
            Measured(QuantityName.NailCount, "Nails", 0),
            Words("lengths", $"Nails by length, {l}", LengthList),
            Measured(QuantityName.PayLength, $"Pay length, {l}", 2),
            Measured(QuantityName.Projection, $"Projection, {l}", 2),
            Measured(QuantityName.BarLength, $"Bar length, {l}", 2),
            Figure("hole", $"Hole, {(feet ? "in" : "mm")}", 2, s => s.Section.HoleDiameter * (feet ? 12 : 1000)),
            Words("bar", "Bar", s => s.Section.Bar.ToString()),
            Figure("mean", $"Area a nail, mean, {l}2", 2, s => s.MeanArea),
            Figure("greatest", $"Area a nail, greatest, {l}2", 2, s => s.GreatestArea),
            Figure("product", $"H x V, {l}2", 2, s => s.Section.HorizontalSpacing * s.Section.VerticalSpacing),
            Measured(QuantityName.VerificationCount, "Verification", 0),
            Measured(QuantityName.ProofCount, "Proof", 0),
            Measured(QuantityName.UnresolvedCount, "Unresolved", 0),
        ];
        if (quantities.Sections.Any(s => s.Section.Stage.Length > 0))
            columns.Insert(2, Words("stage", "Stage", s => s.Section.Stage));
        return columns;
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

    /// <summary>Nails by kind and length: "24: 30; 22: 15; test 22: 1" for verification test nails. Proof test nails are among the production nails.</summary>
    public static string LengthList(SectionQuantities section)
    {
        IEnumerable<string> Counts(bool verification, string kind) => section.Lengths
            .Where(l => l.Kind == NailKind.Verification == verification).GroupBy(l => l.Length).OrderByDescending(g => g.Key)
            .Select(g => string.Create(CultureInfo.InvariantCulture, $"{kind}{g.Key:0.###}: {g.Sum(l => l.Count)}"));
        return string.Join("; ", Counts(false, "").Concat(Counts(true, "test ")));
    }

    /// <summary>"10.00 to 19.50", or one figure where they are the same.</summary>
    public static string HeightRange(SectionQuantities section)
    {
        string least = Fixed(section.LeastHeight, 2), most = Fixed(section.GreatestHeight, 2);
        return least == most ? least : least + " to " + most;
    }

    public static string StationsOf(SectionQuantities section, LengthUnit unit) =>
        StationRange.Of(section.Wall, section.Section.Start, section.Section.End, unit);

    /// <summary>"2.50 to 4.75": the least and the greatest non-typical gap; one figure where they are the same, empty where there is none.</summary>
    public static string GapRange(SectionQuantities section)
    {
        if (section.Gaps.Count == 0)
            return "";
        string least = Fixed(section.Gaps.Min(g => g.Gap), 2), most = Fixed(section.Gaps.Max(g => g.Gap), 2);
        return least == most ? least : least + " to " + most;
    }

    private static string Fixed(double? value, int decimals)
    {
        if (value is not { } number)
            return "";
        double rounded = Math.Round(number, decimals, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals, CultureInfo.InvariantCulture);
    }
}
