using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Revisions;

/// <summary>The pins under which the next build keeps what was changed by hand.</summary>
public static class EditedPins
{
    /// <summary>The project's pins, those of changed and removed nails replaced.</summary>
    /// <param name="before">The layout that was edited.</param>
    /// <returns>All pins, and the marks of changed nails that cannot be pinned: verification test nails.</returns>
    public static (IReadOnlyList<FixedNail> Pins, IReadOnlyList<string> NotPinned) Of(WallProject project, NailLayout before, EditedLayout edited)
    {
        List<FixedNail> pins = [.. Untouched(project, [.. before.Nails.Where(n => edited.Changed.Contains(n.Mark)), .. edited.Removed])];
        Nail[] changed = [.. edited.Layout.Nails.Where(n => edited.Changed.Contains(n.Mark))];
        pins.AddRange(changed.Where(n => n.Kind != NailKind.Verification).Select(Kept));
        pins.AddRange(edited.Removed.Where(n => n is { Kind: not NailKind.Verification, IsAdded: false }).Select(LeftOut));
        return (pins, [.. changed.Concat(edited.Removed).Where(n => n.Kind == NailKind.Verification).Select(n => n.Mark)]);
    }

    /// <summary>The project's pins but those that hold one of these nails where it stood.</summary>
    internal static IEnumerable<FixedNail> Untouched(WallProject project, IEnumerable<Nail> touched)
    {
        Nail[] all = [.. touched];
        return project.FixedNails.Where(pin => pin.Along is not double along || pin.Kind == FixedKind.LeftOut
            || !Array.Exists(all, n => n.Wall.Name == pin.Wall && Math.Abs(n.Along - along) < Tolerance.SameLength && IsRow(pin, n)));
    }

    /// <summary>Nails of the edited layout that another layout does not have alike, for pins that keep them.</summary>
    public static IReadOnlyList<FixedNail> Missing(EditedLayout edited, NailLayout built)
    {
        HashSet<(string, string, string, double, double, double, double, double)> there = [.. built.Nails.Select(Figures)];
        return [.. edited.Layout.Nails.Where(n => n.Kind != NailKind.Verification && !there.Contains(Figures(n))).Select(Kept)];
    }

    /// <summary>Marks of nails that one of two layouts has and the other has not alike.</summary>
    public static IReadOnlyList<string> Unlike(NailLayout one, NailLayout other)
    {
        HashSet<(string, string, string, double, double, double, double, double)> a = [.. one.Nails.Select(Figures)], b = [.. other.Nails.Select(Figures)];
        return [.. one.Nails.Where(n => !b.Contains(Figures(n))).Concat(other.Nails.Where(n => !a.Contains(Figures(n)))).Select(n => n.Mark).Distinct()];
    }

    private static (string, string, string, double, double, double, double, double) Figures(Nail n) =>
        (n.Wall.Name, n.Mark, n.Row.ToString(), Math.Round(n.Station, RevisionTolerance.FigureDecimals), Math.Round(n.Elevation, RevisionTolerance.FigureDecimals), n.Splay, n.Inclination, n.Length);

    private static bool IsRow(FixedNail pin, Nail nail) => pin.Row == nail.Row.ToString() || pin.Row == nail.Row.Name;

    internal static FixedNail Kept(Nail n) =>
        new(n.Wall.Name, n.Section.Name, n.Row.ToString(), n.Along, n.Splay, n.Inclination, n.Length, default(SourceSpot))
        {
            Elevation = n.Elevation,
            GridAlong = n.IsAdded ? null : n.Wall.LayoutLine.AlongOf(n.GridStation),
            Kind = n.IsAdded ? FixedKind.Added : FixedKind.Nail,
        };

    private static FixedNail LeftOut(Nail n) =>
        new(n.Wall.Name, n.Section.Name, n.Row.ToString(), n.Wall.LayoutLine.AlongOf(n.GridStation), null, null, null, default(SourceSpot)) { Kind = FixedKind.LeftOut };
}
