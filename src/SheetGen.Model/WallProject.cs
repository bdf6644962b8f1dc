using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Model;

/// <summary>Everything that a project file states, in project units and relative to the project's origin.</summary>
public sealed record WallProject
{
    public required ProjectInfo Info { get; init; }

    public required LengthUnit Unit { get; init; }

    /// <summary>The plan point that all geometry is relative to; added back where coordinates are printed.</summary>
    public required Vector2D Origin { get; init; }

    /// <summary>Zone of the coordinates as the project file words it; null where it says nothing.</summary>
    public string? CoordinateZone => Info.Facts.TryGetValue("coordinate_zone", out string? text) && text.Trim().Length > 0 ? text.Trim() : null;

    /// <summary>
    /// Easting and northing that x and y of models (IFC, BCF, glTF) are counted from: (0, 0) where no zone is named, since they are the project's own
    /// then; with a zone they are counted from the origin, and a map conversion tells where that is.
    /// </summary>
    public Vector2D ModelShift => CoordinateZone is null ? Origin : default;

    public required IReadOnlyList<LayoutLine> LayoutLines { get; init; }

    public required IReadOnlyList<Wall> Walls { get; init; }

    public IReadOnlyList<Obstruction> Obstructions { get; init; } = [];

    public IReadOnlyList<Boring> Borings { get; init; } = [];

    public SheetSettings Sheets { get; init; } = new();

    /// <summary>Name of a pay item set in templates/pay-items, or the path of a file relative to the project file.</summary>
    public string PayItems { get; init; } = "generic";

    public PayLengthFrom PayLengthFrom { get; init; } = PayLengthFrom.Face;

    public required Rules Rules { get; init; }

    public Rates Rates { get; init; } = new();

    public IReadOnlyList<FixedNail> FixedNails { get; init; } = [];

    public IReadOnlyList<Acceptance> Acceptances { get; init; } = [];

    /// <summary>SHA-256 of the project file's bytes, lower-case hex.</summary>
    public string InputHash { get; init; } = "";
}
