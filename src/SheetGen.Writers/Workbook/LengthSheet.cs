using System.Globalization;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>
/// Nails by length, in all and by section. A line's length is the next one below that the nails have, so that the list follows an edit.
/// </summary>
internal sealed class LengthSheet
{
    private const int HeadRow = 5, Spare = 3, MostInText = 30;
    private readonly List<double?> _lengths;

    public LengthSheet(WorkbookInput input, NailSheet nails)
    {
        QuantityTable table = input.Quantities;
        Sheet = SheetHead.Make(input, "Nails by length", "Nails by length", "Length from the face to the back of the hole. Empty lines take lengths that an edit brings in.");
        Sheet.HeadColumns = 3;
        _lengths = [.. table.Nails.Select(n => n.Nail.Length).Distinct().OrderDescending().Select(l => (double?)l), .. Enumerable.Repeat<double?>(null, Spare)];
        Table = new TableBlock<(int Place, double? Length)>(Sheet, "Lengths", HeadRow, [.. _lengths.Select((l, i) => (i, l))]);
        TableBlock<(int Place, double? Length)> t = Table;
        string lengths = nails.Table.Range("length"), kind = nails.Table.Range("kind"), no = nails.Table.Range("no");
        t.Add("length", $"Length, {input.Length}", 11, n => SheetCell.Calculated(Next(n.Place, lengths), n.Length, CellFormat.Two));
        void Count(string key, string head, string sign, string more, IEnumerable<NailQuantity> counted)
        {
            Dictionary<double, int> counts = counted.GroupBy(n => n.Nail.Length).ToDictionary(g => g.Key, g => g.Count());
            t.Formula(key, head, 12, CellFormat.Whole, $"IF({t.This("length")}=\"\",\"\",COUNTIFS({lengths},{t.This("length")},{kind},\"{sign}verification\"{more}))",
                n => n.Length is { } l ? counts.GetValueOrDefault(l) : null);
        }
        Count("production", "Production nails", "<>", "", table.Nails.Where(n => !n.IsSacrificial));
        Count("verification", "Verification nails", "", "", table.Nails.Where(n => n.IsSacrificial));
        ILookup<int, NailQuantity> bySection = table.Nails.ToLookup(n => input.NumberOf(n.Nail.Wall, n.Nail.Section));
        for (int s = 0; s < table.Sections.Count; s++)
        {
            int place = s + 1;
            (SectionQuantities section, string number) = (table.Sections[s], place.ToString(CultureInfo.InvariantCulture));
            string name = $"{section.Wall.Name}, section {section.Section.Name}", here = $",{no},{number}";
            Count("p" + number, name, "<>", here, bySection[place].Where(n => !n.IsSacrificial));
            Count("v" + number, name + ", verification", "", here, bySection[place].Where(n => n.IsSacrificial));
        }
        t.Fill("lengths", n => n.Length is not null);
        t.TotalHead("Total");
        double? Total(bool sacrificial) => table.Nails.Count == 0 ? null : table.Nails.Count(n => n.IsSacrificial == sacrificial);
        t.Total("production", Total(false), CellFormat.Whole);
        t.Total("verification", Total(true), CellFormat.Whole);
    }

    public SheetContent Sheet { get; }

    public TableBlock<(int Place, double? Length)> Table { get; }

    /// <summary>The lines of the list that may hold nails.</summary>
    public IReadOnlyList<double?> Lengths => _lengths;

    /// <summary>A section's nails by length in words, as on the sheets: "24: 30; 22: 15; test 22: 1".</summary>
    public SheetCell TextOf(SectionQuantities section, int index)
    {
        string text = SummaryTables.LengthList(section);
        if (_lengths.Count > MostInText)
            return SheetCell.Of(text, CellStyle.Wrapped);
        string number = (index + 1).ToString(CultureInfo.InvariantCulture);
        IEnumerable<string> terms = new[] { ("p", ""), ("v", "test ") }.SelectMany(kind => Enumerable.Range(0, _lengths.Count).Select(i =>
        {
            string length = Table.Absolute("length", Table.FirstRow + i), count = Table.Absolute(kind.Item1 + number, Table.FirstRow + i);
            return $"IF(N({count})=0,\"\",\"; {kind.Item2}\"&SUBSTITUTE(ROUND({length},3),\",\",\".\")&\": \"&{count})";
        }));
        return SheetCell.Calculated($"MID({string.Join("&", terms)},3,2000)", text, CellStyle.Wrapped);
    }

    /// <summary>The greatest length below that of the line above; an empty text where there is none.</summary>
    private string Next(int place, string lengths)
    {
        string above = CellAddress.Of(0, HeadRow + place);
        string greatest = place == 0 ? $"MAX({lengths})" : $"SUMPRODUCT(MAX(({lengths}<N({above}))*{lengths}))";
        return $"IFERROR(IF({greatest}<=0,\"\",{greatest}),\"\")";
    }
}
