using SheetGen.Drawing.Details;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Sections;

/// <summary>The details to which a section refers: where the wall is highest each in a bubble at what it shows, else in words.</summary>
internal static class SectionCallouts
{
    /// <summary>Kinds that no cross section shows.</summary>
    private static bool IsShown(DetailKind kind) => kind is not (DetailKind.End or DetailKind.Bore or DetailKind.Test or DetailKind.Strips or DetailKind.Corner);

    /// <summary>The details of what a section shows.</summary>
    public static IEnumerable<DetailPlace> Of(SectionView view, SheetRefs refs)
    {
        object[] shown = [view.Wall, view.Cut.Section, .. view.Openings];
        return refs.Details.Where(d => IsShown(d.Detail.Kind) && d.Detail.Subjects.Any(shown.Contains));
    }

    /// <summary>Writes the bubbles that have room, after all other words.</summary>
    /// <returns>The details that have one.</returns>
    public static IReadOnlyList<DetailPlace> Write(DrawingContext context, SectionView view, ViewLabels labels, SheetRefs refs) =>
        [.. Of(view, refs).Where(d => view.Cut.IsHighest || d.Detail.Kind == DetailKind.Opening)
            .Where(d => Anchor(view, d.Detail) is var (at, toward) && Bubble.TryPoint(context, labels, labels.Viewport.ToPaper.Apply(at), toward, d.Name, d.Sheet))];

    /// <summary>The details in words, sheet by sheet; empty where there are none.</summary>
    public static string Words(DrawingContext context, IEnumerable<DetailPlace> details)
    {
        string[] sheets = [.. details.GroupBy(d => d.Sheet).Select(g => context.Say(Phrase.DetailsOnSheet, string.Join(", ", g.Select(d => d.Name)), g.Key))];
        return sheets.Length == 0 ? "" : context.Say(Phrase.SeeDetails, string.Join("; ", sheets));
    }

    /// <summary>Where a section shows what a detail draws, with the direction in which its bubble stands best; null where it does not.</summary>
    private static (Point2 At, double Toward)? Anchor(SectionView view, DetailView detail)
    {
        const double Front = Math.PI, Down = -Math.PI / 2;
        SectionFacing build = view.Build;
        double middle = (view.Top + view.Bottom) / 2;
        (double offset, double z, double toward) = (0.0, 0.0, 0.0);
        switch (detail.Kind)
        {
            case DetailKind.Head when view.Nails.Count > 0:
                Nail head = view.Nails[0];
                return (view.HeadOf(head), Front - 0.7);
            case DetailKind.Hole when view.Nails.Count > 0:
                Nail lowest = view.Nails[^1];
                return ((view.HeadOf(lowest) + view.TipOf(lowest)) * 0.5, Down);
            case DetailKind.Facing:
                (offset, z, toward) = (build.FrontAt(middle), middle, Front);
                break;
            case DetailKind.Top when build.HasFacing:
                return (build.CopingAt, Front - 0.7);
            case DetailKind.Foot or DetailKind.Outlet:
                (offset, z, toward) = (build.Back(view.Bottom), view.Bottom, Down);
                break;
            case DetailKind.Lap:
                z = view.Bottom + 0.3 * (view.Top - view.Bottom);
                (offset, toward) = (build.Back(z), 0);
                break;
            case DetailKind.Joint when view.Lifts().Any():
                z = view.Lifts().First().Level;
                (offset, toward) = (view.Face.OffsetAt(z), Front);
                break;
            case DetailKind.Opening when view.Openings.FirstOrDefault(detail.Subjects.Contains) is { } opening:
                z = (opening.Bottom + opening.Top) / 2;
                (offset, toward) = (build.FrontAt(z), Front);
                break;
            default:
                return null;
        }
        return (view.At(offset, z), toward);
    }
}
