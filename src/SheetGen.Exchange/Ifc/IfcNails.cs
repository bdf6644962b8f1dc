using SheetGen.Exchange.Common;
using SheetGen.Exchange.Scene;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Ifc;

/// <summary>
/// Each nail as an assembly of its mark, of a reinforcing bar (IfcReinforcingBar, anchoring) and its grouted hole. The assembly's placement is the
/// head, its z runs down the hole, its x is level. The bar's figures are the take-off's.
/// </summary>
internal sealed class IfcNails(IfcModel model, IfcShapes shapes, IfcProperties properties, IfcPlaces places, IfcAlignments alignments)
{
    public void Add(IReadOnlyList<SceneItem> scene)
    {
        Dictionary<string, SceneItem.Hole> holes = scene.OfType<SceneItem.Hole>().ToDictionary(h => h.Nail.Mark);
        var types = new Dictionary<Bar, (StepRef Type, List<StepRef> Bars)>();
        var grouted = new List<StepRef>();
        foreach (SceneItem.Bar bar in scene.OfType<SceneItem.Bar>())
        {
            if (!types.TryGetValue(bar.Nail.Bar, out (StepRef Type, List<StepRef> Bars) type))
                types[bar.Nail.Bar] = type = (BarType(bar), []);
            (StepRef steel, StepRef hole) = Add(bar, holes[bar.Nail.Mark]);
            type.Bars.Add(steel);
            grouted.Add(hole);
        }
        foreach ((Bar bar, (StepRef type, List<StepRef> bars)) in types)
        {
            string key = bar.ToString();
            model.Root("IFCRELDEFINESBYTYPE", "type|" + key, null, null, bars, type);
            Material("steel|" + key, bar.Grade > 0 ? FormattableString.Invariant($"Steel bar, grade {bar.Grade}") : "Steel bar", "steel", bars);
        }
        Material("grout", "Cement grout", null, grouted);
    }

    private StepRef BarType(SceneItem.Bar bar) => model.Root("IFCREINFORCINGBARTYPE", "bartype|" + bar.Nail.Bar, IfcModel.Label(bar.Nail.Bar.ToString()), null, null, null, null, null, null,
        new StepEnum("ANCHORING"), bar.Diameter, bar.Amounts.BarArea, null, new StepEnum("TEXTURED"), null, null);

    private (StepRef Bar, StepRef Hole) Add(SceneItem.Bar bar, SceneItem.Hole hole)
    {
        Nail nail = bar.Nail;
        NailQuantity amounts = bar.Amounts;
        string mark = nail.Mark, label = IfcModel.Label(mark)!;
        bool drill = nail.Status != NailStatus.Unresolved;
        StepRef at = model.Placement(places.SitePlacement, model.AxesAlong(nail.Hole.Head, nail.Hole.Direction));
        StepRef assembly = model.Root("IFCELEMENTASSEMBLY", ItemKey.Nail(mark), label, Remark(nail), "SOIL NAIL", at, null, label, new StepEnum("SITE"), new StepEnum("USERDEFINED"));
        StepRef steel = model.Root("IFCREINFORCINGBAR", bar.Key, label, Remark(nail), null, model.Placement(at, model.Axes(default)),
            shapes.Upright(-amounts.Projection, amounts.BarLength, bar.Diameter / 2, drill ? IfcColour.Bar : IfcColour.BarUnresolved), label,
            null, bar.Diameter, amounts.BarArea, amounts.BarLength, new StepEnum("ANCHORING"), new StepEnum("TEXTURED"));
        StepRef drilled = model.Root("IFCBUILDINGELEMENTPROXY", hole.Key, label, Remark(nail), "GROUTED HOLE", model.Placement(at, model.Axes(default)),
            shapes.Upright(0, nail.Length, nail.HoleDiameter / 2, drill ? IfcColour.Hole : IfcColour.HoleUnresolved), label, new StepEnum("USERDEFINED"));
        model.Aggregate(ItemKey.Nail(mark), assembly, [steel, drilled]);
        places.Hold(assembly, nail.Wall, nail.Section);
        alignments.Position(nail, assembly);
        AddFigures(nail, amounts, assembly, steel, drilled);
        return (steel, drilled);
    }

    private static string? Remark(Nail nail) => NailFigures.Remark(nail) is { Length: > 0 } remark ? remark : null;

    private void AddFigures(Nail nail, NailQuantity amounts, StepRef assembly, StepRef steel, StepRef hole)
    {
        Vector3D head = NailFigures.Absolute(model.Input, nail.Hole.Head), tip = NailFigures.Absolute(model.Input, nail.Hole.Tip);
        NailClearance? clear = model.Input.Report.Nails.GetValueOrDefault(nail.Mark);
        properties.Set(nail.Mark, "SheetGen_SoilNail", [assembly],
            properties.Text("Mark", nail.Mark), properties.Text("Wall", nail.Wall.Name), properties.Text("Section", nail.Section.Name),
            properties.Text("Row", nail.Row.ToString()), properties.Text("Kind", ResultWords.Of(nail.Kind)), properties.Text("Status", ResultWords.Of(nail.Status)),
            properties.Length("Station", NailFigures.Station(nail)), properties.Text("StationText", NailFigures.StationText(nail, model.Input.Project.Unit)), properties.Length("HeadNorthing", head.N), properties.Length("HeadEasting", head.E),
            properties.Length("HeadElevation", nail.Elevation), properties.Length("TipNorthing", tip.N), properties.Length("TipEasting", tip.E),
            properties.Length("TipElevation", tip.Z), properties.Degrees("Azimuth", NailFigures.Azimuth(nail)), properties.Degrees("Splay", nail.Splay),
            properties.Degrees("Inclination", nail.Inclination), properties.Length("Length", nail.Length), properties.Text("Bar", nail.Bar.ToString()),
            properties.Length("HoleDiameter", nail.HoleDiameter), properties.Text("Nearest", clear?.Nearest), properties.Length("LeastClear", clear?.LeastClear),
            properties.Degrees("DrillingMarginToObstructions", clear?.MarginObstruction), properties.Degrees("DrillingMarginToNails", clear?.MarginNail),
            properties.Text("Reason", nail.Reason?.Text), properties.Text("Stage", nail.Section.Stage));
        properties.Quantities(nail.Mark, "Qto_ReinforcingElementBaseQuantities", [steel],
            properties.CountQuantity("Count", 1), properties.LengthQuantity("Length", amounts.BarLength), properties.WeightQuantity("Weight", amounts.Weight));
        properties.Quantities("hole|" + nail.Mark, "SheetGen_HoleQuantities", [hole],
            properties.LengthQuantity("HoleLength", nail.Length), properties.VolumeQuantity("HoleVolume", amounts.HoleVolume),
            properties.VolumeQuantity("TheoreticalGrout", amounts.Grout));
        properties.Quantities("nail|" + nail.Mark, "SheetGen_NailQuantities", [assembly],
            properties.LengthQuantity("PayLength", nail.Kind == NailKind.Verification ? null : amounts.PayLength), properties.LengthQuantity("Projection", amounts.Projection),
            properties.LengthQuantity("BarLength", amounts.BarLength), properties.WeightQuantity("BarWeight", amounts.Weight),
            properties.AreaQuantity("FaceArea", amounts.Area));
    }

    private void Material(string key, string name, string? category, IReadOnlyCollection<StepRef> of)
    {
        if (of.Count > 0)
            model.Root("IFCRELASSOCIATESMATERIAL", "material|" + key, null, null, of, model.Step.Value("IFCMATERIAL", name, null, category));
    }
}
