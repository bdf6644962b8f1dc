using SheetGen.Exchange.Scene;
using SheetGen.Model;

namespace SheetGen.Exchange.Ifc;

/// <summary>
/// Obstructions as they are measured to: shafts and piles as piles, beams as beams, pipes as pipe segments, other solids as proxies, and
/// boundaries as upright virtual elements over the height of the walls.
/// </summary>
internal sealed class IfcObstructions(IfcModel model, IfcShapes shapes, IfcProperties properties, IfcPlaces places)
{
    public void Add(IReadOnlyList<SceneItem> scene)
    {
        foreach (SceneItem.Obstacle item in scene.OfType<SceneItem.Obstacle>())
            Add(item);
    }

    private void Add(SceneItem.Obstacle item)
    {
        Obstruction of = item.Obstruction;
        StepRef? shape = shapes.Of(item.Bodies, of.Kind == ObstructionKind.Boundary ? IfcColour.Boundary : IfcColour.Obstruction);
        StepRef element = of.Kind switch
        {
            ObstructionKind.Shaft => Element(item, "IFCPILE", "DRILLED SHAFT", shape, "BORED", (object?)null),
            ObstructionKind.Pile => Element(item, "IFCPILE", null, shape, "NOTDEFINED", (object?)null),
            ObstructionKind.Beam => Element(item, "IFCBEAM", null, shape, "BEAM"),
            ObstructionKind.Pipe => Element(item, "IFCPIPESEGMENT", null, shape, "NOTDEFINED"),
            ObstructionKind.Boundary => Element(item, "IFCVIRTUALELEMENT", "RIGHT-OF-WAY OR EASEMENT", shape, "BOUNDARY"),
            _ => Element(item, "IFCBUILDINGELEMENTPROXY", "OBSTRUCTION", shape, "USERDEFINED"),
        };
        places.Hold(element);
        properties.Set(item.Key, "SheetGen_Obstruction", [element],
        [
            properties.Text("Kind", of.Kind.ToString()), properties.Length("Diameter", of.Diameter > 0 ? of.Diameter : null),
            properties.Length("Bottom", of.Bottom), properties.Length("Top", of.Top),
            properties.Length("ClearanceAskedFor", model.Input.Project.Rules.ClearanceTo(of.Kind)),
            .. of.Facts.Select(f => properties.Text(f.Key, f.Value)),
        ]);
    }

    private StepRef Element(SceneItem item, string entity, string? kind, StepRef? shape, string type, params object?[] rest) =>
        model.Root(entity, item.Key, [IfcModel.Label(item.Name), null, kind, places.AtOrigin(), shape, null, new StepEnum(type), .. rest]);
}
