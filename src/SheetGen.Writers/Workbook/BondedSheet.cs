using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Bonded lengths in front of and behind each slip surface, by soil layer: a row a nail, place and surface.</summary>
internal sealed class BondedSheet
{
    public BondedSheet(WorkbookInput input, DesignValueSheet values)
    {
        LayoutEffect effect = input.Quantities.Effect;
        Sheet = SheetHead.Make(input, "Bonded lengths", "Bonded lengths and pullout", LayoutEffect.Caution);
        Sheet.Put(3, 0, LayoutEffect.Caution, new CellStyle(CellLook.Warning, CellFormat.General));
        Sheet.HeadColumns = 4;
        PlacedCut[] cuts = [.. NailPlace.All(effect).SelectMany(p => p.Place.Cuts.Select(c => new PlacedCut(p, c)))];
        Table = new TableBlock<PlacedCut>(Sheet, "BondedLengths", 5, cuts);
        TableBlock<PlacedCut> t = Table;
        string l = input.Length;
        t.Number("no", "Section no.", 9, CellFormat.General, c => input.NumberOf(c.Of.Effect.Nail.Wall, c.Of.Effect.Nail.Section))
            .Formula("line", "Line of the values", 8, CellFormat.General, values.Sections.Find("no", t.This("no")), c => 1 + values.Sections.Items.ToList().FindIndex(s => ReferenceEquals(s.Section, c.Of.Effect.Nail.Section)))
            .Text("nail", "Nail", 14, c => c.Of.Effect.Nail.Mark)
            .Text("place", "Place", 9, c => c.Of.Word)
            .Text("surface", "Slip surface", 14, c => c.Cut.Surface.Name)
            .FormulaText("key", "Key", 16, CellStyle.Note, $"{t.This("nail")}&\"|\"&{t.This("place")}", c => c.Of.Key)
            .Number("length", $"Length, {l}", 9, CellFormat.Two, c => c.Of.Place.Length)
            .Number("at", $"In front of the surface, {l}", 10, CellFormat.Three, c => c.Cut.At)
            .Formula("rest", $"Behind the surface, {l}", 10, CellFormat.Three, $"{t.This("length")}-{t.This("at")}", c => c.Of.Place.Length - c.Cut.At);
        (string Key, string Head, string Layer)[] layers = values.Layers.Count == 0 ? [("layer0", "Every soil", "")] : [.. values.Layers];
        foreach ((string key, string head, string layer) in layers)
        {
            t.Number("front_" + key, $"In front, {head}, {l}", 11, CellFormat.Three, c => c.Within(layer, 0, c.Cut.At))
                .Number("behind_" + key, $"Behind, {head}, {l}", 11, CellFormat.Three, c => c.Within(layer, c.Cut.At, c.Of.Place.Length));
        }
        string Sum(string side) => string.Join("+", layers.Select(x => $"IF({t.This(side + "_" + x.Key)}=0,0,{t.This(side + "_" + x.Key)}*{values.Sections.At("r_" + x.Key, t.This("line"))})"));
        t.Formula("pull_front", $"Pullout in front, {input.Force}", 11, CellFormat.Three, Sum("front"), c => c.Cut.Front)
            .Formula("pull_behind", $"Pullout behind R_PO, {input.Force}", 11, CellFormat.Three, Sum("behind"), c => c.Cut.Behind);
        t.Fill("bonded-lengths");
    }

    public SheetContent Sheet { get; }

    public TableBlock<PlacedCut> Table { get; }

    /// <summary>The least of a column over the surfaces of a nail's place; empty where none has a value.</summary>
    public string Least(string column, string key) =>
        $"IF(COUNTIFS({Table.Range("key")},{key},{Table.Range(column)},\">=0\")=0,\"\",_xlfn.MINIFS({Table.Range(column)},{Table.Range("key")},{key}))";

    /// <summary>A slip surface on a nail's place.</summary>
    internal sealed record PlacedCut(NailPlace Of, SurfaceCut Cut)
    {
        /// <summary>Length of a layer between two depths; without borings the one soil takes all.</summary>
        public double Within(string layer, double from, double to) => Of.Place.Layers.Count == 0
            ? to - from
            : Of.Place.Layers.Where(s => s.Layer == layer).Sum(s => Math.Max(0, Math.Min(to, s.To) - Math.Max(from, s.From)));
    }
}
