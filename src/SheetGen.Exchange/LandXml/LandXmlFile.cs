using System.Globalization;
using System.Xml;
using SheetGen.Exchange.Common;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Exchange.LandXml;

/// <summary>
/// nails.xml: LandXML 1.2 with every head and tip as a point, every layout line as an alignment, and top, bottom and ground of each wall as
/// profiles along it. Points are northing, easting, elevation in the project's unit.
/// </summary>
internal static class LandXmlFile
{
    public const string FileName = "nails.xml";

    private const string Space = "http://www.landxml.org/schema/LandXML-1.2";

    public static byte[] Make(ExchangeInput input) => XmlBytes.Of(xml =>
    {
        var frame = new PlanFrame(input.Project);
        xml.WriteStartElement("LandXML", Space);
        xml.WriteAttributeString("version", "1.2");
        xml.WriteAttributeString("date", frame.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        xml.WriteAttributeString("time", "00:00:00");
        WriteUnits(xml, input.Project.Unit);
        WriteCoordinateSystem(xml, frame);
        Start(xml, "Project", ("name", input.Project.Info.Title), ("desc", input.Project.Info.Number));
        xml.WriteEndElement();
        Start(xml, "Application", ("name", "SheetGen"), ("version", input.Run.Version));
        xml.WriteEndElement();
        WritePoints(xml, input);
        Start(xml, "Alignments");
        foreach (LayoutLine line in input.Project.LayoutLines)
            WriteAlignment(xml, input.Project, line);
        xml.WriteEndElement();
        xml.WriteEndElement();
    });

    private static void WriteUnits(XmlWriter xml, LengthUnit unit)
    {
        Start(xml, "Units");
        if (unit == LengthUnit.Metre)
        {
            Start(xml, "Metric", ("areaUnit", "squareMeter"), ("linearUnit", "meter"), ("volumeUnit", "cubicMeter"),
                ("temperatureUnit", "celsius"), ("pressureUnit", "HPA"), ("angularUnit", "decimal degrees"), ("directionUnit", "decimal degrees"));
        }
        else
        {
            Start(xml, "Imperial", ("areaUnit", "squareFoot"), ("linearUnit", unit == LengthUnit.SurveyFoot ? "USSurveyFoot" : "foot"), ("volumeUnit", "cubicFeet"),
                ("temperatureUnit", "fahrenheit"), ("pressureUnit", "inHG"), ("angularUnit", "decimal degrees"), ("directionUnit", "decimal degrees"));
        }
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void WriteCoordinateSystem(XmlWriter xml, PlanFrame frame)
    {
        if (frame is { Zone: null, HorizontalDatum: null, VerticalDatum: null })
            return;
        Start(xml, "CoordinateSystem", ("desc", frame.Zone ?? ""), ("epsgCode", frame.Epsg?[5..] ?? ""),
            ("horizontalDatum", frame.HorizontalDatum ?? ""), ("verticalDatum", frame.VerticalDatum ?? ""));
        xml.WriteEndElement();
    }

    private static void WritePoints(XmlWriter xml, ExchangeInput input)
    {
        IReadOnlyList<Nail> nails = NailFigures.InStationOrder(input);
        Start(xml, "CgPoints", ("name", "Nail heads"), ("desc", "where the holes start, on the face of the temporary shotcrete"));
        foreach (Nail nail in nails)
            WritePoint(xml, nail.Mark, "HEAD", Description(nail, input.Project.Unit), NailFigures.Absolute(input, nail.Hole.Head));
        xml.WriteEndElement();
        Start(xml, "CgPoints", ("name", "Nail tips"), ("desc", "backs of the holes"));
        foreach (Nail nail in nails)
            WritePoint(xml, nail.Mark + "-TIP", "TIP", nail.Mark, NailFigures.Absolute(input, nail.Hole.Tip));
        xml.WriteEndElement();
    }

    private static string Description(Nail nail, LengthUnit unit)
    {
        string remark = NailFigures.Remark(nail);
        return $"{nail.Wall.Name}, station {NailFigures.StationText(nail, unit)}, azimuth {PlainNumber.Format(NailFigures.Azimuth(nail), 0, 4)}, "
            + $"dip {PlainNumber.Format(nail.Inclination, 0, 4)}, length {PlainNumber.Format(nail.Length, 0, 4)}" + (remark.Length > 0 ? ", " + remark : "");
    }

    private static void WritePoint(XmlWriter xml, string name, string code, string description, Vector3D at)
    {
        Start(xml, "CgPoint", ("name", name), ("code", code), ("desc", description), ("state", "proposed"));
        xml.WriteString($"{Number(at.N)} {Number(at.E)} {Number(at.Z)}");
        xml.WriteEndElement();
    }

    private static void WriteAlignment(XmlWriter xml, WallProject project, LayoutLine line)
    {
        Start(xml, "Alignment", ("name", line.Name), ("length", Number(line.Length)), ("staStart", Number(line.StartStation)));
        Start(xml, "CoordGeom");
        foreach (LayoutPiece piece in line.Pieces)
            WritePiece(xml, project, line, piece);
        xml.WriteEndElement();
        foreach (StationEquation equation in line.Stationing.Equations)
        {
            Start(xml, "StaEquation", ("staBack", Number(equation.Back.Number)), ("staAhead", Number(equation.Ahead.Number)), ("staInternal", Number(line.StationOf(equation.Along))));
            xml.WriteEndElement();
        }
        foreach (Wall wall in project.Walls.Where(w => w.LayoutLine == line))
        {
            Start(xml, "Profile", ("name", wall.Name), ("staStart", Number(wall.StationOf(wall.Start))));
            WriteProfile(xml, wall, "top of wall", wall.Top);
            WriteProfile(xml, wall, "bottom of wall", wall.Bottom);
            WriteProfile(xml, wall, "existing ground", wall.ExistingGround);
            WriteProfile(xml, wall, "finished grade", wall.FinishedGrade);
            xml.WriteEndElement();
        }
        xml.WriteEndElement();
    }

    private static void WritePiece(XmlWriter xml, WallProject project, LayoutLine line, LayoutPiece piece)
    {
        Vector2D start = piece.Point, end = piece.PointAt(piece.End);
        string station = Number(line.StationOf(piece.Start));
        if (piece.IsSpiral)
        {
            WriteSpiral(xml, project, piece, station);
            return;
        }
        if (piece.Curvature == 0)
        {
            Start(xml, "Line", ("length", Number(piece.Length)), ("staStart", station));
            Point(xml, project, "Start", start);
        }
        else
        {
            double radius = 1 / Math.Abs(piece.Curvature);
            Start(xml, "Curve", ("rot", piece.Curvature > 0 ? "cw" : "ccw"), ("crvType", "arc"), ("radius", Number(radius)),
                ("length", Number(piece.Length)), ("chord", Number((end - start).Length)),
                ("delta", Number(Angles.ToDegrees(piece.Length / radius))), ("staStart", station));
            Point(xml, project, "Start", start);
            Point(xml, project, "Center", start + Vector2D.FromAzimuth(piece.Azimuth).Right * (1 / piece.Curvature));
        }
        Point(xml, project, "End", end);
        xml.WriteEndElement();
    }

    /// <summary>A clothoid between two radii, INF where an end is straight, with the point where the tangents of its ends meet.</summary>
    private static void WriteSpiral(XmlWriter xml, WallProject project, LayoutPiece piece, string station)
    {
        Vector2D start = piece.Point, end = piece.PointAt(piece.End);
        Vector2D first = Vector2D.FromAzimuth(piece.Azimuth), last = Vector2D.FromAzimuth(piece.AzimuthAt(piece.End));
        double toMeeting = (end - start).CrossRight(last) / first.CrossRight(last);
        Start(xml, "Spiral", ("length", Number(piece.Length)), ("radiusStart", Radius(piece.Curvature)), ("radiusEnd", Radius(piece.CurvatureAt(piece.End))),
            ("rot", piece.Sharpest > 0 ? "cw" : "ccw"), ("spiType", "clothoid"), ("staStart", station));
        Point(xml, project, "Start", start);
        Point(xml, project, "PI", start + first * toMeeting);
        Point(xml, project, "End", end);
        xml.WriteEndElement();
    }

    private static string Radius(double curvature) => Math.Abs(curvature) < 1e-12 ? "INF" : Number(1 / Math.Abs(curvature));

    /// <summary>A line of (station, elevation), also for the walls' own lines: only such a list may rise vertically.</summary>
    private static void WriteProfile(XmlWriter xml, Wall wall, string name, Profile? profile)
    {
        if (profile is null)
            return;
        Start(xml, "ProfSurf", ("name", $"{wall.Name} {name}"), ("state", name == "existing ground" ? "existing" : "proposed"));
        xml.WriteStartElement("PntList2D", Space);
        xml.WriteString(string.Join(' ', profile.Between(wall.Start, wall.End).Select(p => $"{Number(wall.StationOf(p.Along))} {Number(p.Elevation)}")));
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void Point(XmlWriter xml, WallProject project, string name, Vector2D at)
    {
        xml.WriteStartElement(name, Space);
        xml.WriteString($"{Number(at.N + project.Origin.N)} {Number(at.E + project.Origin.E)}");
        xml.WriteEndElement();
    }

    /// <summary>Opens an element; attributes without a text are left out.</summary>
    private static void Start(XmlWriter xml, string name, params (string Name, string Text)[] attributes)
    {
        xml.WriteStartElement(name, Space);
        foreach ((string attribute, string text) in attributes)
        {
            if (text.Length > 0)
                xml.WriteAttributeString(attribute, XmlBytes.Clean(text));
        }
    }

    private static string Number(double value) => PlainNumber.Format(value, 1, 8);
}
