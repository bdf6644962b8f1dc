using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Loads, resistances and ratios by formula, a row a nail and place.</summary>
internal sealed class LoadSheet
{
    private static readonly (string Key, string Factor, LimitState State)[] HeadStates =
    [
        ("flexure", "flexure", LimitState.Flexure), ("punching", "punching", LimitState.Punching), ("pflexure", "flexure", LimitState.PermanentFlexure),
        ("ppunching", "punching", LimitState.PermanentPunching), ("studs", "studs", LimitState.Studs),
    ];

    private readonly DesignValueSheet _values;
    private readonly string _line;

    public LoadSheet(WorkbookInput input, DesignValueSheet values, BondedSheet bonded)
    {
        _values = values;
        Sheet = SheetHead.Make(input, "Design loads", "Loads, resistances and ratios", LayoutEffect.Caution);
        Sheet.Put(3, 0, LayoutEffect.Caution, new CellStyle(CellLook.Warning, CellFormat.General));
        Sheet.Put(4, 0, "R: nominal resistance. Ratio = R times / (load times T), as the method on the sheet Design values has it. Formulas and sources: docs/design-effect.md.", CellStyle.Note);
        Sheet.HeadColumns = 4;
        Table = new TableBlock<NailPlace>(Sheet, "DesignLoads", 5, [.. NailPlace.All(input.Quantities.Effect)]);
        TableBlock<NailPlace> t = Table;
        t.Number("no", "Section no.", 9, CellFormat.General, p => input.NumberOf(p.Effect.Nail.Wall, p.Effect.Nail.Section));
        t.Formula("line", "Line of the values", 8, CellFormat.General, values.Sections.Find("no", t.This("no")), p => LineOf(values, p));
        _line = t.This("line");
        Loads(input);
        Resistances(input, bonded);
        Ratios();
        t.Fill("design-loads");
    }

    public SheetContent Sheet { get; }

    public TableBlock<NailPlace> Table { get; }

    /// <summary>Component of a nail's force square to the face.</summary>
    public static string Square(string splay, string inclination, string lean) =>
        $"COS(RADIANS({inclination}))*COS(RADIANS({splay}))*COS(RADIANS({lean}))+SIN(RADIANS({inclination}))*SIN(RADIANS({lean}))";

    private void Loads(WorkbookInput input)
    {
        TableBlock<NailPlace> t = Table;
        string force = input.Force, l = input.Length;
        string Row(string column) => _values.Loads.At(column, t.This("load_line"));
        string Greater() => $"MAX({Of("h")},{Of("v")},{t.This("width")})";
        t.Text("nail", "Nail", 14, p => p.Effect.Nail.Mark)
            .Text("place", "Place", 9, p => p.Word)
            .FormulaText("key", "Key", 16, CellStyle.Note, $"{t.This("nail")}&\"|\"&{t.This("place")}", p => p.Key)
            .Number("load_row", "Row of the loads", 8, CellFormat.General, p => DesignValueSheet.RowOf(p.Effect.Nail))
            .Formula("load_line", "Line of the loads", 8, CellFormat.General, _values.Loads.Find("key", $"{t.This("no")}&\"|\"&{t.This("load_row")}"), p => LoadLineOf(input, p))
            .Number("area", $"Area, {l}2", 9, CellFormat.Three, p => p.Place.Area)
            .Number("splay", "Splay, deg", 8, CellFormat.General, p => p.IsGrid ? 0 : p.Effect.Nail.Splay)
            .Number("inclination", "Inclination, deg", 8, CellFormat.General, p => p.IsGrid ? p.Effect.Nail.Section.Inclination : p.Effect.Nail.Inclination)
            .Formula("square", "Square to the face", 9, CellFormat.Four, Square(t.This("splay"), t.This("inclination"), Of("lean")), p => p.Place.Square)
            .Formula("share", "Load for one of the design", 9, CellFormat.Four,
                $"{t.This("area")}/{Of("area")}*({Square("0", Of("inclination"), Of("lean"))})/{t.This("square")}", p => p.Place.LoadShare)
            .Formula("tension", $"T_max, {force}", 9, CellFormat.Three, $"IF({Row("tension")}=\"\",\"\",{Row("tension")}*{t.This("share")})", p => p.Place.MaximumLoad)
            .Number("width", $"Width in its row, {l}", 9, CellFormat.Three, p => p.Place.Width)
            .Formula("head_share", "T_0 / T_max", 8, CellFormat.Four, input.IsFeet ? $"0.6+0.057*({Greater()}-3)" : $"0.6+0.2*({Greater()}-1)", p => HeadShare(input, p))
            .Formula("head", $"Head load T_0, {force}", 9, CellFormat.Three,
                $"IF({Row("head")}<>\"\",{Row("head")}*{t.This("share")},IF({t.This("tension")}<>\"\",{t.This("tension")}*{t.This("head_share")},IF({Of("service")}=\"\",\"\",{Of("service")}*{t.This("share")})))", p => p.Place.HeadLoad);
    }

    private void Resistances(WorkbookInput input, BondedSheet bonded)
    {
        TableBlock<NailPlace> t = Table;
        string force = input.Force;
        string Flexure(string p) =>
            $"IF(COUNT({Of(p + "factor")},{Of(p + "vertical")},{Of(p + "horizontal")})<3,\"\",8*{Of(p + "factor")}*MIN({Of(p + "vertical")}*{t.This("width")}/{Of("v")},{Of(p + "horizontal")}*{Of("v")}/{t.This("width")}))";
        t.Formula("r_pullout", $"R pullout behind, least surface, {force}", 11, CellFormat.Three, bonded.Least("pull_behind", t.This("key")), p => Least(p, c => c.Behind))
            .Formula("r_front", $"R pullout in front, least surface, {force}", 11, CellFormat.Three, bonded.Least("pull_front", t.This("key")), p => Least(p, c => c.Front))
            .Formula("r_bar", $"R bar, {force}", 10, CellFormat.Three, Of("bar_tension"), p => Section(input, p).BarTension)
            .Formula("r_flexure", $"R flexure, {force}", 10, CellFormat.Three, Flexure(""), p => FlexureOf(p, false, input))
            .Formula("r_punching", $"R punching, {force}", 10, CellFormat.Three, Of("punching"), p => Section(input, p).Facing.PunchingWithSoil)
            .Formula("r_pflexure", $"R flexure, permanent, {force}", 10, CellFormat.Three, Flexure("p"), p => FlexureOf(p, true, input))
            .Formula("r_ppunching", $"R punching, permanent, {force}", 10, CellFormat.Three, Of("ppunching"), p => Section(input, p).PermanentFacing.PunchingWithSoil)
            .Formula("r_studs", $"R studs, {force}", 10, CellFormat.Three, Of("stud_tension"), p => Section(input, p).Studs);
    }

    private void Ratios()
    {
        TableBlock<NailPlace> t = Table;
        string Ratio(string resistance, string on, string load) =>
            $"IF(COUNT({t.This(resistance)},{Of("on_" + on)},{t.This(load)})<3,\"\",{Of("on_" + on)}*{t.This(resistance)}/({Of("times_load")}*{t.This(load)}))";
        t.Formula("pullout", "Ratio, pullout", 9, CellFormat.Three, Ratio("r_pullout", "pullout", "tension"), p => RatioOf(p, LimitState.Pullout))
            .Formula("bar", "Ratio, bar", 9, CellFormat.Three, Ratio("r_bar", "bar", "tension"), p => RatioOf(p, LimitState.Bar));
        foreach ((string key, string factor, LimitState state) in HeadStates)
            t.Formula(key, $"Ratio, {ResultWords.Of(state)}", 9, CellFormat.Three, Ratio("r_" + key, factor, "head"), p => RatioOf(p, state));
        string heads = string.Join(",", HeadStates.Select(s => t.This(s.Key)));
        // Each head ratio times the head's load is its factored resistance over the load factor.
        t.Formula("front", "Ratio, head and pullout in front", 10, CellFormat.Three,
            $"IF(OR(COUNT({heads})=0,COUNT({t.This("tension")},{t.This("r_front")},{Of("on_pullout")})<3),\"\",(MIN({heads})*{t.This("head")}+{Of("on_pullout")}*{t.This("r_front")}/{Of("times_load")})/{t.This("tension")})",
            p => RatioOf(p, LimitState.Front));
        string all = $"{t.This("pullout")},{t.This("bar")},{heads},{t.This("front")}";
        t.Formula("lowest", "Lowest ratio", 9, CellFormat.Three, $"IF(COUNT({all})=0,\"\",MIN({all}))", p => p.Place.Lowest?.Ratio);
        (string Key, LimitState State)[] states = [("pullout", LimitState.Pullout), ("bar", LimitState.Bar), .. HeadStates.Select(s => (s.Key, s.State)), ("front", LimitState.Front)];
        string named = states.Reverse().Aggregate("\"\"", (rest, s) => $"IF({t.This(s.Key)}={t.This("lowest")},\"{ResultWords.Of(s.State)}\",{rest})");
        t.FormulaText("state", "Limit state", 26, CellStyle.Text, $"IF({t.This("lowest")}=\"\",\"\",{named})", p => p.Place.Lowest is { } lowest ? ResultWords.Of(lowest.State) : "");
    }

    private string Of(string key) => _values.Sections.At(key, _line);

    private static double LineOf(DesignValueSheet values, NailPlace place) =>
        1 + values.Sections.Items.ToList().FindIndex(s => ReferenceEquals(s.Section, place.Effect.Nail.Section));

    private double LoadLineOf(WorkbookInput input, NailPlace place)
    {
        int no = input.NumberOf(place.Effect.Nail.Wall, place.Effect.Nail.Section), row = DesignValueSheet.RowOf(place.Effect.Nail);
        return 1 + _values.Loads.Items.ToList().FindIndex(r => r.No == no && r.Row == row);
    }

    private static double HeadShare(WorkbookInput input, NailPlace place)
    {
        Section section = place.Effect.Nail.Section;
        double greater = Math.Max(Math.Max(section.HorizontalSpacing, section.VerticalSpacing), place.Place.Width);
        return input.IsFeet ? 0.6 + 0.057 * (greater - 3) : 0.6 + 0.2 * (greater - 1);
    }

    private static double? Least(NailPlace place, Func<SurfaceCut, double?> of) => place.Place.Cuts.Select(of).Min();

    private static double? RatioOf(NailPlace place, LimitState state) => place.Place.Checks.Where(c => c.State == state).Min(c => (double?)c.Ratio);

    private static SectionEffect Section(WorkbookInput input, NailPlace place) =>
        input.Quantities.Effect.Sections.First(s => ReferenceEquals(s.Section, place.Effect.Nail.Section));

    private static double? FlexureOf(NailPlace place, bool isPermanent, WorkbookInput input)
    {
        SectionEffect section = Section(input, place);
        FacingEffect facing = isPermanent ? section.PermanentFacing : section.Facing;
        FacingDesign? design = isPermanent ? section.Section.Design?.PermanentFacing : section.Section.Design?.Facing;
        double height = section.Section.VerticalSpacing, width = place.Place.Width;
        return 8 * design?.PressureFactor * (facing.VerticalMoments is { } v && facing.HorizontalMoments is { } h ? Math.Min(v * width / height, h * height / width) : null);
    }
}
