using SheetGen.Dxf;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>How an edited drawing lies over the one that was written: scaled alike in both directions, turned about the origin, then moved.</summary>
/// <param name="Scale">Above 0.</param>
/// <param name="Turn">Degrees, counter-clockwise.</param>
internal readonly record struct DrawingPlace(double Scale, double Turn, DxfPoint Shift)
{
    public static DrawingPlace Same { get; } = new(1, 0, default);

    /// <summary>A point of the edited drawing as it would stand on the one that was written.</summary>
    public DxfPoint Back(DxfPoint drawn) => ((drawn - Shift) * (1 / Scale)).Rotated(-Turn);

    /// <summary>Where a point of the drawing that was written comes to lie, but for the shift.</summary>
    public DxfPoint Unmoved(DxfPoint was) => was.Rotated(Turn) * Scale;

    /// <summary>What of it a person should know, a sentence each.</summary>
    public IEnumerable<string> Notes()
    {
        if (Scale != 1)
            yield return FormattableString.Invariant($"the drawing is scaled by {Scale:0.######}; it was read in the project's unit");
        if (Turn != 0)
            yield return FormattableString.Invariant($"the drawing is turned by {Turn:0.####} degrees; it was read as it was");
        if (Shift.Length > 0)
            yield return PlainNumber.Text($"the drawing is moved by {Shift.X:0.###}, {Shift.Y:0.###}; it was read where it was");
    }
}
