using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Gaps between neighbours of a row that are not the grid's, one row a gap.</summary>
internal sealed class GapSheet
{
    public GapSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Gaps", "Non-typical spacing", "Gaps between neighbours of a row that are not the grid's, along the face.");
        List<(SectionQuantities Section, NonTypicalGap Gap)> gaps = [.. input.Quantities.Sections.SelectMany(s => s.Gaps.Select(g => (s, g)))];
        Table = new TableBlock<(SectionQuantities Section, NonTypicalGap Gap)>(Sheet, "Gaps", 5, gaps, true);
        Table.Number("no", "Section no.", 10, CellFormat.Whole, g => input.NumberOf(g.Section.Wall, g.Section.Section))
            .Text("wall", "Wall", 16, g => g.Section.Wall.Name)
            .Text("section", "Section", 10, g => g.Section.Section.Name)
            .Text("first", "From nail", 16, g => g.Gap.FirstMark)
            .Text("second", "To nail", 16, g => g.Gap.SecondMark)
            .Number("gap", $"Gap, {input.Length}", 12, input.Place, g => g.Gap.Gap)
            .Number("typical", $"Typical, {input.Length}", 12, input.Place, g => g.Section.Section.HorizontalSpacing);
        Table.Fill("gaps");
    }

    public SheetContent Sheet { get; }

    public TableBlock<(SectionQuantities Section, NonTypicalGap Gap)> Table { get; }

    /// <summary>Number of gaps in the section whose number stands in a cell.</summary>
    public string Count(string number) => $"COUNTIFS({Table.Range("no")},{number})";
}
