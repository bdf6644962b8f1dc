using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Set;

/// <summary>What a sheet, or a part of one, is made of once it is drawn.</summary>
public sealed record SheetContent
{
    public static SheetContent Empty { get; } = new();

    public IReadOnlyList<Viewport> Viewports { get; init; } = [];

    /// <summary>In millimetres of paper.</summary>
    public IReadOnlyList<Primitive> Paper { get; init; } = [];

    /// <summary>In model space.</summary>
    public IReadOnlyList<Primitive> Model { get; init; } = [];

    public IReadOnlyList<BlockDefinition> Blocks { get; init; } = [];

    public IReadOnlyList<Finding> Findings { get; init; } = [];

    public static SheetContent Of(IEnumerable<Primitive> paper) => new() { Paper = [.. paper] };

    public static SheetContent Together(IReadOnlyList<SheetContent> parts) => new()
    {
        Viewports = [.. parts.SelectMany(p => p.Viewports)],
        Paper = [.. parts.SelectMany(p => p.Paper)],
        Model = [.. parts.SelectMany(p => p.Model)],
        Blocks = [.. parts.SelectMany(p => p.Blocks)],
        Findings = [.. parts.SelectMany(p => p.Findings)],
    };
}
