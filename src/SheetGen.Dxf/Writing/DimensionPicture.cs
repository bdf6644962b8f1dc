namespace SheetGen.Dxf;

/// <summary>What a dimension looks like: the content of its block.</summary>
/// <param name="Entities">Lines, arrowheads, text and the measured points.</param>
/// <param name="TextMiddle">The middle of the text.</param>
internal sealed record DimensionPicture(IReadOnlyList<DxfEntity> Entities, DxfPoint TextMiddle)
{
    /// <summary>Width of a letter over its height, for the break in the dimension line.</summary>
    private const double LetterWidth = 0.75;

    internal static DimensionPicture Of(DxfDimension dimension, DxfDocument document)
    {
        var style = document.DimStyles[dimension.Style];
        var layer = dimension.Layer;
        var angle = dimension.Kind == DxfDimensionKind.Rotated ? dimension.Angle : Direction(dimension.To - dimension.From);
        var start = Project(dimension.From, dimension.LinePoint, angle);
        var end = Project(dimension.To, dimension.LinePoint, angle);
        if ((end - start).Rotated(-angle).X < 0)
            angle += 180;

        var reading = Readable(angle);
        var measured = DimensionText.Of(dimension.Measurement, style);
        var text = dimension.Words?.Replace("<>", measured, StringComparison.Ordinal) ?? measured;
        var lift = style.TextAbove ? ((style.TextHeight / 2) + style.TextGap) * style.Scale : 0;
        var usual = ((start + end) * 0.5) + new DxfPoint(0, lift).Rotated(reading);
        var middle = dimension.TextPoint ?? usual;

        var entities = new List<DxfEntity>();
        Extension(entities, layer, dimension.From, start, style);
        Extension(entities, layer, dimension.To, end, style);
        var breakLength = style.TextAbove || dimension.TextPoint is not null
            ? 0
            : ((text.Length * style.TextHeight * LetterWidth) + (2 * style.TextGap)) * style.Scale;
        DimensionLine(entities, layer, start, end, breakLength);
        Ends(entities, layer, start, end, angle, style);
        entities.Add(new DxfMText(layer, middle, style.TextHeight * style.Scale, text)
        {
            Attachment = DxfAttachment.MiddleCenter,
            Rotation = reading,
            Style = style.TextStyle,
        });
        foreach (var point in new[] { dimension.From, dimension.To, dimension.LinePoint })
            entities.Add(new DxfPointEntity("Defpoints", point));
        return new(entities, middle);
    }

    private static double Direction(DxfPoint vector) => Math.Atan2(vector.Y, vector.X) * 180 / Math.PI;

    private static DxfPoint Project(DxfPoint point, DxfPoint onLine, double angle) =>
        onLine + new DxfPoint((point - onLine).Rotated(-angle).X, 0).Rotated(angle);

    /// <summary>The same direction or its opposite, whichever reads from below or from the right.</summary>
    private static double Readable(double angle)
    {
        var turned = Math.IEEERemainder(angle, 360);
        return turned > 90.0001 ? turned - 180 : turned <= -89.9999 ? turned + 180 : turned;
    }

    private static void Extension(List<DxfEntity> entities, string layer, DxfPoint from, DxfPoint to, DxfDimStyle style)
    {
        var way = to - from;
        var length = way.Length;
        var gap = style.ExtensionOffset * style.Scale;
        if (length <= gap)
            return;
        var unit = way * (1 / length);
        entities.Add(new DxfLine(layer, from + (unit * gap), to + (unit * (style.ExtensionBeyond * style.Scale))));
    }

    private static void DimensionLine(List<DxfEntity> entities, string layer, DxfPoint start, DxfPoint end, double breakLength)
    {
        var way = end - start;
        var length = way.Length;
        if (breakLength == 0)
        {
            entities.Add(new DxfLine(layer, start, end));
        }
        else if (length > breakLength)
        {
            var piece = way * ((length - breakLength) / 2 / length);
            entities.Add(new DxfLine(layer, start, start + piece));
            entities.Add(new DxfLine(layer, end - piece, end));
        }
    }

    private static void Ends(List<DxfEntity> entities, string layer, DxfPoint start, DxfPoint end, double angle, DxfDimStyle style)
    {
        if (style.TickSize > 0)
        {
            var stroke = new DxfPoint(style.TickSize, style.TickSize).Rotated(angle) * style.Scale;
            entities.Add(new DxfLine(layer, start - stroke, start + stroke));
            entities.Add(new DxfLine(layer, end - stroke, end + stroke));
            return;
        }
        var size = style.ArrowSize * style.Scale;
        if (size <= 0)
            return;
        // Too short for two arrowheads: they point inwards from outside, each on a tail.
        var outside = (end - start).Length < 2.5 * size;
        var inward = new DxfPoint(outside ? -size : size, 0).Rotated(angle);
        Arrow(entities, layer, start, inward);
        Arrow(entities, layer, end, inward * -1);
        if (!outside)
            return;
        entities.Add(new DxfLine(layer, start, start + (inward * 2)));
        entities.Add(new DxfLine(layer, end, end - (inward * 2)));
    }

    private static void Arrow(List<DxfEntity> entities, string layer, DxfPoint tip, DxfPoint inward)
    {
        var half = inward.Rotated(90) * (1.0 / 6);
        var back = tip + inward;
        entities.Add(new DxfSolid(layer, back + half, back - half, tip, tip));
    }
}
