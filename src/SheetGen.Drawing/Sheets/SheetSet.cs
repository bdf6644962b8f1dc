using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sheets;

/// <summary>The whole drawing as plain data: model space in project units, sheets in millimetres of paper.</summary>
public sealed record SheetSet
{
    public required LengthUnit Unit { get; init; }

    public required string Title { get; init; }

    public required string Number { get; init; }

    public required string Date { get; init; }

    public required string InputHash { get; init; }

    public required string Version { get; init; }

    public required DrawingTemplates Templates { get; init; }

    public required IReadOnlyList<BlockDefinition> Blocks { get; init; }

    public required IReadOnlyList<DimensionStyle> DimensionStyles { get; init; }

    /// <summary>Elevation strips, plan and sections at full size.</summary>
    public required IReadOnlyList<Primitive> Model { get; init; }

    public required IReadOnlyList<Sheet> Sheets { get; init; }

    /// <summary>The plan at true coordinates (x easting, y northing), for a file of its own.</summary>
    public required IReadOnlyList<Primitive> Plan { get; init; }

    /// <summary>What could not be placed, as findings of code <c>sheet</c>.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    public LayerDefinition LayerOf(LayerRole role) => Templates.Layers[role];
}
