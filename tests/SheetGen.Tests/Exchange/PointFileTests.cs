using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using SheetGen.Exchange;
using SheetGen.Exchange.Common;
using SheetGen.Exchange.GeoJson;
using SheetGen.Exchange.LandXml;
using SheetGen.Exchange.Shape;
using SheetGen.Exchange.StakeOut;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.Outside;
using Xunit;

namespace SheetGen.Tests.Exchange;

/// <summary>Stake-out table, LandXML, GeoJSON and shapefiles: the points and lines of the nails, recomputed here from the written figures.</summary>
public class PointFileTests
{
    private static readonly XNamespace Land = "http://www.landxml.org/schema/LandXML-1.2";

    public static TheoryData<string> Walls => [.. ExchangeWalls.Names];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static double[] Numbers(string text) => [.. text.Split(' ').Select(Number)];

    [Theory]
    [MemberData(nameof(Walls))]
    public void A_nail_can_be_set_out_from_its_row_alone(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        string[] lines = Encoding.UTF8.GetString(StakeOutCsv.Make(input)).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("mark,northing,easting,elevation,azimuth,dip,length,remark", lines[0]);
        string[][] rows = [.. lines.Skip(1).Select(l => l.Replace("\"", "", StringComparison.Ordinal).Split(',', 8))];
        Dictionary<string, Nail> nails = input.Layout.Nails.ToDictionary(n => n.Mark);
        Assert.Equal(nails.Keys.Order(StringComparer.Ordinal), rows.Select(r => r[0]).Order(StringComparer.Ordinal));
        foreach (string[] row in rows)
        {
            // From head, azimuth, dip and length alone, by plane surveying: the tip is where the layout has it.
            Nail nail = nails[row[0]];
            double azimuth = Number(row[4]) * Math.PI / 180, dip = Number(row[5]) * Math.PI / 180, length = Number(row[6]);
            double north = Number(row[1]) + length * Math.Cos(dip) * Math.Cos(azimuth), east = Number(row[2]) + length * Math.Cos(dip) * Math.Sin(azimuth);
            Assert.Equal(nail.Hole.Tip.N + input.Project.Origin.N, north, 1e-3);
            Assert.Equal(nail.Hole.Tip.E + input.Project.Origin.E, east, 1e-3);
            Assert.Equal(nail.Hole.Tip.Z, Number(row[3]) - length * Math.Sin(dip), 1e-3);
            Assert.InRange(Number(row[4]), 0, 359.9999);
            Assert.Equal(nail.Status == NailStatus.Unresolved, row[7].StartsWith("DO NOT DRILL", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Rows_run_in_station_order_line_by_line_from_the_top_down()
    {
        ExchangeInput input = ExchangeWalls.Of("two walls");
        Dictionary<string, Nail> nails = input.Layout.Nails.ToDictionary(n => n.Mark);
        Nail[] order = [.. Encoding.UTF8.GetString(StakeOutCsv.Make(input)).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => nails[l.Split(',')[0]])];
        Assert.Equal(order.OrderBy(n => n.Wall.Name).ThenBy(n => n.Station).ThenByDescending(n => n.Elevation).Select(n => n.Mark), order.Select(n => n.Mark));
    }

    [Fact]
    public void An_unresolved_nail_is_not_set_out_in_silence() =>
        Assert.Contains(ExchangeWalls.Of("feet").Layout.Nails, n => n.Status == NailStatus.Unresolved);

    [Theory]
    [MemberData(nameof(Walls))]
    public void Land_xml_has_points_alignments_and_profiles(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        XElement root = XDocument.Parse(Encoding.UTF8.GetString(LandXmlFile.Make(input))).Root!;
        Assert.Equal(Land + "LandXML", root.Name);
        XElement units = root.Element(Land + "Units")!.Elements().Single();
        Assert.Equal(
            input.Project.Unit switch { LengthUnit.Metre => "meter", LengthUnit.SurveyFoot => "USSurveyFoot", _ => "foot" }, units.Attribute("linearUnit")!.Value);
        Dictionary<string, double[]> points = root.Elements(Land + "CgPoints").SelectMany(g => g.Elements(Land + "CgPoint"))
            .ToDictionary(p => p.Attribute("name")!.Value, p => Numbers(p.Value));
        Assert.Equal(2 * input.Layout.Nails.Count, points.Count);
        foreach (Nail nail in input.Layout.Nails)
        {
            AssertAt(NailFigures.Absolute(input, nail.Hole.Head), points[nail.Mark]);
            AssertAt(NailFigures.Absolute(input, nail.Hole.Tip), points[nail.Mark + "-TIP"]);
        }
        XElement[] alignments = [.. root.Element(Land + "Alignments")!.Elements(Land + "Alignment")];
        Assert.Equal(input.Project.LayoutLines.Select(l => l.Name), alignments.Select(a => a.Attribute("name")!.Value));
        foreach ((XElement alignment, LayoutLine line) in alignments.Zip(input.Project.LayoutLines))
            AssertLine(input, alignment, line);
    }

    private static void AssertAt(Vector3D expected, double[] actual)
    {
        Assert.Equal(expected.N, actual[0], 1e-6);
        Assert.Equal(expected.E, actual[1], 1e-6);
        Assert.Equal(expected.Z, actual[2], 1e-6);
    }

    /// <summary>Walks the alignment from the file's own figures alone and compares places along it.</summary>
    private static void AssertLine(ExchangeInput input, XElement alignment, LayoutLine line)
    {
        double station = Number(alignment.Attribute("staStart")!.Value), along = 0;
        Assert.Equal(line.StartStation, station);
        foreach (XElement piece in alignment.Element(Land + "CoordGeom")!.Elements())
        {
            double[] start = Numbers(piece.Element(Land + "Start")!.Value), end = Numbers(piece.Element(Land + "End")!.Value);
            double length = Number(piece.Attribute("length")!.Value);
            Assert.Equal(station + along, Number(piece.Attribute("staStart")!.Value), 1e-6);
            for (int i = 0; i <= 4; i++)
            {
                double share = i / 4.0;
                double[] at = piece.Name == Land + "Line"
                    ? [start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share]
                    : piece.Name == Land + "Spiral" ? OnSpiral(piece, start, length * share) : OnArc(piece, start, length * share);
                Vector2D expected = line.PieceAt(along + length / 2).PointAt(along + length * share);
                Assert.Equal(expected.N + input.Project.Origin.N, at[0], 1e-5);
                Assert.Equal(expected.E + input.Project.Origin.E, at[1], 1e-5);
            }
            along += length;
        }
        Assert.Equal(line.Length, along, 1e-6);
        Assert.Equal(line.Length, Number(alignment.Attribute("length")!.Value), 1e-6);
        foreach (Wall wall in input.Project.Walls.Where(w => w.LayoutLine == line))
        {
            XElement profile = alignment.Elements(Land + "Profile").Single(p => p.Attribute("name")!.Value == wall.Name);
            double[] top = Numbers(profile.Elements(Land + "ProfSurf").First().Element(Land + "PntList2D")!.Value);
            Assert.Equal(wall.StationOf(wall.Start), top[0], 1e-6);
            Assert.Equal(wall.Top.At(wall.Start), top[1], 1e-6);
            Assert.Equal(wall.StationOf(wall.End), top[^2], 1e-6);
            Assert.Equal(wall.Top.Before(wall.End), top[^1], 1e-6);
        }
    }

    /// <summary>From start, PI and both radii: the azimuth of the first tangent, then the curvature that grows evenly, by small steps.</summary>
    private static double[] OnSpiral(XElement spiral, double[] start, double to)
    {
        double Curvature(string name) => spiral.Attribute(name)!.Value == "INF" ? 0 : 1 / Number(spiral.Attribute(name)!.Value);
        double[] meeting = Numbers(spiral.Element(Land + "PI")!.Value);
        double sign = spiral.Attribute("rot")!.Value == "cw" ? 1 : -1, length = Number(spiral.Attribute("length")!.Value);
        double first = sign * Curvature("radiusStart"), last = sign * Curvature("radiusEnd"), azimuth = Math.Atan2(meeting[1] - start[1], meeting[0] - start[0]);
        double[] at = [.. start];
        const int steps = 2000;
        for (int i = 0; i < steps; i++)
        {
            double s = (i + 0.5) * to / steps, bearing = azimuth + first * s + (last - first) / length * s * s / 2;
            at[0] += Math.Cos(bearing) * to / steps;
            at[1] += Math.Sin(bearing) * to / steps;
        }
        return at;
    }

    [Fact]
    public void Station_equations_are_told()
    {
        XElement root = XDocument.Parse(Encoding.UTF8.GetString(LandXmlFile.Make(ExchangeWalls.Of("spiral")))).Root!;
        XElement equation = root.Descendants(Land + "StaEquation").Single();
        Assert.Equal([1250, 1230, 1250], new[] { "staBack", "staAhead", "staInternal" }.Select(n => Number(equation.Attribute(n)!.Value)));
        Assert.Contains(root.Descendants(Land + "CgPoint"), p => p.Attribute("desc")!.Value.Contains(" AH, azimuth", StringComparison.Ordinal));
    }

    /// <summary>A number alone says not which of two stations it is.</summary>
    [Fact]
    public void Features_have_stations_that_exist_twice_with_back_or_ahead()
    {
        ExchangeInput input = ExchangeWalls.Of("spiral");
        using var json = JsonDocument.Parse(GeoJsonFile.Make(input));
        string[] features = [.. json.RootElement.GetProperty("features").EnumerateArray().Select(f => f.GetProperty("properties")).Select(p => p.GetProperty("mark").GetString() + " " + p.GetProperty("sta_text").GetString())];
        Assert.Equal(input.Layout.Nails.SelectMany(n => Enumerable.Repeat(n.Mark + " " + n.Wall.LayoutLine.StationText(n.Wall.LayoutLine.AlongOf(n.Station), input.Project.Unit), 2)).Order(StringComparer.Ordinal), features.Order(StringComparer.Ordinal));
        Assert.Contains(features, f => f.EndsWith(" BK", StringComparison.Ordinal));
        Assert.Contains(features, f => f.EndsWith(" AH", StringComparison.Ordinal));
    }

    private static double[] OnArc(XElement arc, double[] start, double length)
    {
        double[] centre = Numbers(arc.Element(Land + "Center")!.Value);
        double radius = Number(arc.Attribute("radius")!.Value), turned = length / radius * (arc.Attribute("rot")!.Value == "cw" ? 1 : -1);
        double n = start[0] - centre[0], e = start[1] - centre[1];
        Assert.Equal(radius, Math.Sqrt(n * n + e * e), 1e-5);
        return [centre[0] + n * Math.Cos(turned) - e * Math.Sin(turned), centre[1] + n * Math.Sin(turned) + e * Math.Cos(turned)];
    }

    [Theory]
    [MemberData(nameof(Walls))]
    [Trait("Category", "Outside")]
    public void Geo_json_passes_a_checker_and_has_heads_and_traces(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        using var folder = new TemporaryFolder();
        string path = folder.File("nails.geojson");
        File.WriteAllBytes(path, GeoJsonFile.Make(input));
        OutsideResult result = OutsideReader.NodeScript("check_geojson.mjs", "@placemarkio/check-geojson").Run(path);
        Assert.True(result.ExitCode == 0, result.Errors);
        JsonElement[] features = [.. JsonDocument.Parse(result.Output).RootElement.EnumerateArray()];
        Assert.Equal(2 * input.Layout.Nails.Count, features.Length);
        Dictionary<string, Nail> nails = input.Layout.Nails.ToDictionary(n => n.Mark);
        foreach (JsonElement feature in features)
        {
            JsonElement properties = feature.GetProperty("properties"), shape = feature.GetProperty("geometry");
            Nail nail = nails[properties.GetProperty("mark").GetString()!];
            Assert.Equal(nail.Length, properties.GetProperty("length").GetDouble());
            Assert.Equal(ResultWords.Of(nail.Status), properties.GetProperty("status").GetString());
            if (properties.GetProperty("part").GetString() == "head")
            {
                Assert.Equal("Point", shape.GetProperty("type").GetString());
                AssertPosition(NailFigures.Absolute(input, nail.Hole.Head), shape.GetProperty("coordinates"));
                continue;
            }
            Assert.Equal("LineString", shape.GetProperty("type").GetString());
            AssertPosition(NailFigures.Absolute(input, nail.Hole.Head), shape.GetProperty("coordinates")[0]);
            AssertPosition(NailFigures.Absolute(input, nail.Hole.Tip), shape.GetProperty("coordinates")[1]);
        }
    }

    private static void AssertPosition(Vector3D expected, JsonElement position)
    {
        Assert.Equal(3, position.GetArrayLength());
        Assert.Equal(expected.E, position[0].GetDouble(), 1e-6);
        Assert.Equal(expected.N, position[1].GetDouble(), 1e-6);
        Assert.Equal(expected.Z, position[2].GetDouble(), 1e-6);
    }

    [Theory]
    [MemberData(nameof(Walls))]
    [Trait("Category", "Outside")]
    public void Shapefiles_open_in_another_program(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        using var folder = new TemporaryFolder();
        foreach ((string name, byte[] content) in ShapeFiles.FileNames.Zip(ShapeFiles.Make(input)))
            File.WriteAllBytes(folder.File(name), content);
        string heads = Info(folder.File("nail-heads.shp")), traces = Info(folder.File("nail-traces.shp"));
        Assert.Contains("Geometry: 3D Point", heads, StringComparison.Ordinal);
        Assert.Contains("Geometry: 3D Line String", traces, StringComparison.Ordinal);
        IReadOnlyList<Nail> nails = NailFigures.InStationOrder(input);
        string[] headRecords = [.. heads.Split("OGRFeature").Skip(1)], traceRecords = [.. traces.Split("OGRFeature").Skip(1)];
        Assert.Equal(nails.Count, headRecords.Length);
        Assert.Equal(nails.Count, traceRecords.Length);
        for (int i = 0; i < nails.Count; i++)
        {
            Assert.Contains($"mark (String) = {nails[i].Mark}\n", headRecords[i], StringComparison.Ordinal);
            Assert.Contains($"wall (String) = {nails[i].Wall.Name}\n", headRecords[i], StringComparison.Ordinal);
            Assert.Equal(nails[i].Length, Field(headRecords[i], "length"), 1e-6);
            Assert.Equal(NailFigures.Station(nails[i]), Field(traceRecords[i], "station"), 1e-6);
            AssertWkt(input, headRecords[i], nails[i].Hole.Head);
            AssertWkt(input, traceRecords[i], nails[i].Hole.Head, nails[i].Hole.Tip);
        }
    }

    /// <summary>A wall whose nails are all left out: the files are there with their fields and nothing else.</summary>
    [Fact]
    [Trait("Category", "Outside")]
    public void Shapefiles_without_nails_open_in_another_program()
    {
        ExchangeInput full = ExchangeWalls.Of("feet");
        ExchangeInput input = full with { Layout = full.Layout with { Nails = [] }, Quantities = full.Quantities with { Nails = [] } };
        using var folder = new TemporaryFolder();
        foreach ((string name, byte[] content) in ShapeFiles.FileNames.Zip(ShapeFiles.Make(input)))
            File.WriteAllBytes(folder.File(name), content);
        foreach ((string file, string geometry) in new[] { ("nail-heads.shp", "3D (Measured )?Point"), ("nail-traces.shp", "3D (Measured )?Line String") })
        {
            string told = Info(folder.File(file));
            Assert.Matches($"Geometry: {geometry}\nFeature Count: 0\n", told);
            Assert.Contains("mark: String", told, StringComparison.Ordinal);
            Assert.Contains("length: Real", told, StringComparison.Ordinal);
        }
    }

    private static string Info(string path)
    {
        OutsideResult result = OutsideReader.Program("ogrinfo").Run("-al", path);
        Assert.True(result.ExitCode == 0 && result.Errors.Length == 0, result.Errors);
        return result.Output;
    }

    private static double Field(string record, string name) =>
        Number(record.Split('\n').Single(l => l.TrimStart().StartsWith(name + " (", StringComparison.Ordinal)).Split(" = ")[1]);

    private static void AssertWkt(ExchangeInput input, string record, params Vector3D[] points)
    {
        string shape = record.Split('\n').Single(l => l.TrimStart().StartsWith("POINT", StringComparison.Ordinal) || l.TrimStart().StartsWith("LINESTRING", StringComparison.Ordinal));
        string[] positions = shape[(shape.IndexOf('(', StringComparison.Ordinal) + 1)..shape.IndexOf(')', StringComparison.Ordinal)].Split(',');
        Assert.Equal(points.Length, positions.Length);
        foreach ((Vector3D point, string position) in points.Zip(positions))
        {
            Vector3D expected = NailFigures.Absolute(input, point);
            double[] at = Numbers(position);
            Assert.Equal(expected.E, at[0], 1e-5);
            Assert.Equal(expected.N, at[1], 1e-5);
            Assert.Equal(expected.Z, at[2], 1e-5);
        }
    }
}
