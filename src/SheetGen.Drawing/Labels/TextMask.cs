using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Labels;

/// <summary>The ground that a text stands on: it hides what was drawn before it.</summary>
/// <param name="Corners">Four, counter-clockwise from the lower left as one reads.</param>
public sealed record TextMask(LayerRole Layer, IReadOnlyList<Point2> Corners) : Primitive(Layer)
{
    /// <summary>Room above and below the letters as a share of their height: capitals end at it, so that a line just above them stays whole.</summary>
    private const double Above = 0.03, Below = 0.12;

    /// <summary>Room before and behind them: a piece of line between two words nearer than twice that would read as a hyphen.</summary>
    public const double EndRoom = 0.3;

    public static TextMask Of(Text text, TextStyle style)
    {
        double width = TextMeasure.Advance(text.Value, text.Height, style), below = Below * text.Height, above = (1 + Above) * text.Height, end = EndRoom * text.Height;
        double left = text.Align switch
        {
            HorizontalAlign.Left => 0,
            HorizontalAlign.Center => -width / 2,
            _ => -width,
        };
        double turn = text.Rotation * Math.PI / 180;
        Point2[] corners =
        [
            new(left - end, -below), new(left + width + end, -below),
            new(left + width + end, above), new(left - end, above),
        ];
        return new(text.Layer, [.. corners.Select(c => text.Position + c.Turned(turn))]);
    }
}
