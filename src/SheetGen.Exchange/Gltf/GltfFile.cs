using System.Text.Json.Nodes;
using SharpGLTF.Schema2;
using SheetGen.Exchange.Common;
using SheetGen.Exchange.Ifc;
using SheetGen.Exchange.Scene;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Exchange.Gltf;

/// <summary>
/// nails.glb: the whole layout as binary glTF 2.0 in metres: x east, y up, z south, from the project's origin and the lowest bottom of the walls, so
/// that single precision loses nothing. Nodes are named by marks and names; their extras have the figures.
/// </summary>
internal static class GltfFile
{
    public const string FileName = "nails.glb";

    public static byte[] Make(ExchangeInput input)
    {
        var model = ModelRoot.CreateModel();
        model.Asset.Generator = "SheetGen " + input.Run.Version;
        SharpGLTF.Schema2.Scene view = model.UseScene(0);
        model.DefaultScene = view;
        Node root = view.CreateNode(input.Project.Info.Title);
        double low = input.Project.Walls.Min(w => w.Bottom.Points.Min(p => p.Elevation)), metres = Lengths.MetresPer(input.Project.Unit);
        root.Extras = new JsonObject
        {
            ["origin_northing"] = input.Project.Origin.N,
            ["origin_easting"] = input.Project.Origin.E,
            ["origin_elevation"] = low,
            ["units_of_origin"] = Lengths.Symbol(input.Project.Unit),
            ["metres_per_unit"] = metres,
            ["axes"] = "x east, y up, z south, metres",
        };
        var shapes = new GltfShapes(model, low, metres);
        IReadOnlyList<SceneItem> scene = SceneBuilder.Build(input);
        Group(root, "Bars", shapes, scene.OfType<SceneItem.Bar>(), b => Drill(b.Nail) ? IfcColour.Bar : IfcColour.BarUnresolved, b => Figures(input, b.Nail));
        Group(root, "Holes", shapes, scene.OfType<SceneItem.Hole>(), h => Drill(h.Nail) ? IfcColour.Hole : IfcColour.HoleUnresolved, h => Figures(input, h.Nail));
        Group(root, "Shotcrete", shapes, scene.OfType<SceneItem.Shotcrete>(), _ => IfcColour.Shotcrete, _ => null);
        Group(root, "Facing", shapes, scene.Where(i => i is SceneItem.PermanentFacing or SceneItem.FacingPanel), _ => IfcColour.Facing, _ => null);
        Group(root, "Obstructions", shapes, scene.OfType<SceneItem.Obstacle>(),
            o => o.Obstruction.Kind == ObstructionKind.Boundary ? IfcColour.Boundary : IfcColour.Obstruction, o => new JsonObject { ["kind"] = o.Obstruction.Kind.ToString() });
        return model.WriteGLB().ToArray();
    }

    private static bool Drill(Nail nail) => nail.Status != NailStatus.Unresolved;

    private static void Group<T>(Node root, string name, GltfShapes shapes, IEnumerable<T> items, Func<T, IfcColour> colour, Func<T, JsonObject?> figures)
        where T : SceneItem
    {
        Node? group = null;
        foreach (T item in items.Where(i => i.Bodies.Count > 0))
        {
            group ??= root.CreateNode(name);
            Node node = shapes.Add(group, item.Name, item.Bodies, colour(item));
            if (figures(item) is { } extras)
                node.Extras = extras;
        }
    }

    private static JsonObject Figures(ExchangeInput input, Nail nail) => new()
    {
        ["mark"] = nail.Mark,
        ["wall"] = nail.Wall.Name,
        ["section"] = nail.Section.Name,
        ["status"] = ResultWords.Of(nail.Status),
        ["kind"] = ResultWords.Of(nail.Kind),
        ["station"] = NailFigures.StationText(nail, input.Project.Unit),
        ["elevation"] = FiniteNumber.Of(nail.Elevation),
        ["length"] = FiniteNumber.Of(nail.Length),
        ["azimuth_deg"] = FiniteNumber.Of(NailFigures.Azimuth(nail)),
        ["inclination_deg"] = FiniteNumber.Of(nail.Inclination),
        ["remark"] = NailFigures.Remark(nail),
    };
}
