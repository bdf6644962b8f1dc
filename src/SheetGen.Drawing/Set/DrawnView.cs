using SheetGen.Drawing.Labels;

namespace SheetGen.Drawing.Set;

/// <summary>A view once it is drawn, with what is said of it below.</summary>
public sealed record DrawnView(SheetContent Content, ViewNotes Notes);

/// <summary>What is said of views in the notes of their sheet.</summary>
/// <param name="Marked">What stands first: callouts by their nail's mark.</param>
/// <param name="Numbered">What a number in the view stands for, in the order of the numbers.</param>
/// <param name="Told">What speaks for itself.</param>
public sealed record ViewNotes(IReadOnlyList<string> Marked, IReadOnlyList<string> Numbered, IReadOnlyList<string> Told)
{
    public static ViewNotes Of(ViewLabels labels) => new(labels.Marked, labels.Notes, labels.Told);

    /// <summary>The notes of two views as they stand on their sheet, one below the other.</summary>
    public static IReadOnlyList<string> Together(IReadOnlyList<ViewNotes> views) =>
    [
        .. views.SelectMany(v => v.Marked), .. views.SelectMany(v => v.Numbered).Select((n, i) => FormattableString.Invariant($"({i + 1}) {n}")), .. views.SelectMany(v => v.Told),
    ];
}
