using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>
/// What the layout does to the design: a row a production nail, the changed ones first, by zone, lowest ratio first. Areas, directions and
/// layers stand here always; ratios come from the sheet of the loads where the engineer's values are given.
/// </summary>
internal sealed class EffectSheet
{
    public const string Name = "Design effect";

    public EffectSheet(WorkbookInput input, LoadSheet? loads)
    {
        LayoutEffect effect = input.Quantities.Effect;
        Sheet = SheetHead.Make(input, Name, "What the changed layout does to the design", LayoutEffect.Caution + (loads is null ? " No values of the engineer's are given: geometry only." : ""));
        Sheet.Put(3, 0, Sheet.Rows[3][0].Text!, new CellStyle(CellLook.Warning, CellFormat.General));
        Sheet.HeadColumns = 5;
        NailEffect[] changed = [.. effect.Changed];
        Table = new TableBlock<NailEffect>(Sheet, "DesignEffect", 5, [.. changed, .. effect.Nails.Where(n => !n.IsChanged)]);
        TableBlock<NailEffect> t = Table;
        string l = input.Length, area = l + "2";
        t.Number("no", "Section no.", 9, CellFormat.General, n => input.NumberOf(n.Nail.Wall, n.Nail.Section))
            .Text("wall", "Wall", 14, n => n.Nail.Wall.Name)
            .Text("section", "Section", 9, n => n.Nail.Section.Name)
            .Number("row", "Row", 7, CellFormat.General, n => n.Nail.Row.Value)
            .Text("nail", "Nail", 14, n => n.Nail.Mark)
            .Text("zone", "Place on the face", 12, n => ResultWords.Of(n.Zone))
            .Text("changed", "Changed", 18, Changes)
            .Number("design", $"Design area H x V, {area}", 11, CellFormat.Two, n => n.DesignArea)
            .Number("grid", $"Area on the grid, {area}", 11, CellFormat.Two, n => n.Grid?.Area)
            .Number("area", $"Area as drawn, {area}", 11, CellFormat.Two, n => n.Drawn.Area)
            .Formula("share", "Area as drawn / design area", 11, CellFormat.Three, $"{t.This("area")}/{t.This("design")}", n => n.AreaShare)
            .Formula("growth", $"Growth over the grid, {area}", 11, CellFormat.Two, $"IF({t.This("grid")}=\"\",\"\",{t.This("area")}-{t.This("grid")})", n => n.Drawn.Area - n.Grid?.Area)
            .Number("splay", "Splay, deg (+ up-station)", 11, CellFormat.General, n => n.Nail.Splay)
            .Number("inclination", "Inclination, deg", 11, CellFormat.General, n => n.Nail.Inclination)
            .Number("lean", "Batter, deg", 9, CellFormat.General, n => n.Nail.Wall.Batter?.Angle ?? 0)
            .Formula("square", "Force square to the face, share", 12, CellFormat.Four, LoadSheet.Square(t.This("splay"), t.This("inclination"), t.This("lean")), n => n.Drawn.Square)
            .Formula("across", "Force across the face, share", 12, CellFormat.Four, $"SQRT(MAX(0,1-{t.This("square")}^2))", n => n.Drawn.Across)
            .Number("length", $"Length, {l}", 9, CellFormat.Two, n => n.Nail.Length);
        if (loads is not null)
        {
            TableBlock<NailPlace> ratios = loads.Table;
            Dictionary<string, int> lines = ratios.Items.Select((p, i) => (p.Key, i + 1)).ToDictionary(p => p.Key, p => p.Item2);
            t.Formula("line_grid", "Line of the loads, grid", 8, CellFormat.General, ratios.Find("key", $"{t.This("nail")}&IF({t.This("changed")}=\"\",\"|drawn\",\"|grid\")"),
                    n => Line(lines, n.Nail.Mark + (n.IsChanged ? "|grid" : "|drawn")))
                .Formula("line", "Line of the loads, drawn", 8, CellFormat.General, ratios.Find("key", $"{t.This("nail")}&\"|drawn\""), n => Line(lines, n.Nail.Mark + "|drawn"))
                .Formula("before", "Lowest ratio on the grid", 11, CellFormat.Three, ratios.At("lowest", t.This("line_grid")), n => (n.IsChanged ? n.Grid : n.Drawn)?.Lowest?.Ratio)
                .Formula("ratio", "Lowest ratio as drawn", 11, CellFormat.Three, ratios.At("lowest", t.This("line")), n => n.Drawn.Lowest?.Ratio)
                .FormulaText("state", "Limit state", 26, CellStyle.Text, $"IFERROR({ratios.At("state", t.This("line"))},\"\")", n => n.Drawn.Lowest is { } lowest ? ResultWords.Of(lowest.State) : "")
                .Number("asked", "Ratio asked for", 9, CellFormat.Two, n => n.Nail.Section.Design?.LeastRatio);
        }
        foreach ((string key, string head, string layer) in Layers(effect))
            t.Number(key, $"{head}, {l}", 11, CellFormat.Two, n => n.Drawn.Layers.Where(s => s.Layer == layer).Sum(s => s.Length));
        t.Fill("design-effect");
        if (effect.LayersFrom.Length > 0)
            Sheet.Put(4, 0, effect.LayersFrom, CellStyle.Note);
    }

    public SheetContent Sheet { get; }

    public TableBlock<NailEffect> Table { get; }

    /// <summary>The soil layers that holes go through, with a key and a head of their own.</summary>
    public static IReadOnlyList<(string Key, string Head, string Layer)> Layers(LayoutEffect effect) =>
    [
        .. effect.Nails.SelectMany(n => n.Drawn.Layers.Concat(n.Grid?.Layers ?? [])).Select(s => s.Layer).Distinct().Order(StringComparer.Ordinal)
            .Select((layer, i) => (FormattableString.Invariant($"layer{i}"), FormattableString.Invariant($"Layer {i + 1}, {(layer.Length > 60 ? layer[..60] : layer)}"), layer)),
    ];

    private static double? Line(Dictionary<string, int> lines, string key) => lines.TryGetValue(key, out int line) ? line : null;

    private static string Changes(NailEffect effect)
    {
        Nail nail = effect.Nail;
        string[] changes =
        [
            .. nail.IsAdded ? ["added"] : nail.IsMoved ? new[] { "moved" } : [],
            .. nail.Splay != 0 || nail.Inclination != nail.Section.Inclination ? new[] { "turned" } : [],
            .. effect.Grid is { } grid && grid.Length != nail.Length ? new[] { "length" } : [],
        ];
        return changes.Length > 0 ? string.Join(", ", changes) : effect.IsChanged ? "area only" : "";
    }
}
