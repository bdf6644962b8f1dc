using System.Text;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Layout lines, profiles and cross sections from LandXML, against the FHWA Bridge Geometry Manual (FHWA-HIF-22-034).</summary>
public sealed class LandXmlTests
{
    private const string Line = "from_landxml: {file: road.xml}", Top = "{from_landxml: {file: road.xml}}";

    [Theory]
    [InlineData("1.0", "<Imperial linearUnit=\"foot\"/>", 1.0, "ft")]
    [InlineData("1.1", "<Imperial linearUnit=\"USSurveyFoot\"/>", 1.0, "us-ft")]
    [InlineData("1.2", "<Imperial linearUnit=\"foot\"/>", 1.0, "ft")]
    [InlineData("2.0", "<Metric linearUnit=\"meter\"/>", 0.3048, "ft")]
    public void Published_points_elevations_and_grades_come_out(string version, string units, double factor, string project)
    {
        using var folder = new InputFolder();
        string profile = factor == 1 ? FhwaAlignment.Profile : Scaled(factor);
        folder.With("road.xml", FhwaAlignment.LandXml(version, units, factor, profile));
        WallProject read = folder.Project(InputFolder.Yaml(Line, Top, "[110+00, 130+00]", project));
        LayoutLine line = read.LayoutLines[0];

        Assert.Equal(FhwaAlignment.PublishedLengths.Length, line.Pieces.Count);
        Assert.Empty(line.Corners);
        Assert.All(line.Pieces.Zip(FhwaAlignment.PublishedLengths), p => Assert.Equal(p.Second, p.First.Length, 4e-6));
        foreach ((double station, double right, double x, double y) in FhwaAlignment.PublishedPoints)
        {
            Vector2D at = line.PointAt(line.AlongOf(station), right) + read.Origin;
            Assert.Equal(x, at.E, 1e-4);
            Assert.Equal(y, at.N, 1e-4);
            LinePlace back = LayoutProjection.Locate(line, at - read.Origin);
            Assert.Equal(line.AlongOf(station), back.Along, 1e-6);
            Assert.Equal(right, back.Right, 1e-6);
        }
        Profile top = read.Walls[0].Top;
        foreach ((double from, double elevation) in FhwaAlignment.PublishedCurve)
            Assert.Equal(elevation, top.At(1200 + from), 0.0051 + 0.001);
        foreach ((double station, double x, double y, double elevation, double grade) in FhwaAlignment.PublishedGrades)
        {
            Vector2D at = line.PointAt(line.AlongOf(station)) + read.Origin;
            Assert.Equal(x, at.E, 0.0051);
            Assert.Equal(y, at.N, 0.0051);
            Assert.Equal(elevation, top.At(line.AlongOf(station)), 0.0051 + 0.001);
            double chord = (top.At(line.AlongOf(station) + 6) - top.At(line.AlongOf(station) - 6)) / 12;
            Assert.Equal(grade, chord, 1.5e-4);
        }
    }

    private static string Scaled(double f) => FormattableString.Invariant($"""
        <Profile><ProfAlign name="FG"><PVI>{10000 * f} {100 * f}</PVI><ParaCurve length="{1600 * f}">{12000 * f} {135 * f}</ParaCurve>
        <ParaCurve length="{1200 * f}">{15000 * f} {105 * f}</ParaCurve><PVI>{17400 * f} {153 * f}</PVI></ProfAlign></Profile>
        """);

    [Fact]
    public void A_rounded_file_has_no_corners_and_keeps_its_coordinates()
    {
        using var folder = new InputFolder();
        string rounded = System.Text.RegularExpressions.Regex.Replace(FhwaAlignment.LandXml(), @"\d+\.\d{4,}", m => Math.Round(double.Parse(m.Value, System.Globalization.CultureInfo.InvariantCulture), 3).ToString("0.000", System.Globalization.CultureInfo.InvariantCulture));
        WallProject read = folder.With("road.xml", rounded).Project(InputFolder.Yaml(Line, Top, "[110+00, 130+00]"));
        LayoutLine line = read.LayoutLines[0];
        Assert.Empty(line.Corners);
        Vector2D end = line.PointAt(line.Length) + read.Origin;
        Assert.Equal(2010, end.N, 0.005);
        Assert.Equal(8480, end.E, 0.005);
    }

    [Fact]
    public void Kinds_of_spirals_are_read_with_their_error_and_others_refused()
    {
        using var folder = new InputFolder();
        foreach (string type in new[] { "clothoid", "bloss", "cosine", "sinusoid", "biquadratic" })
        {
            (Vector2D end, double azimuth) = SpiralTests.Integrate(type, 0, 1 / 500.0, 200);
            string text = SpiralFile(type, end);
            ReadResult result = folder.With("road.xml", text).Read(InputFolder.Yaml(Line, "[[0+00, 100], [2+00, 100]]", "[0+00, 2+00]"));
            Assert.Equal([], result.Problems.Where(p => p.Severity != Severity.Notice).Select(ProblemPrinter.Plain));
            LayoutLine line = result.Project!.LayoutLines[0];
            Assert.Equal(200, line.Length, 1e-9);
            Assert.Equal(azimuth, line.Pieces[^1].AzimuthAt(200) - line.Pieces[0].Azimuth, 1e-6);
            Assert.True((line.PointAt(200) - end).Length < 1e-4, type);
            Assert.Equal(type != "clothoid", result.Problems.Any(p => p.Message.Contains("no clothoids", StringComparison.Ordinal)));
        }
        Assert.Contains(folder.With("road.xml", SpiralFile("radioid", new Vector2D(199, 13))).Problems(InputFolder.Yaml(Line, "[[0+00, 100], [2+00, 100]]", "[0+00, 2+00]")),
            p => p.Contains("road.xml:4:", StringComparison.Ordinal) && p.Contains("error I04: a spiral of type \"radioid\" is not read", StringComparison.Ordinal));
    }

    /// <summary>
    /// Whole alignments of lines, arcs and clothoids by the parameters that alignment segments of IFC have (ISO 16739-1: start direction, radii of
    /// start and end, length), integrated by Simpson's rule; written as LandXML to a thousandth of a millimetre, read, and compared all along.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Alignments_with_clothoids_go_where_their_parameters_lead(int seed)
    {
        const int Steps = 2000;
        var random = new Random(seed);
        double n = 5000 + random.NextDouble(), e = 2000, azimuth = random.NextDouble() * 6, along = 0, before = 0;
        var pieces = new StringBuilder();
        var places = new List<(double Along, Vector2D At)>();
        string Point(string name) => FormattableString.Invariant($"<{name}>{n:0.000000} {e:0.000000}</{name}>");
        for (int i = 0; i < 9; i++)
        {
            // Every clothoid begins with the curvature that the piece before it has.
            bool spiral = i % 2 == 1;
            double length = 20 + 60 * random.NextDouble(), start = before, end = spiral ? random.Next(3) == 0 ? 0 : (random.Next(2) * 2 - 1) / (60 + 400 * random.NextDouble()) : before;
            if (spiral && Math.Abs(end - start) < 1e-4)
                end = start + 0.004;
            if (start * end < 0)
                end = 0;
            string from = Point("Start");
            double a0 = azimuth, n0 = n, e0 = e;
            double Angle(double s) => a0 + start * s + (end - start) * s * s / (2 * length);
            for (int k = 0; k < Steps; k++)
            {
                double s = length * k / Steps, h = length / Steps;
                n += h / 6 * (Math.Cos(Angle(s)) + 4 * Math.Cos(Angle(s + h / 2)) + Math.Cos(Angle(s + h)));
                e += h / 6 * (Math.Sin(Angle(s)) + 4 * Math.Sin(Angle(s + h / 2)) + Math.Sin(Angle(s + h)));
                if (k % 50 == 0)
                    places.Add((along + s + h, new Vector2D(n, e)));
            }
            azimuth = Angle(length);
            string Radius(double k) => k == 0 ? "INF" : FormattableString.Invariant($"{Math.Abs(1 / k):0.000000}");
            string rot = start + end > 0 ? "cw" : "ccw";
            // The centre of an arc lies square to its start, on the side to which it turns.
            string center = start == 0 ? "" : FormattableString.Invariant($"<Center>{n0 - Math.Sin(a0) / start:0.000000} {e0 + Math.Cos(a0) / start:0.000000}</Center>");
            pieces.Append(spiral ? FormattableString.Invariant($"<Spiral spiType=\"clothoid\" rot=\"{rot}\" length=\"{length:0.000000}\" radiusStart=\"{Radius(start)}\" radiusEnd=\"{Radius(end)}\">{from}{Point("End")}</Spiral>\n")
                : start == 0 ? $"<Line>{from}{Point("End")}</Line>\n" : FormattableString.Invariant($"<Curve rot=\"{rot}\" radius=\"{Radius(start)}\">{from}{center}{Point("End")}</Curve>\n"));
            along += length;
            before = end;
        }
        using var folder = new InputFolder();
        folder.With("road.xml", $"<LandXML version=\"1.2\"><Units><Metric linearUnit=\"meter\"/></Units><Alignments><Alignment name=\"A\" staStart=\"0\"><CoordGeom>\n{pieces}</CoordGeom></Alignment></Alignments></LandXML>");
        ReadResult read = folder.Read(InputFolder.Yaml(Line, "[[0, 88], [0+015, 88]]", "[0, 0+015]", "m"));
        Assert.Equal([], read.Problems.Where(p => p.Severity == Severity.Error || p.Code[0] == 'I' && p.Code != "I07").Select(ProblemPrinter.Plain));
        WallProject project = read.Project!;
        LayoutLine line = project.LayoutLines[0];
        Assert.Equal(along, line.Length, 1e-4);
        Assert.All(places, p => Assert.True((line.PointAt(Math.Min(p.Along, line.Length)) + project.Origin - p.At).Length < 1e-4, $"{p.Along}"));
    }

    private static string SpiralFile(string type, Vector2D end) => FormattableString.Invariant($"""
        <LandXML version="1.2"><Units><Imperial linearUnit="foot"/></Units>
        <Alignments><Alignment name="S" staStart="0">
        <CoordGeom>
        <Spiral spiType="{type}" rot="cw" length="200" radiusStart="INF" radiusEnd="500"><Start>0 0</Start><End>{end.N:R} {end.E:R}</End></Spiral>
        </CoordGeom></Alignment></Alignments></LandXML>
        """);

    [Fact]
    public void Station_equations_of_the_file_are_printed_and_read()
    {
        using var folder = new InputFolder();
        folder.With("road.xml", FhwaAlignment.LandXml(more: "<StaEquation staInternal=\"11250\" staBack=\"11250\" staAhead=\"11200\"/>" + FhwaAlignment.Profile));
        WallProject read = folder.Project(InputFolder.Yaml(Line, Top, "[112+20 AH, 120+00]"));
        Wall wall = read.Walls[0];
        Assert.Equal(1270, wall.Start, 1e-9);
        Assert.Equal("112+20.00 AH", wall.StationText(wall.Start, read.Unit));
        // The profile's stations are internal: the crest's start at 112+00 is 1200 from the start, whatever is printed there.
        Assert.Equal(121.0 + 70 * 0.0175, wall.Top.At(1270), 0.3);
    }

    /// <summary>Each was once passed over: stations counted from 0, an equation laid elsewhere, a station that falls read as one that rises, a piece dropped.</summary>
    [Theory]
    [InlineData("staStart=\"10000\"", "staStart=\"100+00\"", "", "error I04: the station of the alignment's start (staStart) is not a number")]
    [InlineData("staStart=\"10000\"", "", "", "warning I06: the alignment does not tell the station of its start (staStart): 0 is taken")]
    [InlineData("", "", "<StaEquation staInternal=\"11250\" staAhead=\"11200\" staIncrement=\"decreasing\"/>", "error I04: stations fall from this equation on")]
    [InlineData("<CoordGeom>", "<CoordGeom><Helix/>", "", "error I04: a piece \"Helix\" is not read")]
    public void What_cannot_be_read_of_an_alignment_is_told(string from, string to, string more, string told)
    {
        using var folder = new InputFolder();
        string text = FhwaAlignment.LandXml(more: more + FhwaAlignment.Profile);
        Assert.Contains(from, text, StringComparison.Ordinal);
        folder.With("road.xml", from.Length == 0 ? text : text.Replace(from, to, StringComparison.Ordinal));
        Assert.Contains(folder.Problems(InputFolder.Yaml(Line, Top, "[110+00, 120+00]")), p => p.StartsWith("road.xml:", StringComparison.Ordinal) && p.Contains(told, StringComparison.Ordinal));
    }

    [Fact]
    public void Equations_without_a_place_go_on_from_each_other()
    {
        using var folder = new InputFolder();
        folder.With("road.xml", FhwaAlignment.LandXml(more: "<StaEquation staBack=\"11250\" staAhead=\"15000\"/><StaEquation staBack=\"15100\" staAhead=\"20000\"/>" + FhwaAlignment.Profile));
        WallProject read = folder.Project(InputFolder.Yaml(Line, Top, "[150+20, 200+50]"));
        Assert.Equal((1270, 1400), (Math.Round(read.Walls[0].Start, 9), Math.Round(read.Walls[0].End, 9)));
    }

    /// <summary>A crest's radius is negative in some programs' files; it was once left out, so that the top ran to a peak.</summary>
    [Fact]
    public void A_circular_curve_counts_whatever_the_sign_of_its_radius_and_a_negative_length_is_a_fault()
    {
        using var folder = new InputFolder();
        string Curve(string kind, string size) => $"<Profile><ProfAlign name=\"FG\"><PVI>10000 100</PVI><{kind} {size}>12000 140</{kind}><PVI>17400 32</PVI></ProfAlign></Profile>";
        double At(string kind, string size) => folder.With("road.xml", FhwaAlignment.LandXml(more: Curve(kind, size))).Project(InputFolder.Yaml(Line, Top, "[110+00, 130+00]")).Walls[0].Top.At(2000);
        Assert.Equal(140 - 20000 * (1 / Math.Cos(0.02) - 1), At("CircCurve", "length=\"800\" radius=\"-20000\""), 0.003);
        Assert.Equal(At("CircCurve", "length=\"800\" radius=\"20000\""), At("CircCurve", "length=\"800\" radius=\"-20000\""), 1e-9);
        folder.With("road.xml", FhwaAlignment.LandXml(more: Curve("ParaCurve", "length=\"-800\"")));
        Assert.Contains(folder.Problems(InputFolder.Yaml(Line, Top, "[110+00, 130+00]")), p => p.Contains("error I04: the vertical curve's length is negative", StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_in_a_code_page_is_read_and_one_in_an_unknown_encoding_says_so()
    {
        using var folder = new InputFolder();
        string Named(string encoding) => FhwaAlignment.LandXml().Replace("\"utf-8\"", $"\"{encoding}\"", StringComparison.Ordinal).Replace("\"Ramp\"", "\"Rampe S\u00fcd\"", StringComparison.Ordinal);
        string yaml = InputFolder.Yaml("from_landxml: {file: road.xml, alignment: Rampe S\u00fcd}", "[[110+00, 100], [120+00, 100]]", "[110+00, 120+00]");
        File.WriteAllBytes(folder.Of("road.xml"), Encoding.Latin1.GetBytes(Named("windows-1252")));
        Assert.NotNull(folder.Read(yaml).Project);
        File.WriteAllBytes(folder.Of("road.xml"), [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Named("utf-16"))]);
        Assert.NotNull(folder.Read(yaml).Project);
        foreach (string encoding in new[] { "utf-8", "nonsense-7" })
        {
            File.WriteAllBytes(folder.Of("road.xml"), Encoding.Latin1.GetBytes(Named(encoding)));
            Assert.Contains(folder.Problems(yaml), p => p.Contains("it is not in the encoding that its first line names", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Cross_sections_on_the_wall_become_the_ground_in_front()
    {
        using var folder = new InputFolder();
        folder.With("road.xml", FhwaAlignment.LandXml(more: FhwaAlignment.Profile + """
            <CrossSects>
            <CrossSect sta="11000"><CrossSectSurf name="EG"><PntList2D>-50 90 -10 98 10 102 40 108</PntList2D></CrossSectSurf></CrossSect>
            <CrossSect sta="11100"><CrossSectSurf name="EG"><PntList2D>-50 91 0 99 40 108</PntList2D></CrossSectSurf></CrossSect>
            <CrossSect sta="15000"><CrossSectSurf name="EG"><PntList2D>-50 91 0 99 40 108</PntList2D></CrossSectSurf></CrossSect>
            </CrossSects>
            """));
        WallProject read = folder.Project(InputFolder.Yaml(Line, Top, "[110+00, 120+00]").Replace("    bottom:", "    cross_sections: {from_landxml: {file: road.xml}}\n    bottom:", StringComparison.Ordinal));
        IReadOnlyList<CrossSection> sections = read.Walls[0].CrossSections;
        Assert.Equal(2, sections.Count);
        // Soil on the right: what lies on the left, at negative offsets, is in front. At the face (offset 0) the ground is half way between.
        Assert.Equal([new(0, 100), new(10, 98), new(50, 90)], sections[0].Ground);
    }

    /// <summary>Several lists of points are a surface with gaps: a profile once ran over them without a word, and of a cross section only the first list was read.</summary>
    [Fact]
    public void Gaps_of_a_surface_are_told_and_the_part_at_the_face_is_taken()
    {
        using var folder = new InputFolder();
        const string Gaps = "<Profile><ProfSurf name=\"EG\"><PntList2D>10000 100 11040 100</PntList2D><PntList2D>11060 100 11500 100</PntList2D><PntList2D>11500 100 12000 100</PntList2D><PntList2D>12900 100 13000 100</PntList2D></ProfSurf></Profile>";
        folder.With("road.xml", FhwaAlignment.LandXml(more: Gaps + """
            <CrossSects>
            <CrossSect sta="11000"><CrossSectSurf name="EG"><PntList2D>-90 80 -60 84</PntList2D><PntList2D>-50 90 -10 98 10 102</PntList2D><PntList2D>20 102 40 108</PntList2D></CrossSectSurf></CrossSect>
            </CrossSects>
            """));
        ReadResult read = folder.Read(InputFolder.Yaml(Line, Top, "[110+00, 119+00]").Replace("    bottom:", "    cross_sections: {from_landxml: {file: road.xml}}\n    bottom:", StringComparison.Ordinal));
        Assert.Equal(["the profile has a gap from station 11040 to 11060: a straight line is taken over it"], read.Problems.Where(p => p.Code is "I06" or "I05").Select(p => p.Message));
        Assert.Equal([new(0, 100), new(10, 98), new(50, 90)], Assert.Single(read.Project!.Walls[0].CrossSections).Ground);
    }

    [Fact]
    public void Faults_name_the_file_and_the_line()
    {
        using var folder = new InputFolder();
        folder.With("road.xml", FhwaAlignment.LandXml());
        string[] Of(string line, string top = "[[110+00, 100], [130+00, 100]]") => folder.Problems(InputFolder.Yaml(line, top, "[110+00, 130+00]"));
        Assert.Contains(Of("from_landxml: {file: road.xml, alignment: Loop}"), p => p.Contains("wall.yaml:5:", StringComparison.Ordinal) && p.Contains("error I03: the file has no alignment \"Loop\" (it has Ramp)", StringComparison.Ordinal));
        Assert.Contains(Of("from_landxml: {file: none.xml}"), p => p.Contains("error R01: \"none.xml\" cannot be read: there is no such file", StringComparison.Ordinal));
        Assert.Contains(Of(Line, "{from_landxml: {file: road.xml, profile: EG}}"), p => p.Contains("error I03: the file has no profile \"EG\" (it has FG)", StringComparison.Ordinal));
        folder.With("gap.xml", FhwaAlignment.LandXml().Replace("<Start>2500 500</Start>", "<Start>2500 500</Start>", StringComparison.Ordinal).Replace("rot=\"ccw\" radius=\"1000\"", "radius=\"1000\"", StringComparison.Ordinal));
        Assert.Contains(Of("from_landxml: {file: gap.xml}"), p => p.StartsWith("gap.xml:7:", StringComparison.Ordinal) && p.Contains("does not tell to which side it turns", StringComparison.Ordinal));
    }
}
