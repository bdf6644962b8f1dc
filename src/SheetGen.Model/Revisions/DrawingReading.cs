namespace SheetGen.Model.Revisions;

/// <summary>What was read of an edited drawing.</summary>
/// <param name="Nails">The nails that stand on it, in the layout's order, added ones last.</param>
/// <param name="NotRead">What of the nails could not be read, or was read with a doubt, by name; a sentence each.</param>
/// <param name="Notes">How it was read, where that is not as usual: a scale, another state of the project file.</param>
public sealed record DrawingReading(IReadOnlyList<DrawnNail> Nails, IReadOnlyList<string> NotRead, IReadOnlyList<string> Notes)
{
    /// <summary>What else in the drawing could not be read, where nails need not be; a sentence each.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];
}
