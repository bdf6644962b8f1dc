namespace SheetGen.Dxf;

/// <summary>Finds what is wrong with single entities of a document.</summary>
internal sealed class EntityCheck(DxfDocument document)
{
    private const int LongestXText = 255;

    internal static bool IsNumber(double value) => double.IsFinite(value) && Math.Abs(value) < NumberCoding.Greatest;

    internal IEnumerable<string> Of(DxfEntity entity) => OfItem(entity).Concat(Values(entity));

    internal IEnumerable<string> OfViewport(DxfViewport viewport)
    {
        foreach (var message in OfItem(viewport))
            yield return message;
        if (!Numbers(viewport.Center, viewport.ViewCenter) || !IsNumber(viewport.Twist))
            yield return NotANumber;
        if (!Positive(viewport.Width, viewport.Height, viewport.ViewHeight))
            yield return "its sizes must be above 0";
        foreach (var layer in viewport.FrozenLayers.Where(l => !document.Layers.Contains(l)))
            yield return $"frozen layer {layer} is not defined";
    }

    private const string NotANumber = "a coordinate or angle is not a number below 1e15";

    private IEnumerable<string> OfItem(DxfItem item)
    {
        if (!document.Layers.Contains(item.Layer))
            yield return $"layer {item.Layer} is not defined";
        foreach (var data in item.XData)
        {
            if (!document.AppIds.Contains(data.AppId))
                yield return $"application {data.AppId} is not defined";
            foreach (var message in data.Values.SelectMany(OfXValue))
                yield return message;
        }
        if (item.XData.Select(d => d.AppId.ToUpperInvariant()).Distinct().Count() < item.XData.Count)
            yield return "extended data names an application twice";
    }

    private IEnumerable<string> OfXValue(DxfXValue value) => value switch
    {
        DxfXValue.Text text when text.Value.Length > LongestXText => [$"text of extended data is longer than {LongestXText}"],
        DxfXValue.Layer layer when !document.Layers.Contains(layer.Name) => [$"layer {layer.Name} is not defined"],
        DxfXValue.Real real when !IsNumber(real.Value) => [NotANumber],
        DxfXValue.Point point when !Numbers(point.Value) => [NotANumber],
        DxfXValue.List list => list.Values.SelectMany(OfXValue),
        _ => [],
    };

    private IEnumerable<string> Values(DxfEntity entity) => entity switch
    {
        DxfLine line => Require((Numbers(line.Start, line.End), NotANumber)),
        DxfPointEntity point => Require((Numbers(point.Position), NotANumber)),
        DxfPolyline polyline => Outline(polyline.Vertices).Concat(Require((IsNumber(polyline.Width) && polyline.Width >= 0, "the width must be 0 or more"))),
        DxfCircle circle => Require((Numbers(circle.Center), NotANumber), (Positive(circle.Radius), "the radius must be above 0")),
        DxfArc arc => Require(
            (Numbers(arc.Center) && IsNumber(arc.StartAngle) && IsNumber(arc.EndAngle), NotANumber),
            (Positive(arc.Radius), "the radius must be above 0")),
        DxfEllipse ellipse => Require(
            (Numbers(ellipse.Center, ellipse.MajorAxis) && IsNumber(ellipse.StartParameter) && IsNumber(ellipse.EndParameter), NotANumber),
            (Positive(ellipse.MajorAxis.Length), "the longer axis must not be 0"),
            (Positive(ellipse.Ratio) && ellipse.Ratio <= 1, "the ratio must be above 0 and at most 1")),
        DxfSolid solid => Require((Numbers(solid.First, solid.Second, solid.Third, solid.Fourth), NotANumber)),
        DxfWipeout mask => Require(
            (Numbers(mask.Corner, mask.Along, mask.Up), NotANumber),
            (Positive(Math.Abs((mask.Along.X * mask.Up.Y) - (mask.Along.Y * mask.Up.X))), "the sides of the mask must span an area")),
        DxfText text => Text(text),
        DxfMText text => MText(text),
        DxfAttributeDefinition definition => Text(definition.Text).Concat(Tag(definition.Tag)).Concat(OwnXData(definition)),
        DxfInsert insert => Insert(insert),
        DxfHatch hatch => Hatch(hatch),
        DxfDimension dimension => Dimension(dimension),
        DxfLeader leader => Leader(leader),
        _ => [$"{entity.GetType().Name} is not an entity that can be written"],
    };

    private IEnumerable<string> Text(DxfText text) => Require(
        (Numbers(text.Position) && IsNumber(text.Rotation) && IsNumber(text.ObliqueAngle), NotANumber),
        (Positive(text.Height, text.WidthFactor), "height and width factor must be above 0"),
        (document.TextStyles.Contains(text.Style), $"text style {text.Style} is not defined"));

    private IEnumerable<string> MText(DxfMText text) => Require(
        (Numbers(text.Position) && IsNumber(text.Rotation), NotANumber),
        (Positive(text.Height), "the height must be above 0"),
        (IsNumber(text.Width) && text.Width >= 0, "the width must be 0 or more"),
        (text.LineSpacing is >= 0.25 and <= 4, "the line spacing must be 0.25 to 4"),
        (document.TextStyles.Contains(text.Style), $"text style {text.Style} is not defined"));

    private static IEnumerable<string> Tag(string tag) => Require(
        (tag.Length > 0 && !tag.Any(c => char.IsWhiteSpace(c) || char.IsControl(c)), $"'{tag}' is not a tag: it is empty or has spaces"));

    private static IEnumerable<string> OwnXData(DxfAttributeDefinition definition) => Require(
        (definition.Text.XData.Count == 0, "extended data of an attribute definition stands on itself, not on its text"));

    private IEnumerable<string> Insert(DxfInsert insert) => Require(
            (Numbers(insert.Position) && IsNumber(insert.Rotation), NotANumber),
            (Positive(Math.Abs(insert.ScaleX), Math.Abs(insert.ScaleY)), "the scale must not be 0"),
            (document.Blocks.Contains(insert.Block), $"block {insert.Block} is not defined"))
        .Concat(insert.Attributes.SelectMany(a => Tag(a.Tag).Concat(OfItem(a.Text)).Concat(Text(a.Text))));

    private static IEnumerable<string> Hatch(DxfHatch hatch)
    {
        var pattern = hatch.Pattern;
        var numbers = pattern is null || (IsNumber(pattern.Angle) && pattern.Lines.All(l =>
            Numbers(l.BasePoint, l.Offset) && IsNumber(l.Angle) && l.Dashes.All(IsNumber)));
        return Require(
                (hatch.Boundaries.Count > 0, "there is no boundary"),
                (numbers, NotANumber),
                (pattern is null || Positive(pattern.Scale), "the scale of the pattern must be above 0"),
                (pattern is null || pattern.Lines.Count > 0, "the pattern has no lines"),
                (pattern is null || pattern.Lines.All(l => Positive(l.Offset.Length)), "the lines of the pattern lie on each other"))
            .Concat(hatch.Boundaries.SelectMany(Outline));
    }

    private IEnumerable<string> Dimension(DxfDimension dimension) => Require(
        (Numbers(dimension.From, dimension.To, dimension.LinePoint, dimension.TextPoint ?? default) && IsNumber(dimension.Angle), NotANumber),
        (dimension.Kind == DxfDimensionKind.Rotated || (dimension.Angle == 0 && Positive(dimension.Measurement)), "an aligned dimension needs two points and no angle"),
        (document.DimStyles.Contains(dimension.Style), $"dimension style {dimension.Style} is not defined"));

    private IEnumerable<string> Leader(DxfLeader leader) => Require(
            (leader.Points.Count >= 2, "two or more points are needed"),
            (leader.Points.All(p => Numbers(p)), NotANumber),
            (document.DimStyles.Contains(leader.Style), $"dimension style {leader.Style} is not defined"))
        .Concat(leader.Note is { } note ? Of(note) : []);

    private static IEnumerable<string> Outline(DxfSequence<DxfVertex> vertices) => Require(
        (vertices.Count >= 2, "two or more corners are needed"),
        (vertices.All(v => Numbers(v.Point) && IsNumber(v.Bulge)), NotANumber));

    private static IEnumerable<string> Require(params (bool Condition, string Message)[] rules) =>
        rules.Where(r => !r.Condition).Select(r => r.Message);

    private static bool Numbers(params ReadOnlySpan<DxfPoint> points)
    {
        foreach (var point in points)
        {
            if (!IsNumber(point.X) || !IsNumber(point.Y))
                return false;
        }
        return true;
    }

    private static bool Positive(params ReadOnlySpan<double> values)
    {
        foreach (var value in values)
        {
            if (!IsNumber(value) || value < NumberCoding.Least)
                return false;
        }
        return true;
    }
}
