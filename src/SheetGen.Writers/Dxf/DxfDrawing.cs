using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Dxf;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Dxf;

/// <summary>Turns drawing data into a DXF document: tables first, then primitives one to one.</summary>
internal sealed class DxfDrawing
{
    private const string AppId = "SHEETGEN";
    private readonly SheetSet _set;
    private readonly double _paper;

    /// <param name="paper">Paper units per millimetre.</param>
    public DxfDrawing(SheetSet set, bool withBlocks, double paper = 1)
    {
        _set = set;
        _paper = paper;
        bool metric = set.Unit == LengthUnit.Metre;
        Document = new DxfDocument
        {
            Header = new DxfHeader
            {
                Units = set.Unit switch
                {
                    LengthUnit.Foot => DxfUnits.Foot,
                    LengthUnit.SurveyFoot => DxfUnits.UsSurveyFoot,
                    _ => DxfUnits.Metre,
                },
                Measurement = metric ? DxfMeasurement.Metric : DxfMeasurement.Imperial,
                LinearPrecision = metric ? 3 : 2,
            },
        };
        Document.AppIds.Add(new DxfAppId(AppId));
        foreach (LinetypeDefinition t in set.Templates.Linetypes)
            Document.Linetypes.Add(new DxfLinetype(t.Name, t.Description, [.. t.Pattern.Select(p => p * paper)]));
        foreach (TextStyle s in set.Templates.Texts.Values)
            Document.TextStyles.Set(new DxfTextStyle(s.Name, s.Bold ? "arialbd.ttf" : "arial.ttf") { WidthFactor = s.WidthFactor });
        foreach (LayerDefinition l in set.Templates.Layers.Values)
        {
            Document.Layers.Set(new DxfLayer(l.Name, l.Color)
            {
                Linetype = l.Linetype,
                LineWeight = (int)Math.Round(l.Weight * 100),
                Plot = l.Plot,
            });
        }
        foreach (DimensionStyle s in set.DimensionStyles)
            Document.DimStyles.Add(StyleOf(s));
        if (set.DimensionStyles.Count > 0)
            Document.Header = Document.Header with { DimStyle = set.DimensionStyles[0].Name };
        if (!withBlocks)
            return;
        foreach (BlockDefinition block in set.Blocks)
            Document.Blocks.Add(BlockOf(block));
    }

    public DxfDocument Document { get; }

    public string NameOf(LayerRole layer) => _set.LayerOf(layer).Name;

    private DxfDimStyle StyleOf(DimensionStyle s) => new(s.Name)
    {
        Scale = s.IsPaper ? 1 : s.Scale / _paper,
        TextHeight = s.TextHeight * _paper,
        TickSize = s.HasArrows ? 0 : DimensionStyle.TickSize / 2 * _paper,
        ArrowSize = Leader.PaperArrow * _paper,
        ExtensionOffset = DimensionStyle.ExtensionOffset * _paper,
        ExtensionBeyond = DimensionStyle.ExtensionBeyond * _paper,
        TextGap = DimensionStyle.TextGap * _paper,
        TextStyle = _set.Templates.Texts[TextRole.Dimension].Name,
        Precision = s.Decimals,
        MeasureFactor = s.Factor,
        TrimZeros = s.HidesZeros,
        Affix = s.Suffix.Length == 0 ? "" : "<>" + s.Suffix,
    };

    private DxfBlock BlockOf(BlockDefinition definition)
    {
        var block = new DxfBlock(definition.Name);
        string? layer = definition.TakesLayer ? "0" : null;
        foreach (Primitive p in definition.Primitives)
            block.Entities.AddRange(Entities(p, layer));
        foreach (BlockAttribute a in definition.Attributes)
        {
            block.Entities.Add(new DxfAttributeDefinition(a.Tag, a.Prompt,
                new DxfText(layer ?? NameOf(a.Layer), Place(a.Position), a.Height, a.Default)
                {
                    Style = StyleName(a.Role),
                    WidthFactor = Factor(a.Role),
                    Align = AlignOf(a.Align),
                    Rotation = a.Rotation,
                })
            {
                Invisible = !a.Visible,
            });
        }
        return block;
    }

    /// <summary>All of a space in the order of drawing: lines, the masks of texts, then what stands above those.</summary>
    public IEnumerable<DxfEntity> Space(IReadOnlyList<Primitive> primitives) =>
        primitives.Where(p => !p.Layer.IsAboveMasks()).SelectMany(p => Entities(p))
            .Concat(primitives.SelectMany(Masks))
            .Concat(primitives.Where(p => p.Layer.IsAboveMasks()).SelectMany(p => Entities(p)));

    private IEnumerable<DxfEntity> Masks(Primitive primitive)
    {
        Text? text = primitive switch
        {
            Text { Masked: true } t => t,
            BlockReference { Shown: { Text.Masked: true } shown } => shown.Text,
            Dimension d => DimensionPicture.Draw(d, _set.DimensionStyles.First(s => s.Name == d.Style)).OfType<Text>().Single(),
            _ => null,
        };
        if (text is null)
            yield break;
        IReadOnlyList<Point2> corners = TextMask.Of(text, _set.Templates.Texts[text.Role]).Corners;
        yield return new DxfWipeout(NameOf(text.Layer), Place(corners[0]), Place(corners[1] - corners[0]), Place(corners[3] - corners[0]));
    }

    public IEnumerable<DxfEntity> Entities(Primitive primitive, string? onLayer = null)
    {
        string layer = onLayer ?? NameOf(primitive.Layer);
        DxfSequence<DxfXData> data = primitive.Data.Count == 0
            ? []
            : [new DxfXData(AppId, [.. primitive.Data.Select(d => (DxfXValue)new DxfXValue.Text(d))])];
        DxfEntity? entity = primitive switch
        {
            Leader l => new DxfLeader(layer, [Place(l.From), Place(l.To)]) { Style = StyleFor(l), Arrow = l.Arrow > 0 },
            Line l => l.From == l.To ? null : new DxfLine(layer, Place(l.From), Place(l.To)),
            Polyline p => new DxfPolyline(layer, Vertices(p.Vertices), p.Closed),
            Circle c => new DxfCircle(layer, Place(c.Center), c.Radius),
            Arc a => new DxfArc(layer, Place(a.Center), a.Radius, a.Start, a.End),
            Fill f => new DxfHatch(layer, [Vertices(f.Outline)])
            {
                Pattern = f.Spacing > 0 ? DxfHatchPattern.Parallel(f.Angle, f.Spacing) : null,
            },
            Text t => TextOf(t, layer),
            Dimension d => new DxfDimension(layer, DxfDimensionKind.Rotated, Place(d.From), Place(d.To), LineEnd(d), d.Angle)
            {
                Style = d.Style,
                TextPoint = Place(d.TextPoint),
                Words = d.Words,
            },
            BlockReference b => Insert(b, layer),
            _ => throw new ArgumentException("unknown primitive", nameof(primitive)),
        };
        if (entity is not null)
            yield return data.Count == 0 ? entity : entity with { XData = data };
    }

    private DxfInsert Insert(BlockReference b, string layer)
    {
        DxfBlock block = Document.Blocks[b.Block];
        DxfInsert insert = DxfInsert.Of(layer, block, Place(b.Position), b.Attributes.ToDictionary(a => a.Key, a => a.Value), b.Scale, b.Rotation);
        if (b.Shown is not { } shown)
            return insert;
        // By its middle, so that the mark stays in place where it is edited or drawn with another font.
        Point2 middle = shown.Text.Position + new Point2(0, shown.Text.Height / 2).Turned(shown.Text.Rotation * Math.PI / 180);
        DxfText text = TextOf(shown.Text with { Position = middle }, NameOf(shown.Text.Layer)) with { VerticalAlign = DxfTextVerticalAlign.Middle };
        return insert with { Attributes = [.. insert.Attributes.Select(a => a.Tag == shown.Tag ? new DxfAttribute(a.Tag, text) : a)] };
    }

    /// <summary>The dimension style that gives an arrowhead its size.</summary>
    private string StyleFor(Leader leader) => leader.Arrow <= 0
        ? _set.DimensionStyles[0].Name
        : _set.DimensionStyles.MinBy(s => Math.Abs(Math.Log(leader.Arrow / Leader.PaperArrow / (s.IsPaper ? _paper : s.Scale))))!.Name;

    private DxfText TextOf(Text t, string layer) => new(layer, Place(t.Position), t.Height, t.Value)
    {
        Style = StyleName(t.Role),
        WidthFactor = Factor(t.Role),
        Rotation = t.Rotation,
        Align = AlignOf(t.Align),
    };

    private static DxfTextAlign AlignOf(HorizontalAlign align) => align switch
    {
        HorizontalAlign.Left => DxfTextAlign.Left,
        HorizontalAlign.Center => DxfTextAlign.Center,
        _ => DxfTextAlign.Right,
    };

    private string StyleName(TextRole role) => _set.Templates.Texts[role].Name;

    private double Factor(TextRole role) => _set.Templates.Texts[role].WidthFactor;

    /// <summary>The end of the dimension line nearest to the second measured point.</summary>
    private static DxfPoint LineEnd(Dimension d)
    {
        Point2 along = new Point2(1, 0).Turned(d.Angle * Math.PI / 180);
        Point2 way = d.To - d.LinePoint;
        return Place(d.LinePoint + along * (way.X * along.X + way.Y * along.Y));
    }

    private static DxfSequence<DxfVertex> Vertices(IReadOnlyList<Vertex> vertices) =>
        [.. vertices.Select(v => new DxfVertex(Place(v.Point), v.Bulge))];

    private static DxfPoint Place(Point2 p) => new(p.X, p.Y);
}
