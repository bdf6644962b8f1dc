using System.Globalization;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

public class DevelopedFaceTests
{
    private static Wall WallOf(string elements, string more) => SampleLayout.Read($$"""
        format: 1
        project: {title: Developed, units: ft}
        layout_lines:
          - name: L
            start: {station: 10+00, northing: 0, easting: 0, azimuth: 90}
            elements: {{elements}}
        walls:
          - name: W
            layout_line: L
            retained_side: right
            stations: [10+10, 10+90]
            {{more}}
            top: [[10+10, 20], [10+90, 20]]
            bottom: {steps: [[10+10, 0]]}
            sections:
              - {name: A, stations: [10+10, 10+90], horizontal_spacing: 5, vertical_spacing: 5, rows: level, pattern: square, top_row_depth: 2, inclination: 15, lengths: 20, bar: {size: "#8", grade: 75}, hole: 6 in}
        """).Walls[0];

    [Fact]
    public void A_straight_wall_is_as_long_as_its_line()
    {
        var face = new DevelopedFace(WallOf("[{line: 100}]", "face_offset: 3"));

        Assert.Equal([(1010.0, 1010.0), (1090.0, 1090.0)], face.Pairs);
        Assert.Equal(1042.5, face.At(42.5), 9);
    }

    /// <summary>Soil to the right, the arc turns right, the face 3 ft into the soil: a foot of it is (R - 3) / R feet of the line.</summary>
    [Fact]
    public void An_arc_has_the_length_of_the_face()
    {
        var face = new DevelopedFace(WallOf("[{line: 30}, {arc: {radius: 60, length: 40, turn: right}}, {line: 30}]", "face_offset: 3"));

        Assert.Equal(1030 + 40 * 57.0 / 60 + 20, face.At(90), 9);
        Assert.Equal(4, face.Pairs.Count());
    }

    /// <summary>The mitre takes 3 * tan(30) from both legs of an outside corner of 60 degrees, and gives as much at an inside corner.</summary>
    [Theory]
    [InlineData("right", -1)]
    [InlineData("left", 1)]
    public void A_corner_takes_from_both_legs_or_gives_to_both(string turn, int sign)
    {
        var face = new DevelopedFace(WallOf($"[{{line: 50}}, {{corner: {{turn: {turn}, angle: 60}}}}, {{line: 50}}]", "face_offset: 3"));
        double cut = 3 * Math.Tan(Math.PI / 6);

        Assert.Equal(1090 + sign * 2 * cut, face.At(90), 9);
        Assert.Equal(sign > 0 ? 2 * cut : 0, face.Jumps, 9);
        if (sign > 0)
            Assert.Equal(2 * cut, face.At(50) - face.Before(50), 9);
    }

    /// <summary>Chords of a fine walk along the face's own points, on an arc with offset, add up to the same.</summary>
    [Fact]
    public void It_agrees_with_a_walk_along_the_face()
    {
        Wall wall = WallOf("[{line: 25}, {arc: {radius: 80, length: 50, turn: left}}, {line: 25}]", "face_offset: 2\n    batter: {angle: 6, elevation: 10}");
        var face = new Face(wall);
        var developed = new DevelopedFace(wall);
        double walked = 0;
        const int Steps = 80_000;
        for (int i = 0; i < Steps; i++)
        {
            double a = wall.Start + (wall.End - wall.Start) * i / Steps, b = wall.Start + (wall.End - wall.Start) * (i + 1) / Steps;
            walked += (face.PointAt(b, 0).Plan - face.PointAt(a, 0).Plan).Length;
        }

        Assert.Equal(walked, developed.At(wall.End) - developed.At(wall.Start), 4);
    }

    public static TheoryData<string> BentWalls => new(MarkWalls.Arc, MarkWalls.Corner);

    /// <summary>The pairs of the frame are all that a reader needs to find a nail's station from its place.</summary>
    [Theory]
    [MemberData(nameof(BentWalls))]
    public void The_frames_pairs_lead_from_a_nails_place_back_to_its_station(string yaml)
    {
        WallProject project = SampleLayout.Read(yaml);
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        SheetSet set = SampleSheets.Compose(project, layout);
        IReadOnlyList<string> data = set.Model.OfType<Polyline>().Single(p => p.Data.Any(d => d.StartsWith("wall=", StringComparison.Ordinal))).Data;
        double[] Numbers(string text) => [.. text.Split(',').Select(n => double.Parse(n[(n.IndexOf('=') + 1)..], CultureInfo.InvariantCulture))];
        (double Developed, double Line)[] pairs = [.. data.Where(d => d.StartsWith("developed=", StringComparison.Ordinal)).Select(Numbers).Select(n => (n[0], n[1]))];
        double sign = Numbers(data.Single(d => d.StartsWith("sign=", StringComparison.Ordinal)))[0], origin = Numbers(data.Single(d => d.StartsWith("origin=", StringComparison.Ordinal)))[0];

        foreach (Nail nail in layout.Nails)
        {
            double developed = (set.Model.OfType<BlockReference>().Single(b => b.Nail == nail.Mark).Position.X - origin) / sign;
            int i = Math.Clamp(Array.FindLastIndex(pairs, p => p.Developed <= developed + 1e-9), 0, pairs.Length - 2);
            while (pairs[i + 1].Developed <= pairs[i].Developed && i > 0)
                i--;
            (double d0, double l0) = pairs[i];
            (double d1, double l1) = pairs[i + 1];
            Assert.Equal(nail.Station, l0 + (l1 - l0) * (developed - d0) / (d1 - d0), 4);
        }
    }
}
