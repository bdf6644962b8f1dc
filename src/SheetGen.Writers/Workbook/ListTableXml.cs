using System.Globalization;
using System.Xml;

namespace SheetGen.Writers.Workbook;

/// <summary>The part of the file that makes a list a table: its name, columns, filter and the formulas that a new row gets.</summary>
internal static class ListTableXml
{
    public static void Write(XmlWriter writer, ListTable table, int id)
    {
        writer.WriteStartElement("table", SheetXml.Main);
        Attribute(writer, "id", id);
        writer.WriteAttributeString("name", table.Name);
        writer.WriteAttributeString("displayName", table.Name);
        writer.WriteAttributeString("ref", table.Cells);
        writer.WriteAttributeString("totalsRowShown", "0");
        writer.WriteStartElement("autoFilter", SheetXml.Main);
        writer.WriteAttributeString("ref", table.Cells);
        writer.WriteEndElement();
        writer.WriteStartElement("tableColumns", SheetXml.Main);
        Attribute(writer, "count", table.Columns.Count);
        for (int c = 0; c < table.Columns.Count; c++)
        {
            writer.WriteStartElement("tableColumn", SheetXml.Main);
            Attribute(writer, "id", c + 1);
            writer.WriteAttributeString("name", table.Columns[c].Head);
            if (table.Columns[c].Formula is { } formula)
                writer.WriteElementString("calculatedColumnFormula", SheetXml.Main, formula);
            writer.WriteEndElement();
        }
        writer.WriteEndElement();
        writer.WriteStartElement("tableStyleInfo", SheetXml.Main);
        writer.WriteAttributeString("name", "TableStyleLight1");
        writer.WriteAttributeString("showFirstColumn", "0");
        writer.WriteAttributeString("showLastColumn", "0");
        writer.WriteAttributeString("showRowStripes", "1");
        writer.WriteAttributeString("showColumnStripes", "0");
        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    private static void Attribute(XmlWriter writer, string name, int value) =>
        writer.WriteAttributeString(name, value.ToString(CultureInfo.InvariantCulture));
}
