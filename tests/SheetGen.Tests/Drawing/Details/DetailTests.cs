using System.Globalization;
using SheetGen.Drawing.Details;
using SheetGen.Drawing.Primitives;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Details;

/// <summary>The details measure to the project's own figures, and what it does not give is a blank.</summary>
public class DetailTests
{
    private static IReadOnlyList<DrawnDetail> Of(string yaml, string? language = null)
    {
        WallProject project = SampleLayout.Read(yaml);
        return DrawnDetail.All(DrawnDetail.ContextOf(project, SampleLayout.Make(project), language, 1.334));
    }

    /// <summary>What each detail of the wall in feet measures, from its project file.</summary>
    [Theory]
    [InlineData(DetailKind.Head, "4.5\"", "9\"", "1\"", "6\"", "8\"", "1.5\"", "5\"")]
    [InlineData(DetailKind.Hole, "24.00'", "7.00'~", "2.00'")]
    [InlineData(DetailKind.Bore, "6\"", "1.128\"", "2.436\" GROUT")]
    [InlineData(DetailKind.Facing, "SHOTCRETE 4.5\"", "6\"", "GAP 7\"", "9\"", "COVER: 2.5\"")]
    [InlineData(DetailKind.Top, "24\"", "12\"", "6\"", "GAP 7\"")]
    [InlineData(DetailKind.Outlet, "2.25' MIN. EMBED.", "18\"", "6\"", "3\"")]
    [InlineData(DetailKind.Strips, "14\"", "4.5\"")]
    [InlineData(DetailKind.Lap, "LAP 10\"", "SHOTCRETE 4.5\"")]
    [InlineData(DetailKind.Joint, "CUT 1.75' BELOW THE ROW", "LAP MESH AND BARS 9\"", "4.5\"")]
    [InlineData(DetailKind.Corner, "1.25' OFFSET", "4.5\"")]
    [InlineData(DetailKind.Opening, "5.50'", "6.75'")]
    [InlineData(DetailKind.Test, "FREE LENGTH 14.00'~", "BONDED LENGTH 10.00'", "24.00'")]
    public void A_detail_measures_the_projects_figures(DetailKind kind, params string[] expected)
    {
        DrawnDetail detail = Of(DetailWalls.Feet(DetailWalls.Facts)).First(d => d.View.Kind == kind);
        string[] written = detail.Figures;

        Assert.All(expected.Where(e => !e.EndsWith('~')), e => Assert.True(written.Contains(e), $"{e} is not among {string.Join(", ", written)}"));
    }

    /// <summary>The metric wall: millimetres for parts, metres for places.</summary>
    [Theory]
    [InlineData(DetailKind.Head, "100 mm", "200 mm", "20 mm", "150 mm", "50 mm")]
    [InlineData(DetailKind.Bore, "150 mm", "25.4 mm", "62.3 mm GROUT")]
    [InlineData(DetailKind.Facing, "SHOTCRETE 100 mm", "150 mm", "COVER: 60 mm")]
    [InlineData(DetailKind.Outlet, "0.700 m MIN. EMBED.", "75 mm")]
    [InlineData(DetailKind.Lap, "LAP 250 mm")]
    [InlineData(DetailKind.Joint, "CUT 0.500 m BELOW THE ROW", "LAP MESH AND BARS 200 mm")]
    [InlineData(DetailKind.Hole, "7.000 m")]
    public void A_metric_detail_measures_the_projects_figures(DetailKind kind, params string[] expected)
    {
        DrawnDetail detail = Of(DetailWalls.Metres).First(d => d.View.Kind == kind);
        string[] written = detail.Figures;

        Assert.All(expected, e => Assert.True(written.Contains(e), $"{e} is not among {string.Join(", ", written)}"));
    }

    /// <summary>Both ends of every dimension lie on what is drawn, so that it measures that and nothing else.</summary>
    [Fact]
    public void Every_dimension_measures_what_is_drawn()
    {
        int measured = 0;
        foreach (string yaml in Walls())
        {
            foreach (DrawnDetail detail in Of(yaml))
            {
                foreach (Dimension d in detail.Dimensions)
                {
                    Assert.True(detail.Off(d.From) < 1e-6 && detail.Off(d.To) < 1e-6, $"{detail.View.Title}: {detail.Written(d)} ends off the picture");
                    double along = Math.Abs((d.To - d.From).Turned(-d.Angle * Math.PI / 180).X);
                    Assert.Equal((d.To - d.From).Length, along, 1e-9);
                    measured++;
                }
            }
        }
        Assert.True(measured > 300, $"{measured} dimensions");
    }

    /// <summary>The view shows the drawing at the scale that is printed below it.</summary>
    [Fact]
    public void The_scale_below_a_detail_is_that_of_its_view()
    {
        foreach (DrawnDetail detail in Of(DetailWalls.Feet([])))
        {
            string said = detail.Content.Paper.OfType<Text>().Select(t => t.Value).First(t => t.StartsWith("SCALE ", StringComparison.Ordinal));
            string inches = said["SCALE ".Length..said.IndexOf('"', StringComparison.Ordinal)];
            double value = inches.Split(' ').Sum(p => p.Contains('/', StringComparison.Ordinal)
                ? double.Parse(p.Split('/')[0], CultureInfo.InvariantCulture) / double.Parse(p.Split('/')[1], CultureInfo.InvariantCulture)
                : double.Parse(p, CultureInfo.InvariantCulture));
            Assert.Equal(value, 1 / (detail.Viewport.UnitsPerMillimetre * 25.4), 1e-9);
        }
    }

    /// <summary>Each fact, left out, is a blank in the details; given, it stands there as it is worded.</summary>
    [Fact]
    public void A_fact_left_out_is_a_blank()
    {
        string all = string.Join(" ", Of(DetailWalls.Feet(DetailWalls.Facts)).Select(d => d.Words));
        Assert.DoesNotContain("BY THE ENGINEER", all.Replace("FRAMING: BY THE ENGINEER", "", StringComparison.Ordinal), StringComparison.Ordinal);
        // Studs stand only where they are given.
        foreach ((string key, string value) in DetailWalls.Facts.Where(f => f.Key != "studs"))
        {
            // Words may be broken over lines; what is dimensioned stands there as its dimension.
            Assert.True(value.ToUpperInvariant().Split(' ').All(w => all.Contains(w.Trim(','), StringComparison.Ordinal)) || key is "mesh_cover" or "facing_cover" or "strip_lap", $"{key}: {value} is not in the details");
            string without = string.Join(" ", Of(DetailWalls.Feet(DetailWalls.Facts.Where(f => f.Key != key))).Select(d => d.Words));
            Assert.True(Blanks(without) > Blanks(all), $"without {key} there is no blank");
        }
    }

    private static int Blanks(string words) => words.Split("________").Length - 1;

    /// <summary>What the project gives as a figure is dimensioned; left out it is a blank and never a default without a label.</summary>
    [Theory]
    [InlineData("shotcrete: 4.5 in, ", "4.5\"")]
    [InlineData("thickness: 6 in, ", "REINFORCEMENT")]
    [InlineData("gap: 7 in, ", "GAP 7\"")]
    [InlineData("strip_width: 14 in, ", "14\"")]
    [InlineData("below_row: 1.75 ft, ", "1.75'")]
    [InlineData(", mesh: {length: 20 ft, width: 8 ft, lap: 9 in}", "9\"")]
    [InlineData(", coping: {width: 24 in, height: 12 in}", "24\"")]
    public void A_figure_left_out_is_a_blank(string given, string shown)
    {
        string yaml = DetailWalls.Feet(DetailWalls.Facts);
        Assert.Contains(given, yaml, StringComparison.Ordinal);
        string all = string.Join(" ", Of(yaml).Select(d => d.Words)), without = string.Join(" ", Of(yaml.Replace(given, "", StringComparison.Ordinal)).Select(d => d.Words));

        Assert.Contains(shown, all, StringComparison.Ordinal);
        Assert.True(Blanks(without) > Blanks(all), $"without {given} there is no blank");
    }

    /// <summary>What the notes say of a cut where the project says nothing, the joint's detail says too.</summary>
    [Fact]
    public void A_limit_of_a_cut_left_out_is_the_default_of_the_notes()
    {
        string yaml = DetailWalls.Feet(DetailWalls.Facts);
        string without = string.Join(" ", Of(yaml.Replace("max_exposed: 5 ft, ", "", StringComparison.Ordinal)).Select(d => d.Words));

        Assert.Matches(@"NO MORE THAN\s+4'\s+\(DEFAULT\)\s+OPEN", without);
    }

    /// <summary>A rule that the project leaves to its default is labelled so.</summary>
    [Fact]
    public void A_default_is_labelled()
    {
        string yaml = DetailWalls.Feet(DetailWalls.Facts);
        string all = string.Join(" ", Of(yaml).Select(d => d.Words));
        string without = string.Join(" ", Of(yaml.Replace("rules: {bar_projection: 8 in, edge_min: 1.5, corner_clear: 1.75}", "", StringComparison.Ordinal)).Select(d => d.Words));

        Assert.DoesNotContain("(DEFAULT)", all.Replace("1 IN (DEFAULT)", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("6\" (DEFAULT)", without, StringComparison.Ordinal);
        Assert.Contains("NAIL NO CLOSER THAN 1' (DEFAULT) TO THE CORNER", without, StringComparison.Ordinal);
    }

    /// <summary>What does not occur on the wall has no detail.</summary>
    [Fact]
    public void A_detail_of_what_the_wall_has_not_is_not_drawn()
    {
        DetailKind[] kinds = [.. Of(SampleWalls.Metric).Select(d => d.View.Kind)];

        Assert.DoesNotContain(DetailKind.Corner, kinds);
        Assert.DoesNotContain(DetailKind.Opening, kinds);
        Assert.DoesNotContain(DetailKind.Top, kinds);
        Assert.Contains(DetailKind.Head, kinds);
        Assert.Contains(DetailKind.End, kinds);
    }

    /// <summary>The legs of a corner meet at the true angle, the soil's angle under 180 degrees at an outside corner.</summary>
    [Fact]
    public void A_corner_is_drawn_at_its_true_angle()
    {
        DrawnDetail detail = Of(DetailWalls.Feet([])).First(d => d.View.Kind == DetailKind.Corner);
        Line[] lines = [.. detail.Content.Model.OfType<Line>().Where(l => l.Layer == LayerRole.LayoutLine)];

        Assert.Equal(2, lines.Length);
        Point2 a = lines[0].To - lines[0].From, b = lines[1].To - lines[1].From;
        double angle = Math.Acos((a.X * b.X + a.Y * b.Y) / a.Length / b.Length) * 180 / Math.PI;
        Assert.Equal(180 - 35, angle, 1e-6);
        // An outside corner: seen with the soil above the one leg, the other rises into it.
        Assert.True(Math.Max(a.Y, b.Y) > 0.1);
        Assert.Contains("35°00'00\"", detail.Words, StringComparison.Ordinal);
    }

    public static IEnumerable<string> Walls() =>
    [
        DetailWalls.Feet(DetailWalls.Facts), DetailWalls.Feet([]), DetailWalls.Metres, SampleWalls.TwoWalls, SampleWalls.Metric,
        .. new[] { "heron-street-bridge", "quarry-lane" }.Select(d => Repository.Read("demo", d, "wall.yaml")),
        .. Directory.EnumerateFiles(Repository.PathOf("templates", "starter"), "*.yaml").Order(StringComparer.Ordinal).Select(File.ReadAllText),
    ];

    /// <summary>A battered wall's head, facing, foot, lap and joint lean by the batter, thicknesses square to the face, levels level.</summary>
    [Theory]
    [InlineData("permanent shotcrete, thickness: 150 mm", 8)]
    [InlineData("precast panels, thickness: 140 mm, gap: 150 mm, coping: cast in place", 8)]
    [InlineData("permanent shotcrete, thickness: 150 mm", 0)]
    public void A_battered_wall_leans_in_its_details(string facing, double batter)
    {
        string yaml = System.Text.RegularExpressions.Regex.Replace(DetailWalls.Metres, "kind: permanent shotcrete, thickness: 150 mm", "kind: " + facing).Replace("angle: 5 deg", FormattableString.Invariant($"angle: {batter} deg"), StringComparison.Ordinal);
        Assert.True(yaml.Contains(facing, StringComparison.Ordinal), yaml);
        IReadOnlyList<DrawnDetail> all = Of(yaml);
        double slope = Math.Tan(batter * Math.PI / 180);
        foreach (DetailKind kind in new[] { DetailKind.Head, DetailKind.Facing, DetailKind.Outlet, DetailKind.Lap, DetailKind.Joint })
        {
            DrawnDetail detail = all.First(d => d.View.Kind == kind);
            // Every hatched outline is shotcrete or grout: the shotcrete's long sides lean into the soil, which is on the right.
            Point2[] shotcrete = detail.Content.Model.OfType<Fill>().Where(f => f.Spacing > 0).Select(f => f.Outline.Select(v => v.Point).ToArray()).MaxBy(o => Box.Around(o).Height)!;
            (Point2 A, Point2 B)[] sides = [.. shotcrete.Select((p, i) => (p, shotcrete[(i + 1) % shotcrete.Length])).OrderByDescending(s => (s.Item2 - s.p).Length).Take(2)];
            Assert.All(sides, s => Assert.Equal(slope, (s.B.X - s.A.X) / (s.B.Y - s.A.Y), 1e-6));
            // 100 mm are measured square to them.
            Dimension thick = detail.Content.Model.OfType<Dimension>().First(d => Math.Abs((d.To - d.From).Length - 0.1) < 1e-6);
            Point2 way = thick.To - thick.From;
            Assert.Equal(-slope, way.Y / way.X, 1e-6);
        }
        // The cut below a row is a difference of levels.
        Dimension cut = all.First(d => d.View.Kind == DetailKind.Joint).Content.Model.OfType<Dimension>().Single(d => d.Words?.StartsWith("CUT", StringComparison.Ordinal) == true);
        Assert.Equal(0, cut.To.X - cut.From.X, 1e-6);
        Assert.Equal(0.5, Math.Abs(cut.To.Y - cut.From.Y), 1e-6);
    }

    /// <summary>No text on a text or a line, over demos, starters and walls made at random, in both languages, on a large and a small sheet.</summary>
    [Theory]
    [InlineData("english")]
    [InlineData("spanish")]
    public void No_text_lies_on_a_text_or_a_line(string language) => CheckTexts(language, 6);

    [Theory]
    [InlineData("english")]
    [InlineData("spanish")]
    [Trait("Category", "Long")]
    public void No_text_lies_on_a_text_or_a_line_on_many_walls(string language) => CheckTexts(language, 40);

    private static void CheckTexts(string language, int walls)
    {
        var faults = new List<string>();
        int details = 0;
        foreach (string yaml in Walls().Concat(Enumerable.Range(0, walls).Select(i => RandomWall.Yaml(700 + (ulong)i))))
        {
            WallProject project = SampleLayout.Read(yaml);
            NailLayout layout = SampleLayout.Make(project);
            foreach ((double letters, Box area) in new[] { (1.334, new Box(20, 10, 760, 540)), (1.0, new Box(20, 10, 350, 265)) })
            {
                foreach (DrawnDetail detail in DrawnDetail.All(DrawnDetail.ContextOf(project, layout, language, letters), area))
                {
                    details++;
                    faults.AddRange(detail.Faults().Select(f => $"{project.Info.Title} {letters}: {f}"));
                }
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{details} details, {faults.Count} faults"));
        Assert.True(faults.Count == 0, string.Join("\n", faults.Take(40)));
    }

    [Theory]
    [InlineData("8 x 8 x 3/4 in", new[] { 8 / 12.0, 8 / 12.0, 0.75 / 12 })]
    [InlineData("225 x 225 x 25 mm", new[] { 0.225 / 0.3048, 0.225 / 0.3048, 0.025 / 0.3048 })]
    [InlineData("9\" x 9\" x 1 1/2\"", new[] { 0.75, 0.75, 0.125 })]
    [InlineData("4 of 1/2 x 4 in", new[] { 0.5 / 12, 4 / 12.0 })]
    [InlineData("2 #4, 3 ft long", new[] { 3.0 })]
    [InlineData("2 in PVC at 10 ft", new[] { 2 / 12.0, 10 })]
    [InlineData("4x4 W2.9xW2.9", new double[0])]
    [InlineData("hex nut", new double[0])]
    [InlineData("200 percent of the design load, 30 min", new double[0])]
    public void Sizes_are_read_out_of_words(string words, double[] feet)
    {
        IReadOnlyList<double> found = SizeText.Lengths(words, LengthUnit.Foot);

        Assert.Equal(feet.Length, found.Count);
        Assert.All(feet.Zip(found), p => Assert.Equal(p.First, p.Second, 1e-12));
    }
}
