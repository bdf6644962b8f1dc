using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>From which list, and by which formula, a section's amount comes.</summary>
internal sealed record Sources(NailSheet Nails, FacingSheet Facing, PanelSheet PanelList, PadSheet Pad, DrainageSheet Drainage, LiftSheet Lifts, TestSheet Tests)
{
    /// <summary>True for an amount that the user's rates decide: its formula stands even while the rate is empty.</summary>
    public static bool RestsOnRate(string name) =>
        name is QuantityName.GroutWithOverrun or QuantityName.ShotcreteSupplied or QuantityName.Centralizers;

    /// <param name="number">Cell with the section's number.</param>
    /// <param name="index">Place of the section, from 0.</param>
    /// <param name="at">Cell of another quantity of the same section.</param>
    public string? FormulaOf(string name, string number, int index, Func<string, string> at)
    {
        string Face(string key) => Facing.Sections.Absolute(key, Facing.Sections.FirstRow + index);
        string status = Nails.Table.Range("status"), section = Nails.Table.Range("no");
        return name switch
        {
            QuantityName.NailCount or QuantityName.Plates or QuantityName.Nuts or QuantityName.Washers => Nails.Count(number),
            QuantityName.UnresolvedCount => $"COUNTIFS({section},{number},{status},\"unresolved\")",
            QuantityName.PayLength => Nails.Sum("pay", number),
            QuantityName.UnresolvedLength => $"SUMIFS({Nails.Table.Range("pay")},{section},{number},{status},\"unresolved\")",
            QuantityName.FaceLength or QuantityName.HoleLength => Nails.Sum("length", number),
            QuantityName.BackLength => Nails.Sum("back", number),
            QuantityName.Projection => Nails.Sum("projection", number),
            QuantityName.BarLength => Nails.Sum("bar_length", number),
            QuantityName.BarWeight => Nails.Sum("weight", number),
            QuantityName.HoleVolume => Nails.Sum("hole_volume", number),
            QuantityName.GroutVolume => Nails.Sum("grout", number),
            QuantityName.GroutWithOverrun =>
                $"IF({RateSheet.GroutOverrun}=\"\",\"\",{at(QuantityName.GroutVolume)}*{RateSheet.GroutOverrun})",
            QuantityName.Centralizers => $"IF({RateSheet.CentralizerSpacing}=\"\",\"\",{Nails.Sum("centralizers", number)})",
            QuantityName.VerificationCount => Nails.Count(number, true),
            QuantityName.VerificationLength => Nails.Sum("length", number, true),
            QuantityName.VerificationBarLength => Nails.Sum("bar_length", number, true),
            QuantityName.VerificationBarWeight => Nails.Sum("weight", number, true),
            QuantityName.VerificationGrout => Nails.Sum("grout", number, true),
            QuantityName.ProofCount => $"SUMIFS({Tests.Table.Range("proof")},{Tests.Table.Range("no")},{number})",
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
            QuantityName.PanelCount => $"SUMIFS({PanelList.Table.Range("count")},{PanelList.Table.Range("no")},{number})",
            QuantityName.PanelsFull => Panels(number, "full"),
            QuantityName.PanelsPartial => Panels(number, "partial"),
            QuantityName.PanelsSpecial => Panels(number, "special height"),
            QuantityName.PadLength => $"SUMIFS({Pad.Table.Range("length")},{Pad.Table.Range("no")},{number})",
            QuantityName.PadSteps => $"SUMIFS({Pad.Table.Range("step")},{Pad.Table.Range("no")},{number})",
            QuantityName.StripCount => $"COUNTIFS({Drainage.Table.Range("no")},{number})",
            QuantityName.StripLength => $"SUMIFS({Drainage.Table.Range("length")},{Drainage.Table.Range("no")},{number})",
            QuantityName.LiftCount => $"COUNTIFS({Lifts.Table.Range("no")},{number})",
            QuantityName.ExcavationVolume => $"SUMIFS({Lifts.Table.Range("volume")},{Lifts.Table.Range("no")},{number})",
            _ => null,
        };
    }

    private string Panels(string number, string size) =>
        $"SUMIFS({PanelList.Table.Range("count")},{PanelList.Table.Range("no")},{number},{PanelList.Table.Range("size")},\"{size}\")";
}
