using System.Buffers;
using System.Globalization;

namespace SheetGen.Dxf;

/// <summary>Finds what would make a document unreadable elsewhere: names that are not defined, values that cannot be.</summary>
public static class DxfDocumentCheck
{
    /// <summary>All problems of a document, in its order; none means that it can be written.</summary>
    public static IReadOnlyList<DxfProblem> Problems(DxfDocument document)
    {
        var problems = new List<DxfProblem>();
        new Run(document, m => problems.Add(new(0, m))).All();
        return problems;
    }

    private static readonly SearchValues<char> NeverInNames = SearchValues.Create("<>/\\\":;?*|,=`^");

    /// <summary>Whether the format takes a text as the name of a layer, linetype, style or block.</summary>
    public static bool IsName(string name) =>
        name.Length is > 0 and <= 255
        && name.Trim() == name
        && !name.AsSpan().ContainsAny(NeverInNames)
        && !name.Any(char.IsControl);

    private sealed class Run(DxfDocument document, Action<string> report)
    {
        private readonly EntityCheck _entities = new(document);

        internal void All()
        {
            Header();
            Names("layer", document.Layers);
            Names("linetype", document.Linetypes);
            Names("text style", document.TextStyles);
            Names("dimension style", document.DimStyles);
            Names("application", document.AppIds);
            Names("block", document.Blocks);
            Names("layout", document.Layouts);
            foreach (var layer in document.Layers)
                Layer(layer);
            foreach (var linetype in document.Linetypes)
                Linetype(linetype);
            foreach (var style in document.TextStyles)
                Require(Positive(style.WidthFactor) && Math.Abs(style.ObliqueAngle) <= 85, $"text style {style.Name}: bad width factor or slant");
            foreach (var style in document.DimStyles)
                DimStyle(style);
            foreach (var block in document.Blocks)
                Block(block);
            Entities("model space", document.Model);
            foreach (var layout in document.Layouts)
                Layout(layout);
        }

        private void Header()
        {
            var header = document.Header;
            Require(document.Layers.Contains(header.Layer), $"header: layer {header.Layer} is not defined");
            Require(document.TextStyles.Contains(header.TextStyle), $"header: text style {header.TextStyle} is not defined");
            Require(document.DimStyles.Contains(header.DimStyle), $"header: dimension style {header.DimStyle} is not defined");
            Require(Positive(header.LinetypeScale), "header: the linetype scale must be above 0");
            Require(header.LinearPrecision is >= 0 and <= 8, "header: the precision must be 0 to 8");
            if (header.Extents is { } extents)
                Require(Number(extents.Min) && Number(extents.Max) && extents.Width >= 0 && extents.Height >= 0, "header: bad extents");
        }

        private void Names(string kind, IEnumerable<IDxfNamed> items)
        {
            foreach (var item in items)
            {
                var name = kind == "block" && item.Name.StartsWith('*') ? item.Name[1..] : item.Name;
                Require(IsName(name), $"{kind} '{item.Name}': not a name that the format allows");
            }
        }

        private void Layer(DxfLayer layer)
        {
            Require(layer.Color is >= 1 and <= 255, $"layer {layer.Name}: the colour must be 1 to 255");
            var known = DxfLinetype.IsBuiltIn(layer.Linetype) || document.Linetypes.Contains(layer.Linetype);
            Require(known, $"layer {layer.Name}: linetype {layer.Linetype} is not defined");
            var weight = layer.LineWeight == DxfLayer.DefaultLineWeight || DxfLayer.LineWeights.Contains(layer.LineWeight);
            Require(weight, string.Create(CultureInfo.InvariantCulture, $"layer {layer.Name}: {layer.LineWeight} is not a lineweight of the format"));
        }

        private void Linetype(DxfLinetype linetype)
        {
            Require(!DxfLinetype.IsBuiltIn(linetype.Name), $"linetype {linetype.Name}: this name is built in");
            Require(linetype.Pattern.Count != 1 && linetype.Pattern.All(Number), $"linetype {linetype.Name}: a pattern has two or more lengths, or none");
        }

        private void DimStyle(DxfDimStyle style)
        {
            Require(document.TextStyles.Contains(style.TextStyle), $"dimension style {style.Name}: text style {style.TextStyle} is not defined");
            Require(Positive(style.Scale) && Positive(style.TextHeight) && Positive(style.MeasureFactor), $"dimension style {style.Name}: scale, text height and factor must be above 0");
            double[] sizes = [style.ArrowSize, style.TickSize, style.ExtensionOffset, style.ExtensionBeyond, style.TextGap];
            Require(sizes.All(s => Number(s) && s >= 0), $"dimension style {style.Name}: sizes must be 0 or more");
            Require(style.Precision is >= 0 and <= 8, $"dimension style {style.Name}: the precision must be 0 to 8");
        }

        private void Block(DxfBlock block)
        {
            Require(!IsReserved(block.Name), $"block {block.Name}: this name is kept for spaces and dimensions");
            Require(Number(block.BasePoint), $"block {block.Name}: bad base point");
            Require(!block.Entities.OfType<DxfDimension>().Any(), $"block {block.Name}: a dimension may not stand in a block");
            Require(!Reaches(block, block.Name, []), $"block {block.Name}: it contains itself");
            Entities("block " + block.Name, block.Entities);
        }

        private static bool IsReserved(string name) =>
            name.StartsWith("*Model_Space", StringComparison.OrdinalIgnoreCase)
            || name.StartsWith("*Paper_Space", StringComparison.OrdinalIgnoreCase)
            || name.StartsWith("*D", StringComparison.OrdinalIgnoreCase);

        private bool Reaches(DxfBlock block, string target, HashSet<string> seen)
        {
            foreach (var insert in block.Entities.OfType<DxfInsert>())
            {
                if (insert.Block.Equals(target, StringComparison.OrdinalIgnoreCase))
                    return true;
                if (seen.Add(insert.Block.ToUpperInvariant()) && document.Blocks.TryGet(insert.Block, out var inner) && Reaches(inner, target, seen))
                    return true;
            }
            return false;
        }

        private void Layout(DxfLayout layout)
        {
            var place = "layout " + layout.Name;
            Require(!layout.Name.Equals("Model", StringComparison.OrdinalIgnoreCase), $"{place}: this name is kept for model space");
            Require(Positive(layout.PaperWidth) && Positive(layout.PaperHeight), $"{place}: the paper must be larger than 0");
            for (var i = 0; i < layout.Viewports.Count; i++)
                Tell($"{place}, viewport {i + 1}", _entities.OfViewport(layout.Viewports[i]));
            Entities(place, layout.Entities);
        }

        private void Entities(string place, List<DxfEntity> entities)
        {
            for (var i = 0; i < entities.Count; i++)
                Tell($"{place}, entity {i + 1} ({entities[i].GetType().Name})", _entities.Of(entities[i]));
        }

        private void Tell(string place, IEnumerable<string> messages)
        {
            foreach (var message in messages)
                report($"{place}: {message}");
        }

        private void Require(bool condition, string message)
        {
            if (!condition)
                report(message);
        }

        private static bool Number(double value) => EntityCheck.IsNumber(value);

        private static bool Number(DxfPoint point) => Number(point.X) && Number(point.Y);

        private static bool Positive(double value) => Number(value) && value >= NumberCoding.Least;
    }
}
