using SheetGen.Exchange.Scene;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Ifc;

/// <summary>
/// The temporary shotcrete of each section as a retaining wall; precast panels, or the permanent facing of a section, as claddings. A thickness
/// that is not given leaves a surface, and no volume.
/// </summary>
internal sealed class IfcFacings(IfcModel model, IfcShapes shapes, IfcProperties properties, IfcPlaces places)
{
    public void Add(IReadOnlyList<SceneItem> scene)
    {
        var shotcrete = new List<StepRef>();
        foreach (SceneItem.Shotcrete item in scene.OfType<SceneItem.Shotcrete>())
            shotcrete.Add(Add(item));
        if (shotcrete.Count > 0)
            model.Root("IFCRELASSOCIATESMATERIAL", "material|shotcrete", null, null, shotcrete, model.Step.Value("IFCMATERIAL", "Shotcrete", null, "concrete"));
        foreach (SceneItem.PermanentFacing item in scene.OfType<SceneItem.PermanentFacing>())
            Add(item);
        foreach (SceneItem.FacingPanel item in scene.OfType<SceneItem.FacingPanel>())
            Add(item);
    }

    private StepRef Add(SceneItem.Shotcrete item)
    {
        (Wall wall, Section section) = (item.Section.Wall, item.Section.Section);
        StepRef element = model.Root("IFCWALL", item.Key, IfcModel.Label(item.Name), null, "TEMPORARY SHOTCRETE", places.AtOrigin(), shapes.Of(item.Bodies, IfcColour.Shotcrete),
            null, new StepEnum("RETAININGWALL"));
        places.Hold(element, wall, section);
        properties.Quantities(item.Key, "Qto_WallBaseQuantities", [element],
            properties.LengthQuantity("Width", wall.Facing?.Shotcrete),
            properties.AreaQuantity("GrossSideArea", Amount(item.Section, QuantityName.FaceAreaGross)),
            properties.AreaQuantity("NetSideArea", Amount(item.Section, QuantityName.FaceArea)),
            properties.VolumeQuantity("NetVolume", Amount(item.Section, QuantityName.ShotcreteVolume)));
        return element;
    }

    private void Add(SceneItem.PermanentFacing item)
    {
        (Wall wall, Section section) = (item.Section.Wall, item.Section.Section);
        StepRef element = Cladding(item, IfcModel.Label(wall.Facing!.Kind.ToString()), null);
        places.Hold(element, wall, section);
        properties.Quantities(item.Key, "Qto_CoveringBaseQuantities", [element],
            properties.LengthQuantity("Width", wall.Facing.Thickness), properties.AreaQuantity("NetArea", Amount(item.Section, QuantityName.PanelFaceArea)));
        properties.Quantities("volume|" + item.Key, "SheetGen_FacingQuantities", [element],
            properties.VolumeQuantity("NetVolume", Amount(item.Section, QuantityName.FacingVolume)),
            properties.VolumeQuantity("GapVolume", Amount(item.Section, QuantityName.GapVolume)));
    }

    private void Add(SceneItem.FacingPanel item)
    {
        Panel panel = item.Panel;
        StepRef element = Cladding(item, "PRECAST PANEL", panel.Mark);
        places.Hold(element, panel.Wall, panel.Section);
        properties.Set(item.Key, "SheetGen_Panel", [element],
            properties.Text("Mark", panel.Mark), properties.Whole("Column", panel.Column), properties.Whole("Course", panel.Course), properties.Whole("Leg", panel.Leg + 1),
            properties.Text("Size", panel.Size.ToString()), properties.Length("PanelWidth", panel.Width), properties.Length("StartHeight", panel.StartHeight),
            properties.Length("EndHeight", panel.EndHeight), properties.Text("CutBy", string.Join(", ", panel.CutBy)));
        properties.Quantities(item.Key, "Qto_CoveringBaseQuantities", [element],
            properties.LengthQuantity("Width", panel.Wall.Facing?.Thickness), properties.AreaQuantity("NetArea", panel.Area));
    }

    private StepRef Cladding(SceneItem item, string? kind, string? mark) => model.Root("IFCCOVERING", item.Key, IfcModel.Label(item.Name), null, kind, places.AtOrigin(),
        shapes.Of(item.Bodies, IfcColour.Facing), IfcModel.Label(mark), new StepEnum("CLADDING"));

    /// <summary>The section's amount where it is whole.</summary>
    private static double? Amount(SectionQuantities section, string name) =>
        section.Amounts[name] is { State: QuantityState.Complete } quantity ? quantity.Amount : null;
}
