using SheetGen.Exchange.Common;
using SheetGen.Model.Geometry;

namespace SheetGen.Exchange.Ifc;

/// <summary>What all parts of an IFC file share: the lines, the ids, the frame, and the entities that occur everywhere.</summary>
internal sealed class IfcModel(ExchangeInput input)
{
    private const int MostLabel = 255;

    public ExchangeInput Input { get; } = input;

    public StepFile Step { get; } = new();

    public StableId Ids { get; } = new(input.Project);

    public PlanFrame Frame { get; } = new(input.Project);

    /// <summary>An entity with an id of its own; the id comes first, then no owner history.</summary>
    public StepRef Root(string entity, string key, params object?[] rest) => Step.Add(entity, [Ids.Ifc(key), null, .. rest]);

    /// <summary>A text for a label or an identifier, which hold no more than 255 signs.</summary>
    public static string? Label(string? text) => string.IsNullOrEmpty(text) ? null : text.Length <= MostLabel ? text : text[..(MostLabel - 3)] + "...";

    /// <summary>A point of the project as x east, y north, z up.</summary>
    public StepRef Point(Vector3D at) => Step.Value("IFCCARTESIANPOINT", (object)new[] { at.E, at.N, at.Z });

    public StepRef Point(Vector2D at) => Step.Value("IFCCARTESIANPOINT", (object)new[] { at.E, at.N });

    public StepRef Direction(Vector3D along) => Step.Value("IFCDIRECTION", (object)new[] { along.E, along.N, along.Z });

    public StepRef Direction(Vector2D along) => Step.Value("IFCDIRECTION", (object)new[] { along.E, along.N });

    /// <summary>The frame at a place: axis and reference direction are left out where they are those of the parent.</summary>
    public StepRef Axes(Vector3D at, Vector3D? axis = null, Vector3D? reference = null) => Step.Value(
        "IFCAXIS2PLACEMENT3D", Point(at), axis is { } z ? Direction(z) : null, reference is { } x ? Direction(x) : null);

    /// <summary>A frame whose z runs along a unit direction, x level where it can be.</summary>
    public StepRef AxesAlong(Vector3D at, Vector3D along) => Axes(at, along, LevelSquare(along));

    public StepRef Placement(StepRef? within, StepRef axes) => Step.Add("IFCLOCALPLACEMENT", within, axes);

    public void Aggregate(string key, StepRef whole, IReadOnlyCollection<StepRef> parts) => Relate("IFCRELAGGREGATES", "aggregates|" + key, whole, parts);

    public void Nest(string key, StepRef whole, IReadOnlyCollection<StepRef> parts) => Relate("IFCRELNESTS", "nests|" + key, whole, parts);

    public void Contain(string key, StepRef place, IReadOnlyCollection<StepRef> elements)
    {
        if (elements.Count > 0)
            Root("IFCRELCONTAINEDINSPATIALSTRUCTURE", "contains|" + key, null, null, elements, place);
    }

    /// <summary>A level unit vector square to a unit direction; east for an upright one.</summary>
    public static Vector3D LevelSquare(Vector3D along)
    {
        double size = along.Plan.Length;
        return size < 1e-9 ? new Vector3D(0, 1, 0) : (along.Plan.Right * (1 / size)).At(0);
    }

    private void Relate(string entity, string key, StepRef whole, IReadOnlyCollection<StepRef> parts)
    {
        if (parts.Count > 0)
            Root(entity, key, null, null, whole, parts);
    }
}
