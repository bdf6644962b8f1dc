using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Plan;

public class NailLimitTests
{
    [Theory]
    [InlineData("")]
    [InlineData("\nbatter: {angle: 6 deg, elevation: 95}")]
    public void The_limit_stands_from_the_drawn_face_by_the_distance_that_is_printed(string batter)
    {
        string yaml = OneWall.Yaml("Limit", "ft", "station: 1+00, northing: 0, easting: 0, azimuth: 90", "{line: 80}",
            """
            retained_side: left
            name: W
            stations: [1+00, 1+80]
            top: [[1+00, 120], [1+80, 120]]
            bottom: {steps: [[1+00, 98], [1+40, 102]]}
            """ + batter,
            "name: A, stations: [1+00, 1+80], horizontal_spacing: 5, vertical_spacing: 5, rows: level, top_row_depth: 2, inclination: 15, lengths: 20",
            "bar: {size: \"#8\", grade: 75}, hole: 6 in", "");
        DrawingContext context = PlacedWall.Context(yaml);
        Wall wall = context.Project.Walls[0];
        var face = new Face(wall);

        NailLimit limit = Assert.Single(new PlanModel(context, default).NailLimits(wall));

        double[] distances = [.. limit.Line.Select(p => (Along: LayoutProjection.Locate(wall.LayoutLine, p).Along, Point: p))
            .Select(p => (p.Point - wall.LayoutLine.PointAt(p.Along) - face.NormalAt(p.Along) * face.OffsetAt(wall.Bottom.At(p.Along))).Length)];
        Assert.Equal(distances.Max(), limit.FromFace, 6);
    }

    /// <summary>Two limits of one sheet in words are told apart by the design zone that each names.</summary>
    [Theory]
    [InlineData("heron-street-bridge")]
    [InlineData("two walls")]
    [InlineData("corner")]
    [InlineData("random 709")]
    public void Limits_in_words_name_their_zones(string wall)
    {
        SheetSet set = PlacedWall.Sheets(PlacedWall.Context(wall switch
        {
            "two walls" => SampleWalls.TwoWalls,
            "corner" => MarkWalls.Corner,
            "heron-street-bridge" => Repository.Read("demo", wall, "wall.yaml"),
            _ => RandomWall.Yaml(ulong.Parse(wall[7..], CultureInfo.InvariantCulture)),
        }));

        foreach (Sheet sheet in set.Sheets)
        {
            string written = string.Join("\n", SheetPicture.Of(set, sheet).Select(p => p.Primitive).OfType<Text>().Select(t => t.Value));
            string[] told = [.. Regex.Matches(written, @"LIMIT OF LONGEST NAIL,\s+(.*?)\s+FROM\s+FACE", RegexOptions.Singleline).Select(m => m.Groups[1].Value)];
            Assert.True(told.Length < 2 || told.All(t => t.StartsWith("DESIGN ZONE", StringComparison.Ordinal)), $"{sheet.Name}: {string.Join("; ", told)}");
            Assert.Equal(told.Distinct().Count(), told.Length);
        }
    }
}
