using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>From which list, and by which formula, a section's amount comes.</summary>
internal sealed record Sources(NailSheet Nails, FacingSheet Facing, PanelSheet PanelList, PadSheet Pad, DrainageSheet Drainage, LiftSheet Lifts, TestSheet Tests)
{
    /// <summary>True for an amount that the user's rates decide: its formula stands even while the rate is empty.</summary>
    public static bool RestsOnRate(string name) =>
        name is QuantityName.GroutWithOverrun or QuantityName.ShotcreteSupplied or QuantityName.Centralizers or QuantityName.Projection or QuantityName.BarLength
            or QuantityName.BarWeight or QuantityName.VerificationBarLength or QuantityName.VerificationBarWeight or QuantityName.SpareNails
            or QuantityName.PlateWeight or QuantityName.NutWeight or QuantityName.WasherWeight or QuantityName.Couplers or QuantityName.CouplerWeight
            or QuantityName.MeshWithLaps or QuantityName.MeshSheets or QuantityName.CopingVolume or QuantityName.PadVolume or QuantityName.StripSupplied;

    /// <summary>Area of welded wire bought for one of neat area.</summary>
    private const string Laps =
        $"{RateSheet.MeshLength}*{RateSheet.MeshWidth}/(({RateSheet.MeshLength}-{RateSheet.MeshLap})*({RateSheet.MeshWidth}-{RateSheet.MeshLap}))";

    /// <param name="number">Cell with the section's number.</param>
    /// <param name="at">Cell of another quantity of the same section.</param>
    /// <returns>The formula and the list that it sums; null for an amount that comes from no list.</returns>
    public (string Formula, SheetContent List)? Of(string name, string number, Func<string, string> at)
    {
        (string, SheetContent) FromNails(string formula) => (formula, Nails.Sheet);
        (string, SheetContent) IfGiven(string rate, string formula) => FromNails($"IF({rate}=\"\",\"\",{formula})");
        (string, SheetContent) Times(string quantity, string factor, SheetContent list, params IReadOnlyList<string> rates) =>
            ($"IF(OR({string.Join(",", rates.Append(at(quantity)).Select(r => r + "=\"\""))}),\"\",{at(quantity)}*{factor})", list);
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
            QuantityName.BarWeight => IfGiven(RateSheet.BarProjection, Nails.Weight(number)),
            QuantityName.HoleVolume => FromNails(Nails.Sum("hole_volume", number)),
            QuantityName.GroutVolume => FromNails(Nails.Sum("grout", number)),
            QuantityName.GroutWithOverrun => IfGiven(RateSheet.GroutOverrun, $"{at(QuantityName.GroutVolume)}*{RateSheet.GroutOverrun}"),
            QuantityName.Centralizers => IfGiven(RateSheet.CentralizerSpacing, Nails.Sum("centralizers", number)),
            QuantityName.SpareNails => Times(QuantityName.NailCount, RateSheet.SpareNails, Nails.Sheet, RateSheet.SpareNails),
            QuantityName.PlateWeight => Times(QuantityName.Plates, RateSheet.PlateWeight, Nails.Sheet, RateSheet.PlateWeight),
            QuantityName.NutWeight => Times(QuantityName.Nuts, RateSheet.NutWeight, Nails.Sheet, RateSheet.NutWeight),
            QuantityName.WasherWeight => Times(QuantityName.Washers, RateSheet.WasherWeight, Nails.Sheet, RateSheet.WasherWeight),
            QuantityName.Couplers => IfGiven(RateSheet.StockLength, $"SUMIFS({Nails.Table.Range("couplers")},{section},{number})"),
            QuantityName.CouplerWeight => Times(QuantityName.Couplers, RateSheet.CouplerWeight, Nails.Sheet, RateSheet.CouplerWeight),
            QuantityName.BearingBarLength => Face("bearing"),
            QuantityName.WalerBarLength => Face("waler_bars"),
            QuantityName.FacingVolume => Face("facing"),
            QuantityName.GapVolume => Face("gap"),
            QuantityName.MeshWithLaps => Times(QuantityName.MeshArea, Laps, Facing.Sheet, RateSheet.MeshLength, RateSheet.MeshWidth, RateSheet.MeshLap),
            QuantityName.MeshSheets => Times(QuantityName.MeshWithLaps, $"1/({RateSheet.MeshLength}*{RateSheet.MeshWidth})", Facing.Sheet, RateSheet.MeshLength, RateSheet.MeshWidth),
            QuantityName.CopingVolume => Times(QuantityName.CopingLength, $"{RateSheet.CopingWidth}*{RateSheet.CopingHeight}", Facing.Sheet, RateSheet.CopingWidth, RateSheet.CopingHeight),
            QuantityName.PadVolume => Times(QuantityName.PadLength, $"{RateSheet.PadWidth}*{RateSheet.PadHeight}", Pad.Sheet, RateSheet.PadWidth, RateSheet.PadHeight),
            QuantityName.StripSupplied => Times(QuantityName.StripLength, $"(1+{RateSheet.StripLap})", Drainage.Sheet, RateSheet.StripLap),
            QuantityName.PanelArea => ($"SUMIFS({PanelList.Table.Range("area")},{PanelList.Table.Range("no")},{number})", PanelList.Sheet),
            QuantityName.VerificationCount => FromNails(Nails.Count(number, true)),
            QuantityName.VerificationLength => FromNails(Nails.Sum("length", number, true)),
            QuantityName.VerificationBarLength => IfGiven(RateSheet.BarProjection, Nails.Sum("bar_length", number, true)),
            QuantityName.VerificationBarWeight => IfGiven(RateSheet.BarProjection, Nails.Weight(number, true)),
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
