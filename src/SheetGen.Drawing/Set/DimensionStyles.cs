using SheetGen.Drawing.Details;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>The dimension styles that a set needs: for its dimensions, and for the arrowheads of its leaders.</summary>
internal static class DimensionStyles
{
    /// <param name="lines">All of model space, and of the plan that is a file of its own.</param>
    /// <param name="sections">Scales of the elevation and the sections, whose styles are always there.</param>
    /// <param name="plans">Scales of plans; one that the user gives need not be a customary one.</param>
    public static IReadOnlyList<DimensionStyle> Of(DrawingContext context, IReadOnlyList<Primitive> lines, IEnumerable<SheetScale> sections, IEnumerable<SheetScale> plans)
    {
        HashSet<string> named = [.. lines.OfType<Dimension>().Select(d => d.Style)];
        SheetScale[] flat = [.. SheetScale.Customary(context.Templates, context.Project.Unit).Concat(plans).Distinct()];
        SheetScale[] upright = [.. SheetScale.OfSections(context.Templates, context.Project.Unit).Concat(flat).Distinct()];
        DimensionStyle[] details = [.. DetailScale.Styles(context)];
        DimensionStyle[] used =
        [
            .. sections.Concat(upright.Where(s => named.Contains(s.DimensionStyle))).Distinct().Select(s => Of(s, context)),
            .. flat.Where(s => named.Contains(s.PlanDimensionStyle)).Select(s => Of(s, context) with { Name = s.PlanDimensionStyle, HasArrows = true }),
            .. details.Where(s => named.Contains(s.Name)),
        ];
        // A view may have leaders and no dimension.
        IEnumerable<DimensionStyle> forLeaders = lines.OfType<Leader>().Where(l => l.Arrow > 0).Select(l => l.Arrow / Leader.PaperArrow).Distinct()
            .Where(a => !used.Any(s => IsOf(s, a))).SelectMany(a => upright.Select(s => Of(s, context)).Concat(details).Where(s => IsOf(s, a)).Take(1));
        return [.. used.Concat(forLeaders).DistinctBy(s => s.Name), Of(new(1, context.Project.Unit), context) with { Name = "DIM-PAPER", Scale = 1, IsPaper = true }];
    }

    private static bool IsOf(DimensionStyle style, double scale) => Math.Abs(style.Scale / scale - 1) < 1e-6;

    private static DimensionStyle Of(SheetScale scale, DrawingContext context) =>
        new(scale.DimensionStyle, scale.UnitsPerMillimetre, context.StyleOf(TextRole.Dimension).Height,
            Lengths.Decimals(context.Project.Unit), NailLabels.DimensionSuffix(context.Project.Unit));
}
