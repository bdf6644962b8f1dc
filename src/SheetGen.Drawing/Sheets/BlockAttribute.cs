using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Sheets;

/// <summary>A place in a block for a text of each reference.</summary>
/// <param name="Visible">False for a value that is carried but not shown.</param>
public sealed record BlockAttribute(
    string Tag, string Prompt, Point2 Position, double Height, bool Visible, TextRole Role, LayerRole Layer)
{
    public HorizontalAlign Align { get; init; }

    /// <summary>Degrees counter-clockwise.</summary>
    public double Rotation { get; init; }

    /// <summary>The value where a reference gives none.</summary>
    public string Default { get; init; } = "";
}
