using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>From which list, and by which formula, a section's amount comes.</summary>
internal sealed record Sources(NailSheet Nails, FacingSheet Facing, PanelSheet PanelList, PadSheet Pad, DrainageSheet Drainage, LiftSheet Lifts, TestSheet Tests)
{
    /// <summary>True for an amount that the user's rates decide: its formula stands even while the rate is empty.</summary>
    public static bool RestsOnRate(string name) =>
        name is QuantityName.GroutWithOverrun or QuantityName.ShotcreteSupplied or QuantityName.Centralizers;

    /// <param name="number">Cell with the section's number.</param>
    /// <param name="at">Cell of another quantity of the same section.</param>
    /// <returns>The formula and the list that it sums; null for an amount that comes from no list.</returns>
    public (string Formula, SheetContent List)? Of(string name, string number, Func<string, string> at)
    {
        (string, SheetContent) FromNails(string formula) => (formula, Nails.Sheet);
        (string, SheetContent) IfGiven(string rate, string formula) => FromNails($"IF({rate}=\"\",\"\",{formula})");
        (string, SheetContent) Face(string key) => (Facing.Sections.Lookup(key, "no", number), Facing.Sheet);
        (string, SheetContent) Panels(string size) => (
            $"SUMIFS({PanelList.Table.Range("count")},{PanelList.Table.Range("no")},{number}{(size.Length > 0 ? $",{PanelList.Table.Range("size")},\"{size}\"" : "")})",
            PanelList.Sheet);
        string status = Nails.Table.Range("status"), section = Nails.Table.Range("no");
        return name switch
        {
            QuantityName.NailCount or QuantityName.Plates or QuantityName.Nuts or QuantityName.Washers => FromNails(Nails.Count(number)),
            QuantityName.UnresolvedCount => FromNails($"COUNTIFS({section},{number},{status},\"unresolved\")"),
            QuantityName.PayLength => FromNails(Nails.Sum("pay", number)),
            QuantityName.UnresolvedLength => FromNails($"SUMIFS({Nails.Table.Range("pay")},{section},{number},{status},\"unresolved\")"),
            QuantityName.FaceLength or QuantityName.HoleLength => FromNails(Nails.Sum("length", number)),
            QuantityName.BackLength => FromNails(Nails.Sum("back", number)),
            QuantityName.Projection => IfGiven(RateSheet.BarProjection, Nails.Sum("projection", number)),
            QuantityName.BarLength => IfGiven(RateSheet.BarProjection, Nails.Sum("bar_length", number)),
            QuantityName.BarWeight => IfGiven(RateSheet.BarProjection, Nails.Sum("weight", number)),
            QuantityName.HoleVolume => FromNails(Nails.Sum("hole_volume", number)),
            QuantityName.GroutVolume => FromNails(Nails.Sum("grout", number)),
            QuantityName.GroutWithOverrun => IfGiven(RateSheet.GroutOverrun, $"{at(QuantityName.GroutVolume)}*{RateSheet.GroutOverrun}"),
            QuantityName.Centralizers => IfGiven(RateSheet.CentralizerSpacing, Nails.Sum("centralizers", number)),
            QuantityName.VerificationCount => FromNails(Nails.Count(number, true)),
            QuantityName.VerificationLength => FromNails(Nails.Sum("length", number, true)),
            QuantityName.VerificationBarLength => IfGiven(RateSheet.BarProjection, Nails.Sum("bar_length", number, true)),
            QuantityName.VerificationBarWeight => IfGiven(RateSheet.BarProjection, Nails.Sum("weight", number, true)),
            QuantityName.VerificationGrout => FromNails(Nails.Sum("grout", number, true)),
            QuantityName.ProofCount => ($"SUMIFS({Tests.Table.Range("proof")},{Tests.Table.Range("no")},{number})", Tests.Sheet),
            QuantityName.FaceAreaGross => Face("gross"),
            QuantityName.OpeningArea => Face("openings"),
            QuantityName.FaceArea => Face("neat"),
            QuantityName.ExposedArea => Face("exposed"),
            QuantityName.ElevationArea => Face("outline"),
            QuantityName.PanelFaceArea => Face("front"),
            QuantityName.ShotcreteVolume => Face("shotcrete"),
            QuantityName.ShotcreteSupplied => Face("supplied"),
            QuantityName.MeshArea => Face("mesh"),
            QuantityName.WalerLength => Face("waler"),
            QuantityName.CopingLength => Face("coping"),
            QuantityName.PanelCount => Panels(""),
            QuantityName.PanelsFull => Panels("full"),
            QuantityName.PanelsPartial => Panels("partial"),
            QuantityName.PanelsSpecial => Panels("special height"),
            QuantityName.PadLength => ($"SUMIFS({Pad.Table.Range("length")},{Pad.Table.Range("no")},{number})", Pad.Sheet),
            QuantityName.PadSteps => ($"SUMIFS({Pad.Table.Range("step")},{Pad.Table.Range("no")},{number})", Pad.Sheet),
            QuantityName.StripCount => ($"COUNTIFS({Drainage.Table.Range("no")},{number})", Drainage.Sheet),
            QuantityName.StripLength => ($"SUMIFS({Drainage.Table.Range("length")},{Drainage.Table.Range("no")},{number})", Drainage.Sheet),
            QuantityName.LiftCount => ($"COUNTIFS({Lifts.Table.Range("no")},{number})", Lifts.Sheet),
            QuantityName.ExcavationVolume => ($"SUMIFS({Lifts.Table.Range("volume")},{Lifts.Table.Range("no")},{number})", Lifts.Sheet),
            _ => null,
        };
    }
}
