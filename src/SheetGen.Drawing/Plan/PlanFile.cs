using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Plan;

/// <summary>The plan as a drawing of its own, north up at true coordinates.</summary>
/// <param name="Lines">Lines, words and dimensions, in project units.</param>
public sealed record PlanFile(IReadOnlyList<Primitive> Lines, IReadOnlyList<Finding> Findings)
{
    /// <summary>Room about the plan for words, mm of paper.</summary>
    private const double Margin = 80;

    /// <param name="scale">At which words and dimensions have the size that they have on sheets.</param>
    public static PlanFile Draw(DrawingContext context, SheetScale scale)
    {
        var plan = new PlanModel(context, new(context.Project.Origin.E, context.Project.Origin.N));
        // The file has no blocks: each nail's line carries its mark, so that an edited plan can be read back.
        Primitive[] lines = [.. plan.Draw().Select(p => p.Nail is { } mark ? p with { Data = [mark] } : p)];
        Box extent = Box.Around(lines.SelectMany(Extents.Points));
        double units = scale.UnitsPerMillimetre;
        var frame = new Box(0, 0, extent.Width / units + 2 * Margin, extent.Height / units + 2 * Margin);
        var viewport = new Viewport(frame, extent.Center, units);
        PlaneTransform toPaper = viewport.ToPaper;
        var labels = new ViewLabels(context, viewport, frame, "plan.dxf", null);
        var writer = new PlanLabels(context, labels, p => toPaper.Apply(plan.At(p)));
        writer.Crowd(lines.Select(toPaper.Apply));
        var named = new HashSet<Obstruction>(ReferenceEqualityComparer.Instance);
        (PlanDimensions Dimensions, NailLimit[] Limits, IReadOnlyList<NailLimit> InWords)[] walls = [.. context.Project.Walls.Select(wall =>
        {
            var dimensions = new PlanDimensions(
                context, new SheetWindow(wall, wall.Start, wall.End, false, false), labels, labels, p => toPaper.Apply(plan.At(p)), scale.PlanDimensionStyle, _ => true);
            dimensions.Offset();
            named.UnionWith(dimensions.Boundaries());
            NailLimit[] limits = [.. plan.NailLimits(wall)];
            return (dimensions, limits, dimensions.Limits(limits));
        })];
        foreach (Wall wall in context.Project.Walls)
            writer.Stations(wall, plan);
        foreach (LayoutLine line in context.Project.LayoutLines)
            writer.Alignment(line);
        writer.Boundaries(named);
        writer.Obstructions(null);
        foreach ((PlanDimensions dimensions, NailLimit[] limits, IReadOnlyList<NailLimit> inWords) in walls)
            dimensions.NameLimits(limits, inWords);
        double pitch = context.StyleOf(TextRole.Label).Height * TextMeasure.LinePitch;
        string[] notes = [.. labels.Notes.Select((n, i) => FormattableString.Invariant($"({i + 1}) {n}")), .. labels.Told];
        for (int i = 0; i < notes.Length; i++)
            labels.Add(context.Write(LayerRole.Note, TextRole.Label, new(frame.Left, frame.Bottom - (i + 1) * pitch), notes[i]));
        return new([.. lines, .. labels.InModel()], labels.Findings);
    }
}
