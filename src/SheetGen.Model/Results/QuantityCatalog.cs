using SheetGen.Model.Units;

namespace SheetGen.Model.Results;

/// <summary>All quantities by name, in the order in which they are listed. One table: pay item expressions use these names.</summary>
public static class QuantityCatalog
{
    /// <summary>The definitions with their units for a project's length unit.</summary>
    public static IReadOnlyList<QuantityDefinition> For(LengthUnit unit)
    {
        bool feet = Lengths.IsFoot(unit);
        string length = feet ? "ft" : "m", weight = feet ? "lb" : "kg";
        return
        [
            .. Rows.Select(r => new QuantityDefinition(r.Name, r.Text, r.Kind switch
            {
                'n' => "each",
                'w' => weight,
                '1' => length,
                '2' => length + "2",
                _ => length + "3",
            }, r.Basis)),
        ];
    }

    private static readonly (string Name, char Kind, string Text, string Basis)[] Rows =
    [
        (QuantityName.NailCount, 'n', "Production nails", "count, proof tested and unresolved nails included"),
        (QuantityName.UnresolvedCount, 'n', "of these, unresolved nails", "count; not to be drilled before the engineer decides"),
        (QuantityName.PayLength, '1', "Pay length of production nails", "along the bar, by the project's rule"),
        (QuantityName.UnresolvedLength, '1', "of this, unresolved nails", "along the bar, by the project's rule"),
        (QuantityName.FaceLength, '1', "Length from the face", "along the bar, front of the shotcrete to back of hole"),
        (QuantityName.BackLength, '1', "Length from the back of the shotcrete", "along the bar, back of the shotcrete to back of hole"),
        (QuantityName.Projection, '1', "Bar projection of production nails", "count x bar_projection; bought, not paid by itself"),
        (QuantityName.BarLength, '1', "Bar length of production nails", "face to back of hole + projection"),
        (QuantityName.BarWeight, 'w', "Bar weight of production nails", "bar length x published nominal weight (ASTM A615/A615M Table 1, grades 40 to 100), or the project file's"),
        (QuantityName.HoleLength, '1', "Hole length of production nails", "along the hole, face to back"),
        (QuantityName.HoleVolume, '3', "Hole volume of production nails", "pi D2 / 4 x hole length"),
        (QuantityName.GroutVolume, '3', "Theoretical grout of production nails", "hole volume - nominal bar volume in the hole"),
        (QuantityName.GroutWithOverrun, '3', "Grout with overrun", "theoretical grout x grout overrun factor"),
        (QuantityName.Plates, 'n', "Bearing plates", "one a production nail (common practice, no source)"),
        (QuantityName.Nuts, 'n', "Nuts", "one a production nail (common practice, no source)"),
        (QuantityName.Washers, 'n', "Bevelled washers", "one a production nail (common practice, no source)"),
        (QuantityName.Centralizers, 'n', "Centralizers of production nails", "for each nail one at a distance from each end of the hole, and between them no farther apart than the spacing"),
        (QuantityName.SpareNails, 'n', "Spare nails", "share of the production nails, unrounded"),
        (QuantityName.PlateWeight, 'w', "Weight of bearing plates", "plates x weight of one"),
        (QuantityName.NutWeight, 'w', "Weight of nuts", "nuts x weight of one"),
        (QuantityName.WasherWeight, 'w', "Weight of bevelled washers", "washers x weight of one"),
        (QuantityName.Couplers, 'n', "Couplers", "bar length / longest stock, rounded up, less one, for each bar; verification test nails included"),
        (QuantityName.CouplerWeight, 'w', "Weight of couplers", "couplers x weight of one"),
        (QuantityName.StockBars, 'n', "Stock bars", "from the cutting plan over all bars; a section's share by its length of bars"),
        (QuantityName.BearingBarLength, '1', "Bearing bar length", "production nails x bearing bars x length of one"),
        (QuantityName.VerificationCount, 'n', "Verification test nails", "count; sacrificial, extra to the grid"),
        (QuantityName.VerificationLength, '1', "Length of verification test nails", "along the bar, face to back of hole"),
        (QuantityName.VerificationBarLength, '1', "Bar length of verification test nails", "length + projection"),
        (QuantityName.VerificationBarWeight, 'w', "Bar weight of verification test nails", "bar length x published nominal weight"),
        (QuantityName.VerificationGrout, '3', "Theoretical grout of verification test nails", "as if grouted over the whole hole"),
        (QuantityName.ProofCount, 'n', "Proof tests", "share of the section's production nails, rounded up"),
        (QuantityName.FaceAreaGross, '2', "Face area, openings included", "top to stepped bottom, along the face"),
        (QuantityName.OpeningArea, '2', "Openings", "along the face"),
        (QuantityName.FaceArea, '2', "Face area", "top to stepped bottom, along the face, openings deducted"),
        (QuantityName.ExposedArea, '2', "Face area above finished grade", "along the face, openings deducted"),
        (QuantityName.ElevationArea, '2', "Outline area of the developed elevation", "stations x heights as drawn, openings deducted"),
        (QuantityName.PanelFaceArea, '2', "Area of the permanent facing's front", "as face area, on the front of the facing"),
        (QuantityName.ShotcreteVolume, '3', "Shotcrete, neat", "face area x thickness"),
        (QuantityName.ShotcreteSupplied, '3', "Shotcrete, supplied", "neat / (1 - loss); loss is a share of the material supplied"),
        (QuantityName.MeshArea, '2', "Welded wire, neat", "face area, no laps"),
        (QuantityName.MeshWithLaps, '2', "Welded wire with laps", "neat x sheet area / (sheet less one lap each way)"),
        (QuantityName.MeshSheets, 'n', "Sheets of welded wire", "with laps / sheet area, unrounded"),
        (QuantityName.WalerLength, '1', "Waler length, one bar a row", "length of every row along the face, half a spacing beyond the end nails, broken at openings and mitres"),
        (QuantityName.WalerBarLength, '1', "Waler bar length", "waler length x bars a row"),
        (QuantityName.FacingVolume, '3', "Permanent facing", "area of its middle surface x thickness"),
        (QuantityName.GapVolume, '3', "Fill in the gap", "area of the gap's middle surface x gap"),
        (QuantityName.CopingLength, '1', "Coping length", "along the top of the face, slopes included"),
        (QuantityName.CopingVolume, '3', "Coping", "coping length x width x height"),
        (QuantityName.PanelCount, 'n', "Precast panels", "all sizes"),
        (QuantityName.PanelsFull, 'n', "of these, full panels", "standard width and height"),
        (QuantityName.PanelsPartial, 'n', "of these, partial panels", "standard height, other width, or cut by an opening"),
        (QuantityName.PanelsSpecial, 'n', "of these, special heights", "other height, any width"),
        (QuantityName.PanelArea, '2', "Panel area", "sum of the panels on their plumb face, openings deducted"),
        (QuantityName.PadLength, '1', "Leveling pad", "along the face at the pad's elevation"),
        (QuantityName.PadVolume, '3', "Leveling pad volume", "pad length x width x height"),
        (QuantityName.PadSteps, 'n', "Leveling pad steps", "changes of elevation on a leg"),
        (QuantityName.StripCount, 'n', "Drainage strips", "between nail columns, as few as the greatest spacing asks; only where drainage is asked for"),
        (QuantityName.StripLength, '1', "Drainage strip length", "bottom to top along the face, openings deducted"),
        (QuantityName.StripSupplied, '1', "Drainage strip, supplied", "strip length x (1 + lap)"),
        (QuantityName.LiftCount, 'n', "Excavation lifts", "one a row on each leg of a section, and the last cut to the bottom; cuts too small for a crew are cut with the next"),
        (QuantityName.ExcavationVolume, '3', "Excavation in front of the face", "average end area between the cross sections x the path of its centroid in plan (Pappus), up to the bisector at a corner; openings included"),
    ];
}
