using System.Globalization;
using System.Xml;
using SheetGen.Exchange.Common;
using SheetGen.Exchange.Ifc;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Bcf;

/// <summary>A finding as a topic. Its id is made from what it is about, so that it stays the same from build to build.</summary>
internal sealed class BcfTopic
{
    private const int MostTitle = 160;

    private readonly ExchangeInput _input;
    private readonly StableId _ids;
    private readonly Finding _finding;
    private readonly int _number;
    private readonly string _viewpoint;

    /// <param name="used">Keys of the topics before; findings that are about the same get a count.</param>
    public BcfTopic(ExchangeInput input, StableId ids, Finding finding, int number, HashSet<string> used)
    {
        (_input, _ids, _finding, _number) = (input, ids, finding, number);
        string about = FormattableString.Invariant($"topic|{finding.Code}|{finding.Wall?.Name}|{string.Join(',', finding.Nails)}|{finding.Obstruction}");
        string key = about;
        for (int i = 2; !used.Add(key); i++)
            key = FormattableString.Invariant($"{about}|{i}");
        Id = ids.Of(key).ToString();
        _viewpoint = ids.Of(key + "|viewpoint").ToString();
    }

    public string Id { get; }

    public static string Status(Finding finding) => finding.Severity == Severity.Accepted ? "Accepted" : "Open";

    public static string Label(Finding finding) => finding.Wall?.Name ?? "";

    public static string Author(ExchangeInput input) => "SheetGen " + input.Run.Version;

    public void WriteMarkup(XmlWriter xml)
    {
        xml.WriteStartElement("Markup");
        xml.WriteStartElement("Header");
        xml.WriteStartElement("Files");
        xml.WriteStartElement("File");
        xml.WriteAttributeString("IfcProject", _ids.Ifc("project"));
        xml.WriteAttributeString("IsExternal", "true");
        xml.WriteElementString("Filename", IfcFile.FileName);
        xml.WriteElementString("Date", Date());
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteStartElement("Topic");
        xml.WriteAttributeString("Guid", Id);
        xml.WriteAttributeString("TopicType", _finding.Code);
        xml.WriteAttributeString("TopicStatus", Status(_finding));
        xml.WriteElementString("Title", Title());
        xml.WriteElementString("Priority", ResultWords.Of(_finding.Severity));
        xml.WriteElementString("Index", _number.ToString(CultureInfo.InvariantCulture));
        if (Label(_finding) is { Length: > 0 } label)
        {
            xml.WriteStartElement("Labels");
            xml.WriteElementString("Label", XmlBytes.Clean(label));
            xml.WriteEndElement();
        }
        xml.WriteElementString("CreationDate", Date());
        xml.WriteElementString("CreationAuthor", Author(_input));
        xml.WriteElementString("Description", Description());
        xml.WriteStartElement("Viewpoints");
        xml.WriteStartElement("ViewPoint");
        xml.WriteAttributeString("Guid", _viewpoint);
        xml.WriteElementString("Viewpoint", "viewpoint.bcfv");
        xml.WriteElementString("Index", "0");
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    public void WriteViewpoint(XmlWriter xml)
    {
        var view = BcfCamera.Of(_input, _finding);
        xml.WriteStartElement("VisualizationInfo");
        xml.WriteAttributeString("Guid", _viewpoint);
        xml.WriteStartElement("Components");
        xml.WriteStartElement("Selection");
        foreach (string id in Components())
            WriteComponent(xml, id);
        xml.WriteEndElement();
        xml.WriteStartElement("Visibility");
        xml.WriteAttributeString("DefaultVisibility", "true");
        xml.WriteStartElement("Exceptions"); // With a visible default these are hidden: the face would stand before what is meant.
        foreach (string key in FaceKeys())
            WriteComponent(xml, _ids.Ifc(key));
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteStartElement("PerspectiveCamera");
        WriteTriple(xml, "CameraViewPoint", view.Eye);
        WriteTriple(xml, "CameraDirection", view.Direction);
        WriteTriple(xml, "CameraUpVector", view.Up);
        xml.WriteElementString("FieldOfView", "60");
        xml.WriteElementString("AspectRatio", "1.5");
        xml.WriteEndElement();
        if (_finding.Points.Count == 2 && (_finding.Points[0] - _finding.Points[1]).Length > 1e-6)
        {
            var frame = new PlanFrame(_input.Project);
            xml.WriteStartElement("Lines");
            xml.WriteStartElement("Line");
            WriteTriple(xml, "StartPoint", frame.WorldMetres(_finding.Points[0]));
            WriteTriple(xml, "EndPoint", frame.WorldMetres(_finding.Points[1]));
            xml.WriteEndElement();
            xml.WriteEndElement();
        }
        xml.WriteEndElement();
    }

    /// <summary>Bars and holes of its nails, and its obstruction; nails of a mark that the layout has not (left out) have no component.</summary>
    private IEnumerable<string> Components()
    {
        HashSet<string> known = [.. _input.Layout.Nails.Select(n => n.Mark)];
        foreach (string mark in _finding.Nails.Where(known.Contains))
        {
            yield return _ids.Ifc(ItemKey.Bar(mark));
            yield return _ids.Ifc(ItemKey.Hole(mark));
        }
        if (_finding.Obstruction is { } name && _input.Project.Obstructions.Any(o => o.Name == name))
            yield return _ids.Ifc(ItemKey.Obstruction(name));
    }

    private IEnumerable<string> FaceKeys() => _input.Quantities.Sections
        .Select(s => ItemKey.Shotcrete(s.Wall, s.Section))
        .Concat(_input.Quantities.Sections.Where(s => s.Wall.Facing is { Kind: not Model.FacingKind.None, Thickness: not null } && !s.Wall.HasPanels)
            .Select(s => ItemKey.Facing(s.Wall, s.Section)))
        .Concat(_input.Quantities.PanelPieces.Select(ItemKey.Panel));

    private string Title()
    {
        IEnumerable<string> about = _finding.Nails.Concat(_finding.Obstruction is { } name ? [name] : []);
        string where = string.Join(", ", about);
        if (where.Length == 0 && _finding.Station is { } station)
            where = "station " + (_finding.Wall is { } wall
                ? wall.LayoutLine.StationText(wall.LayoutLine.AlongOf(station), _input.Project.Unit)
                : new Model.PrintedStation(station).Text(_input.Project.Unit));
        string title = XmlBytes.Clean($"{_finding.Code}{(where.Length > 0 ? ": " + where : "")}");
        return title.Length > MostTitle ? title[..(MostTitle - 3)] + "..." : title;
    }

    private string Description() => XmlBytes.Clean(FormattableString.Invariant($"{_finding.Message} (F-{_number:0000} of findings.json)"));

    private string Date() => new PlanFrame(_input.Project).Date.ToString("s", CultureInfo.InvariantCulture) + "Z";

    private static void WriteComponent(XmlWriter xml, string id)
    {
        xml.WriteStartElement("Component");
        xml.WriteAttributeString("IfcGuid", id);
        xml.WriteEndElement();
    }

    private static void WriteTriple(XmlWriter xml, string name, (double X, double Y, double Z) value)
    {
        xml.WriteStartElement(name);
        xml.WriteElementString("X", PlainNumber.Format(value.X, 1, 6));
        xml.WriteElementString("Y", PlainNumber.Format(value.Y, 1, 6));
        xml.WriteElementString("Z", PlainNumber.Format(value.Z, 1, 6));
        xml.WriteEndElement();
    }
}
