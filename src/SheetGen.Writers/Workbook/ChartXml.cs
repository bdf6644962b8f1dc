using System.Globalization;
using System.Xml;

namespace SheetGen.Writers.Workbook;

/// <summary>A chart's part of the file, and the frames that set charts on a sheet.</summary>
internal static class ChartXml
{
    private const string Chart = "http://schemas.openxmlformats.org/drawingml/2006/chart";
    private const string Main = "http://schemas.openxmlformats.org/drawingml/2006/main";
    private const string Frame = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
    private const string Relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    public static string IdOf(int chart) => "rIdChart" + Text(chart + 1);

    public static void Write(XmlWriter writer, SheetChart chart)
    {
        writer.WriteStartElement("c", "chartSpace", Chart);
        writer.WriteAttributeString("xmlns", "a", null, Main);
        Value(writer, "roundedCorners", "0");
        Start(writer, "chart");
        Title(writer, chart.Title, 1100, true);
        Value(writer, "autoTitleDeleted", "0");
        Start(writer, "plotArea");
        Start(writer, "layout");
        writer.WriteEndElement();
        Start(writer, "barChart");
        Value(writer, "barDir", chart.IsHorizontal ? "bar" : "col");
        Value(writer, "grouping", "clustered");
        Value(writer, "varyColors", "0");
        Series(writer, chart);
        Value(writer, "gapWidth", "60");
        Value(writer, "axId", "1");
        Value(writer, "axId", "2");
        writer.WriteEndElement();
        Axis(writer, "catAx", "1", "2", chart.IsHorizontal ? "l" : "b", chart.IsHorizontal, null, "General");
        Axis(writer, "valAx", "2", "1", chart.IsHorizontal ? "t" : "l", false, chart.AxisTitle.Length > 0 ? chart.AxisTitle : null, chart.Format);
        writer.WriteEndElement();
        Value(writer, "plotVisOnly", "0");
        Value(writer, "dispBlanksAs", "gap");
        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    public static void WriteFrames(XmlWriter writer, List<SheetChart> charts)
    {
        writer.WriteStartElement("xdr", "wsDr", Frame);
        writer.WriteAttributeString("xmlns", "a", null, Main);
        for (int c = 0; c < charts.Count; c++)
        {
            writer.WriteStartElement("twoCellAnchor", Frame);
            Corner(writer, "from", charts[c].FirstColumn, charts[c].FirstRow - 1);
            Corner(writer, "to", charts[c].EndColumn, charts[c].EndRow - 1);
            writer.WriteStartElement("graphicFrame", Frame);
            writer.WriteAttributeString("macro", "");
            writer.WriteStartElement("nvGraphicFramePr", Frame);
            writer.WriteStartElement("cNvPr", Frame);
            writer.WriteAttributeString("id", Text(c + 2));
            writer.WriteAttributeString("name", "Chart " + Text(c + 1));
            writer.WriteAttributeString("descr", charts[c].Title);
            writer.WriteEndElement();
            writer.WriteElementString("cNvGraphicFramePr", Frame, "");
            writer.WriteEndElement();
            writer.WriteStartElement("xfrm", Frame);
            Pair(writer, "off", "x", "y");
            Pair(writer, "ext", "cx", "cy");
            writer.WriteEndElement();
            writer.WriteStartElement("graphic", Main);
            writer.WriteStartElement("graphicData", Main);
            writer.WriteAttributeString("uri", Chart);
            writer.WriteStartElement("c", "chart", Chart);
            writer.WriteAttributeString("r", "id", Relation, IdOf(c));
            writer.WriteEndElement();
            writer.WriteEndElement();
            writer.WriteEndElement();
            writer.WriteEndElement();
            writer.WriteElementString("clientData", Frame, "");
            writer.WriteEndElement();
        }
        writer.WriteEndElement();
    }

    private static void Series(XmlWriter writer, SheetChart chart)
    {
        Start(writer, "ser");
        Value(writer, "idx", "0");
        Value(writer, "order", "0");
        Start(writer, "spPr");
        writer.WriteStartElement("solidFill", Main);
        writer.WriteStartElement("srgbClr", Main);
        writer.WriteAttributeString("val", "2F6690");
        writer.WriteEndElement();
        writer.WriteEndElement();
        writer.WriteEndElement();
        Value(writer, "invertIfNegative", "0");
        Start(writer, "dLbls");
        Start(writer, "numFmt");
        writer.WriteAttributeString("formatCode", chart.Format);
        writer.WriteAttributeString("sourceLinked", "0");
        writer.WriteEndElement();
        Value(writer, "showLegendKey", "0");
        Value(writer, "showVal", "1");
        Value(writer, "showCatName", "0");
        Value(writer, "showSerName", "0");
        Value(writer, "showPercent", "0");
        Value(writer, "showBubbleSize", "0");
        writer.WriteEndElement();
        Start(writer, "cat");
        Start(writer, "strRef");
        writer.WriteElementString("f", Chart, chart.Categories);
        Cache(writer, "strCache", null, [.. chart.Known.Select(k => (string?)k.Name)]);
        writer.WriteEndElement();
        writer.WriteEndElement();
        Start(writer, "val");
        Start(writer, "numRef");
        writer.WriteElementString("f", Chart, chart.Values);
        Cache(writer, "numCache", "General", [.. chart.Known.Select(k => k.Value?.ToString("R", CultureInfo.InvariantCulture))]);
        writer.WriteEndElement();
        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    private static void Cache(XmlWriter writer, string kind, string? format, IReadOnlyList<string?> values)
    {
        Start(writer, kind);
        if (format is not null)
            writer.WriteElementString("formatCode", Chart, format);
        Value(writer, "ptCount", Text(values.Count));
        for (int i = 0; i < values.Count; i++)
        {
            if (values[i] is null)
                continue;
            Start(writer, "pt");
            writer.WriteAttributeString("idx", Text(i));
            writer.WriteElementString("v", Chart, values[i]);
            writer.WriteEndElement();
        }
        writer.WriteEndElement();
    }

    private static void Axis(XmlWriter writer, string kind, string id, string crosses, string where, bool isTurned, string? title, string format)
    {
        Start(writer, kind);
        Value(writer, "axId", id);
        Start(writer, "scaling");
        Value(writer, "orientation", isTurned ? "maxMin" : "minMax");
        if (kind == "valAx")
            Value(writer, "min", "0");
        writer.WriteEndElement();
        Value(writer, "delete", "0");
        Value(writer, "axPos", where);
        if (title is not null)
            Title(writer, title, 900, false);
        Start(writer, "numFmt");
        writer.WriteAttributeString("formatCode", format);
        writer.WriteAttributeString("sourceLinked", "0");
        writer.WriteEndElement();
        Value(writer, "majorTickMark", "out");
        Value(writer, "minorTickMark", "none");
        Value(writer, "tickLblPos", "nextTo");
        Value(writer, "crossAx", crosses);
        Value(writer, "crosses", "autoZero");
        writer.WriteEndElement();
    }

    private static void Title(XmlWriter writer, string text, int hundredths, bool bold)
    {
        Start(writer, "title");
        Start(writer, "tx");
        Start(writer, "rich");
        writer.WriteElementString("bodyPr", Main, "");
        writer.WriteStartElement("p", Main);
        writer.WriteStartElement("r", Main);
        writer.WriteStartElement("rPr", Main);
        writer.WriteAttributeString("lang", "en-US");
        writer.WriteAttributeString("sz", Text(hundredths));
        writer.WriteAttributeString("b", bold ? "1" : "0");
        writer.WriteEndElement();
        writer.WriteElementString("t", Main, text);
        writer.WriteEndElement();
        writer.WriteEndElement();
        writer.WriteEndElement();
        writer.WriteEndElement();
        Value(writer, "overlay", "0");
        writer.WriteEndElement();
    }

    private static void Corner(XmlWriter writer, string name, int column, int row)
    {
        writer.WriteStartElement(name, Frame);
        writer.WriteElementString("col", Frame, Text(column));
        writer.WriteElementString("colOff", Frame, "0");
        writer.WriteElementString("row", Frame, Text(row));
        writer.WriteElementString("rowOff", Frame, "0");
        writer.WriteEndElement();
    }

    private static void Pair(XmlWriter writer, string name, string first, string second)
    {
        writer.WriteStartElement(name, Main);
        writer.WriteAttributeString(first, "0");
        writer.WriteAttributeString(second, "0");
        writer.WriteEndElement();
    }

    private static void Start(XmlWriter writer, string name) => writer.WriteStartElement(name, Chart);

    private static void Value(XmlWriter writer, string name, string value)
    {
        Start(writer, name);
        writer.WriteAttributeString("val", value);
        writer.WriteEndElement();
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
