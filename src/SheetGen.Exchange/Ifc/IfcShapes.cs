using SheetGen.Exchange.Scene;
using SheetGen.Model.Geometry;

namespace SheetGen.Exchange.Ifc;

/// <summary>Bodies as IFC geometry, with a colour.</summary>
internal sealed class IfcShapes
{
    private readonly IfcModel _model;
    private readonly StepRef _body;

    public IfcShapes(IfcModel model)
    {
        _model = model;
        StepRef world = model.Axes(default);
        Context = model.Step.Add("IFCGEOMETRICREPRESENTATIONCONTEXT", null, "Model", 3, 1e-6, world, null);
        _body = Sub("Body", "MODEL_VIEW");
        Axis = Sub("Axis", "GRAPH_VIEW");
    }

    public StepRef Context { get; }

    /// <summary>The context of alignments' curves.</summary>
    public StepRef Axis { get; }

    /// <summary>A shape in the placement of the project's origin; null where there is nothing to show.</summary>
    public StepRef? Of(IReadOnlyList<Body> bodies, IfcColour colour)
    {
        if (bodies.Count == 0)
            return null;
        bool meshes = bodies.All(b => b is Mesh), closed = bodies.OfType<Mesh>().All(m => m.Closed);
        string type = meshes ? "Tessellation" : bodies.All(b => b is Cylinder) ? "SweptSolid" : bodies.All(b => b is Tube) ? "AdvancedSweptSolid" : "SolidModel";
        if (!meshes && !closed)
            throw new InvalidOperationException("a surface and a solid in one shape");
        return Shape(type, [.. bodies.Select(b => Styled(Item(b), colour))]);
    }

    /// <summary>A cylinder along z of its own placement.</summary>
    public StepRef Upright(double from, double depth, double radius, IfcColour colour) =>
        Shape("SweptSolid", [Styled(Extruded(_model.Axes(new Vector3D(0, 0, from)), depth, radius), colour)]);

    private StepRef Shape(string type, StepRef[] items) => _model.Step.Add("IFCPRODUCTDEFINITIONSHAPE", null, null, (object)new[]
    {
        _model.Step.Add("IFCSHAPEREPRESENTATION", _body, "Body", type, items),
    });

    private StepRef Item(Body body) => body switch
    {
        Cylinder c => Extruded(_model.AxesAlong(c.Start, (c.End - c.Start) * (1 / (c.End - c.Start).Length)), (c.End - c.Start).Length, c.Radius),
        Tube t => _model.Step.Add("IFCSWEPTDISKSOLID", _model.Step.Add("IFCPOLYLINE", (object)t.Points.Select(p => _model.Point(p)).ToArray()), t.Radius, null, null, null),
        Mesh m => _model.Step.Add("IFCTRIANGULATEDFACESET",
            _model.Step.Add("IFCCARTESIANPOINTLIST3D", m.Points.Select(p => new[] { p.E, p.N, p.Z }).ToArray(), null), null, m.Closed,
            m.Triangles.Select(t => new[] { t.A + 1, t.B + 1, t.C + 1 }).ToArray(), null),
        _ => throw new ArgumentException("unknown body", nameof(body)),
    };

    private StepRef Extruded(StepRef axes, double depth, double radius) => _model.Step.Add("IFCEXTRUDEDAREASOLID",
        _model.Step.Value("IFCCIRCLEPROFILEDEF", new StepEnum("AREA"), null, null, radius), axes, _model.Direction(new Vector3D(0, 0, 1)), depth);

    private StepRef Styled(StepRef item, IfcColour colour)
    {
        StepRef rgb = _model.Step.Value("IFCCOLOURRGB", null, colour.Red, colour.Green, colour.Blue);
        StepRef shading = _model.Step.Value("IFCSURFACESTYLESHADING", rgb, colour.Transparency);
        StepRef style = _model.Step.Value("IFCSURFACESTYLE", colour.Name, new StepEnum("BOTH"), (object)new[] { shading });
        _model.Step.Add("IFCSTYLEDITEM", item, new[] { style }, null);
        return item;
    }

    private StepRef Sub(string name, string view) => _model.Step.Add("IFCGEOMETRICREPRESENTATIONSUBCONTEXT",
        name, "Model", StepFile.Derived, StepFile.Derived, StepFile.Derived, StepFile.Derived, Context, null, new StepEnum(view), null);
}

/// <summary>A colour of the model; parts from 0 to 1.</summary>
internal sealed record IfcColour(string Name, double Red, double Green, double Blue, double Transparency)
{
    public static IfcColour Bar { get; } = new("bar", 0.25, 0.27, 0.3, 0);

    public static IfcColour BarUnresolved { get; } = new("bar, do not drill", 0.85, 0.1, 0.1, 0);

    public static IfcColour Hole { get; } = new("grouted hole", 0.55, 0.65, 0.75, 0.4);

    public static IfcColour HoleUnresolved { get; } = new("hole, do not drill", 0.9, 0.3, 0.25, 0.4);

    public static IfcColour Shotcrete { get; } = new("shotcrete", 0.72, 0.7, 0.66, 0.35);

    public static IfcColour Facing { get; } = new("facing", 0.85, 0.82, 0.75, 0.35);

    public static IfcColour Obstruction { get; } = new("obstruction", 0.9, 0.6, 0.2, 0.2);

    public static IfcColour Boundary { get; } = new("boundary", 0.6, 0.2, 0.6, 0.75);
}
