using FsCheck.Xunit;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Plan points by station and offset, relative to the project's origin.</summary>
public sealed class PointTests
{
    /// <summary>
    /// N = N0 + s cos(az) + o cos(az + 90), E = E0 + s sin(az) + o sin(az + 90). The rows are published in the survey command help of a
    /// general civil drawing program (origin 1000, 1000, azimuth 100 degrees inferred from the results), and recomputed.
    /// </summary>
    [Theory]
    [InlineData("220", "15.24", "right", 946.7889, 1214.0113)]
    [InlineData("270", "-15.24", "right", 968.1235, 1268.5445)]
    [InlineData("220", "-15.24", "left", 946.7889, 1214.0113)]
    [InlineData("270", "15.24", "left", 968.1235, 1268.5445)]
    public void Station_and_offset_give_the_published_coordinates(string station, string offset, string side, double northing, double easting)
    {
        WallProject project = BaseWall.Read(Line(side, $"{{station: {station}, offset: {offset}}}"));

        Vector3D at = project.Obstructions[0].Shape[0];
        Assert.Equal(northing, project.Origin.N + at.N, 1e-4);
        Assert.Equal(easting, project.Origin.E + at.E, 1e-4);
    }

    [Fact]
    public void Points_beyond_the_ends_of_the_line_lie_on_its_straight_prolongation()
    {
        Vector3D before = Shaft("{station: -50, offset: 10}"), beyond = Shaft("{station: 350, offset: 10}");
        (double sin, double cos) = Math.SinCos(100 * Math.PI / 180);

        Assert.Equal(-50 * cos - 10 * sin, before.N, 1e-9);
        Assert.Equal(-50 * sin + 10 * cos, before.E, 1e-9);
        Assert.Equal(350 * cos - 10 * sin, beyond.N, 1e-9);
        Assert.Equal(350 * sin + 10 * cos, beyond.E, 1e-9);
    }

    [Fact]
    public void State_plane_coordinates_lose_nothing()
    {
        string text = BaseWall.With("northing: 5000, easting: 2000", "northing: 13456789.1234, easting: 9876543.4321");
        text = BaseWall.Replace(text, "at: {station: 10+32, offset: 8}", "at: {northing: 13456781.2234, easting: 9876575.5321}");
        WallProject project = BaseWall.Read(text);

        Vector3D at = project.Obstructions[0].Shape[0];
        Assert.Equal(-7.9, at.N);
        Assert.Equal(32.1, at.E);
        Assert.Equal(13456789.1234, project.Origin.N);
        Assert.Equal(0, project.LayoutLines[0].PointAt(0).N);
    }

    [Property]
    public bool Shifted_coordinates_give_the_same_geometry_to_the_last_bit(int north, int east)
    {
        decimal n = north % 10_000_000 + 0.125m, e = east % 10_000_000 + 0.375m;
        WallProject here = BaseWall.Read(Shifted(0, 0)), there = BaseWall.Read(Shifted(n, e));
        return here.Obstructions[0].Shape.SequenceEqual(there.Obstructions[0].Shape);
    }

    [Fact]
    public void Where_walls_retain_different_sides_the_named_wall_gives_the_side()
    {
        string text = BaseWall.With("obstructions:\n", SecondWall + "obstructions:\n");
        text = text[..text.IndexOf("obstructions:", StringComparison.Ordinal)] + """
            obstructions:
              - {name: S1, kind: shaft, at: {station: 10+32, offset: 8, wall: W1}, diameter: 3, top: 117, bottom: 70}
              - {name: S2, kind: shaft, at: {station: 10+32, offset: 8, wall: West}, diameter: 3, top: 117, bottom: 70}
              - {name: S3, kind: shaft, at: {station: 10+32, offset: 0}, diameter: 3, top: 117, bottom: 70}
            """;
        WallProject project = BaseWall.Read(text);

        Assert.Equal([-8, 8, 0], project.Obstructions.Select(o => Math.Round(o.Shape[0].N, 9) + 0.0));
    }

    [Fact]
    public void Coordinates_and_distances_may_carry_their_own_units()
    {
        WallProject project = BaseWall.Read(BaseWall.With("at: {station: 10+32, offset: 8}", "at: {northing: 1521.5616 m, easting: 24384 in}"));

        Assert.Equal(new Vector3D(-8, 32, 117), project.Obstructions[0].Shape[0]);
    }

    private const string SecondWall = """
          - name: West
            retained_side: left
            stations: [10+00, 10+50]
            top: [[10+00, 118], [11+00, 120]]
            bottom: {steps: [[10+00, 102]]}
            sections:
              - {name: A, stations: [10+00, 10+50], horizontal_spacing: 5, vertical_spacing: 5, top_row_depth: 2, inclination: 15, lengths: 20, bar: {size: 8, grade: 75}, hole: 6 in}

        """;

    private static Vector3D Shaft(string at) => BaseWall.Read(Line("right", at)).Obstructions[0].Shape[0];

    private static string Shifted(decimal north, decimal east)
    {
        string text = BaseWall.With("northing: 5000, easting: 2000", FormattableString.Invariant($"northing: {5000.1m + north}, easting: {2000.7m + east}"));
        return BaseWall.Replace(text, "at: {station: 10+32, offset: 8}", FormattableString.Invariant($"at: {{northing: {4992.37m + north}, easting: {2032.91m + east}}}"));
    }

    private static string Line(string side, string at) => $$"""
        format: 1
        project: {title: Points, units: m}
        layout_lines:
          - {name: L, start: {station: 0, northing: 1000, easting: 1000, azimuth: 100 deg}, elements: [{line: 300}]}
        walls:
          - name: W
            retained_side: {{side}}
            stations: [0, 300]
            top: [[0, 10], [300, 10]]
            bottom: {steps: [[0, 4]]}
            sections:
              - {name: A, stations: [0, 300], horizontal_spacing: 1.5, vertical_spacing: 1.5, top_row_depth: 0.6, inclination: 15, lengths: 6, bar: {size: 8, grade: 75}, hole: 150 mm}
        obstructions:
          - {name: S, kind: shaft, at: {{at}}, diameter: 900 mm, top: 9, bottom: 1, in_front: true}
        """;
}
