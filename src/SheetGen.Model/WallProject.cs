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
