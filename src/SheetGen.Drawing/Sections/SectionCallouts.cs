using SheetGen.Drawing.Details;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;

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
            .Where(d => Anchors(view, d.Detail) is var (at, toward) && Bubble.TryPoint(context, labels, at.Select(labels.Viewport.ToPaper.Apply), toward, d.Name, d.Sheet))];

    /// <summary>The details in words, sheet by sheet; empty where there are none.</summary>
    public static string Words(DrawingContext context, IEnumerable<DetailPlace> details)
    {
        string[] sheets = [.. details.GroupBy(d => d.Sheet).Select(g => context.Say(Phrase.DetailsOnSheet, string.Join(", ", g.Select(d => d.Name)), g.Key))];
        return sheets.Length == 0 ? "" : context.Say(Phrase.SeeDetails, string.Join("; ", sheets), Printed.Number(details.Count(), 0));
    }

    /// <summary>Where a section shows what a detail draws, with the direction in which its bubble stands best; null where it does not.</summary>
    private static (IEnumerable<Point2> At, double Toward)? Anchors(SectionView view, DetailView detail)
    {
        const double Front = Math.PI, Down = -Math.PI / 2;
        SectionFacing build = view.Build;
        double[] between = [.. build.BetweenRows()];
        return detail.Kind switch
        {
            DetailKind.Head when view.Nails.Count > 0 => (view.Nails.Select(view.HeadOf), Front - 0.7),
            DetailKind.Hole when view.Nails.Count > 0 => (view.Nails.Reverse().Select(n => (view.HeadOf(n) + view.TipOf(n)) * 0.5), Down),
            DetailKind.Facing => (between.Select(z => view.At(build.FrontAt(z), z)), Front),
            DetailKind.Top when build.HasFacing => ([build.CopingAt], Front - 0.7),
            DetailKind.Foot or DetailKind.Outlet => ([view.At(build.Back(view.Bottom), view.Bottom), view.At(build.FrontAt(view.Bottom), view.Bottom)], Down),
            DetailKind.Lap => (between.Select(z => view.At(build.Back(z), z)), 0),
            DetailKind.Joint when view.Lifts().Any() => (
                build.HasFacing ? view.Lifts().Select(l => view.At(build.Back(l.Level), l.Level)) : view.Lifts().Select(l => view.At(view.Face.OffsetAt(l.Level), l.Level)), build.HasFacing ? 0 : Front),
            DetailKind.Opening when view.Openings.FirstOrDefault(detail.Subjects.Contains) is { } opening => (new[] { opening.Top, opening.Bottom }.Select(z => view.At(build.FrontAt(z), z)), Front),
            _ => null,
        };
    }
}
