using SheetGen.Model.Units;

namespace SheetGen.Drawing.Review;

/// <summary>The paper of a report, mm.</summary>
public readonly record struct ReviewPaper(string Name, double Width, double Height)
{
    /// <summary>Small sheets that stand upright, for a binder in the field: letter, or A4 in metres.</summary>
    public static ReviewPaper Upright(LengthUnit unit) => Lengths.IsFoot(unit) ? new("ANSI A", 215.9, 279.4) : new("ISO A4", 210, 297);

    /// <summary>Sheets that lie down, for elevations: 11 x 17 in, or A3 in metres.</summary>
    public static ReviewPaper Lying(LengthUnit unit) => Lengths.IsFoot(unit) ? new("ANSI B", 431.8, 279.4) : new("ISO A3", 420, 297);
}
