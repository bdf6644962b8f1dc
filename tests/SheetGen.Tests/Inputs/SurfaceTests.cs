using System.Globalization;
using System.Text;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Surfaces of triangles in LandXML files as ground along the face and in front of it.</summary>
public sealed class SurfaceTests
{
    private const string Straight = "start: {station: 10+00, northing: 5000, easting: 2000, azimuth: 62}\n    elements: [{line: 150}]";

    private const string Bent = "start: {station: 10+00, northing: 5000, easting: 2000, azimuth: 62}\n    elements: [{line: 40}, {arc: {radius: 90, length: 60, turn: left}}, {spiral: {length: 30, start_radius: 90, turn: left}}, {line: 20}]";

    private const string Top = "[[10+00, 130], [11+50, 130]]";

    /// <summary>A net of points at random places and elevations, each square of it cut in two.</summary>
    private static (double N, double E, double Z)[] Points(int seed, Func<double, double, double>? level = null)
    {
        var random = new Random(seed);
        return
        [
            .. Enumerable.Range(0, 26 * 26).Select(i => (N: 4880 + i / 26 * 12 + 6 * random.NextDouble(), E: 1900 + i % 26 * 12 + 6 * random.NextDouble()))
                .Select(p => (p.N, p.E, level?.Invoke(p.N, p.E) ?? 100 + 8 * random.NextDouble())),
        ];
    }

    private static int[][] Faces() => [.. Enumerable.Range(0, 25 * 25).SelectMany(i => new[] { i / 25 * 26 + i % 25 }.SelectMany(a => new int[][] { [a, a + 1, a + 26], [a + 1, a + 27, a + 26] }))];

    private static string LandXml((double N, double E, double Z)[] points, IEnumerable<int[]> faces, string linear = "foot", double per = 1)
    {
        var text = new StringBuilder($"<LandXML version=\"1.2\"><Units><Imperial linearUnit=\"{linear}\"/></Units><Surfaces><Surface name=\"EG\"><Definition surfType=\"TIN\"><Pnts>");
        for (int i = 0; i < points.Length; i++)
            text.Append(CultureInfo.InvariantCulture, $"<P id=\"{i + 1}\">{points[i].N * per:R} {points[i].E * per:R} {points[i].Z * per:R}</P>");
        text.Append("</Pnts><Faces>");
        foreach (int[] face in faces)
            text.Append(CultureInfo.InvariantCulture, $"<F>{face[0] + 1} {face[1] + 1} {face[2] + 1}</F>");
        return text.Append("<F i=\"1\">1 2 3</F></Faces></Definition></Surface></Surfaces></LandXML>").ToString();
    }

    private static string Yaml(string line, string more) =>
        InputFolder.Yaml(line, Top, "[10+00, 11+50]").Replace("    bottom:", $"    face_offset: 3\n    {more}\n    bottom:", StringComparison.Ordinal);

    /// <summary>The elevation under a point, by looking at every triangle.</summary>
    private static double Under((double N, double E, double Z)[] points, int[][] faces, Vector2D at)
    {
        foreach (int[] f in faces)
        {
            ((double N, double E, double Z) a, (double N, double E, double Z) b, (double N, double E, double Z) c) = (points[f[0]], points[f[1]], points[f[2]]);
            double area = (b.N - a.N) * (c.E - a.E) - (b.E - a.E) * (c.N - a.N);
            double v = ((at.N - a.N) * (c.E - a.E) - (at.E - a.E) * (c.N - a.N)) / area, w = ((b.N - a.N) * (at.E - a.E) - (b.E - a.E) * (at.N - a.N)) / area;
            if (v >= -1e-12 && w >= -1e-12 && v + w <= 1 + 1e-12)
                return a.Z + v * (b.Z - a.Z) + w * (c.Z - a.Z);
        }
        throw new InvalidOperationException("outside");
    }

    [Theory]
    [InlineData(Straight, 1e-6)]
    [InlineData(Bent, 0.004)]
    public void The_ground_along_the_face_is_that_under_each_of_its_points(string line, double error)
    {
        using var folder = new InputFolder();
        (double N, double E, double Z)[] points = Points(7);
        folder.With("eg.xml", LandXml(points, Faces()));
        WallProject project = folder.Project(Yaml(line, "existing_ground: {from_landxml: {file: eg.xml, surface: EG}}"));
        Wall wall = project.Walls[0];
        for (int i = 0; i <= 1500; i++)
        {
            double s = wall.Start + (wall.End - wall.Start) * i / 1500;
            Assert.Equal(Under(points, Faces(), wall.LayoutLine.PointAt(s, 3) + project.Origin), wall.ExistingGround!.At(s), error);
        }
    }

    [Fact]
    public void Cuts_in_front_of_the_face_are_those_of_the_surface_and_units_are_converted()
    {
        using var folder = new InputFolder();
        (double N, double E, double Z)[] points = Points(9);
        const double survey = 0.3048 * 3937 / 1200; // Feet in US survey feet.
        folder.With("eg.xml", LandXml(points, Faces(), "USSurveyFoot", survey));
        ReadResult read = folder.Read(Yaml(Straight, "cross_sections: {from_landxml: {file: eg.xml, surface: EG, every: 40, reach: 35, raise: 1.5}}"));
        WallProject project = read.Project!;
        Wall wall = project.Walls[0];
        Assert.Equal([0, 40, 80, 120, 150], wall.CrossSections.Select(c => Math.Round(c.Along, 6)));
        foreach (CrossSection section in wall.CrossSections)
        {
            Assert.Equal(35, section.Ground[^1].InFront, 1e-6);
            for (double d = 0; d <= 35; d += 0.1)
            {
                int k = Math.Max(0, section.Ground.ToList().FindLastIndex(g => g.InFront <= d + 1e-9));
                var (a, b) = (section.Ground[k], section.Ground[Math.Min(k + 1, section.Ground.Count - 1)]);
                double z = b.InFront > a.InFront ? a.Elevation + (b.Elevation - a.Elevation) * (d - a.InFront) / (b.InFront - a.InFront) : a.Elevation;
                Assert.Equal(Under(points, Faces(), wall.LayoutLine.PointAt(section.Along, 3 - d) + project.Origin) + 1.5, z, 1e-5);
            }
        }
        Assert.Contains(read.Problems, p => p.Code == "I07" && p.Message == "\"cross_sections\" are 5 cuts through surface \"EG\", up to 35 ft in front of the face");
    }

    [Fact]
    public void A_plane_needs_two_points_however_many_triangles_it_has()
    {
        using var folder = new InputFolder();
        folder.With("eg.xml", LandXml(Points(3, (n, e) => 100 + 0.01 * (n - 5000) + 0.03 * (e - 2000)), Faces()));
        ReadResult read = folder.Read(Yaml(Straight, "existing_ground: {from_landxml: {file: eg.xml, surface: EG}}"));
        Assert.Contains(read.Problems, p => p.Message == "\"existing_ground\" is surface \"EG\" along the face: 2 points");
    }

    [Fact]
    public void A_surface_that_does_not_cover_the_face_or_lies_over_itself_is_refused_with_the_station()
    {
        using var folder = new InputFolder();
        string Told(IEnumerable<int[]> faces, string surface = "EG")
        {
            folder.With("eg.xml", LandXml(Points(7), faces));
            return string.Join('\n', folder.Problems(Yaml(Straight, $"existing_ground: {{from_landxml: {{file: eg.xml, surface: {surface}}}}}")));
        }
        Assert.Contains("error I03: the file has no surface \"FG\" (it has EG)", Told(Faces(), "FG"), StringComparison.Ordinal);
        Assert.Matches("eg.xml:1:[0-9]+: error I04: surface \"EG\" cannot be used: it does not go over the face at 1[01]\\+[0-9.]+", Told(Faces().Where((_, i) => i % 50 < 30)));
        Assert.Contains("it has no triangles", Told([]), StringComparison.Ordinal);
        Assert.Contains("it lies over itself near", Told(Faces().Append([0, 25, 26 * 26 - 1]).Append([0, 26 * 26 - 1, 25 * 26])), StringComparison.Ordinal);
        folder.With("eg.xml", LandXml(Points(7), Faces()).Replace("<P id=\"1\">", "<P id=\"1\">x ", StringComparison.Ordinal));
        Assert.Contains(folder.Problems(Yaml(Straight, "existing_ground: {from_landxml: {file: eg.xml, surface: EG}}")), p => p.Contains("error I04: surface \"EG\" cannot be used: a point of it has no name, or is not northing, easting and elevation", StringComparison.Ordinal));
        folder.With("eg.xml", LandXml(Points(7), Faces()).Replace("<P id=\"2\">", "<P id=\"1\">", StringComparison.Ordinal));
        Assert.Contains(folder.Problems(Yaml(Straight, "existing_ground: {from_landxml: {file: eg.xml, surface: EG}}")), p => p.Contains("cannot be used: two points of it have the name 1", StringComparison.Ordinal));
        folder.With("eg.xml", LandXml(Points(7), Faces()).Replace("<F>1 2 27</F>", "<F>1 2 28 27</F>", StringComparison.Ordinal));
        Assert.Contains(folder.Problems(Yaml(Straight, "existing_ground: {from_landxml: {file: eg.xml, surface: EG}}")), p => p.Contains("cannot be used: a face of it names no three points", StringComparison.Ordinal));
    }
}
