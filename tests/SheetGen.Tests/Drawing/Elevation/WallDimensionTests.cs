using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Writers.Dxf;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>Dimensions of the elevation against the numbers of the project file and the heads of the layout.</summary>
public class WallDimensionTests
{
    /// <summary>A straight wall whose dimensions can be told from its numbers: stations 2+00 to 2+48, top 120 to 124, bottom 104 and 103.</summary>
    private const string Plain = """
        format: 1
        project: {title: Mill race cut, number: WD-1, units: ft}
        layout_lines:
          - name: L
            start: {station: 2+00, northing: 0, easting: 0, azimuth: 90}
            elements: [{line: 48}]
        walls:
          - name: W
            layout_line: L
            retained_side: left
            stations: [2+00, 2+48]
            top: [[2+00, 120], [2+24, 124], [2+48, 122]]
            finished_grade: [[2+00, 106.5], [2+48, 105.5]]
            bottom: {steps: [[2+00, 104], [2+24, 103]]}
            panels: {width: 8, height: 5, first_break: 2+00}
            sections:
              - {name: A, stations: [2+00, 2+48], horizontal_spacing: 4, vertical_spacing: 4, rows: level, top_row_depth: 2, inclination: 12, lengths: [22, 20], bar: {size: "#8", grade: 75}, hole: 6 in}
        sheets: {size: ANSI D}
        """;

    private sealed record Drawn(SheetSet Set, NailLayout Layout, Wall Wall)
    {
        public Dimension[] Dimensions => [.. Set.Model.OfType<Dimension>().Where(d => d.From.X <= Wall.End + 210 && d.From.Y > 90)];

        public string[] Words => [.. Dimensions.Select(d => DimensionPicture.Measured(d, Set.DimensionStyles.First(s => s.Name == d.Style)))];
    }

    private static Drawn Draw(string yaml)
    {
        WallProject project = SampleLayout.Read(yaml);
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        return new(SampleSheets.Compose(project, layout), layout, project.Walls[0]);
    }

    [Fact]
    public void What_sets_the_wall_out_is_dimensioned_with_the_numbers_of_the_project_file()
    {
        string[] words = Draw(Plain).Words;

        Assert.Contains("H = 16.00'", words);
        Assert.Contains("H = 19.00'", words);
        Assert.Contains("H MAX. = 21.00'", words);
        Assert.Contains("8.00' PANEL, TYP.", words);
        Assert.Contains("2.00' MIN. EMBED.", words);
        Assert.Contains("2.00' TYP.", words);
        Assert.Contains(words, w => Regex.IsMatch(w, @"^\d+ SPA\. @ 4\.00' = \d+\.00'$"));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_chain_at_an_end_runs_from_top_to_bottom_over_the_rows(bool atStart)
    {
        Drawn drawn = Draw(Plain);
        double along = atStart ? drawn.Wall.Start : drawn.Wall.End, x = 200 + along;
        Dimension[] up = [.. drawn.Dimensions.Where(d => d.Angle == 90 && Math.Abs(d.From.X - x) < 1e-6 && Math.Abs(d.To.X - x) < 1e-6)];
        double outermost = up.Max(d => Math.Abs(d.LinePoint.X - x));
        Dimension[] chain = [.. up.Where(d => Math.Abs(d.LinePoint.X - x) < outermost - 1e-6 && Math.Sign(d.LinePoint.X - x) == (atStart ? -1 : 1)).OrderBy(d => d.From.Y)];

        Assert.Equal(atStart ? 104 : 103, chain[0].From.Y, 6);
        Assert.Equal(atStart ? 120 : 122, chain[^1].To.Y, 6);
        Assert.All(chain.Zip(chain.Skip(1)), p => Assert.Equal(p.First.To.Y, p.Second.From.Y, 6));
        double[] rows = [.. chain.Skip(1).Select(d => d.From.Y)];
        double[] heads = [.. drawn.Layout.Nails.Where(n => n.Kind != NailKind.Verification && Math.Abs(n.Along - along) < 4).Select(n => n.Elevation).Distinct().Order()];
        Assert.Equal(heads, rows.Select(r => Math.Round(r, 6)));
    }

    public static TheoryData<string> WallsWithSpaces => new(Plain, MarkWalls.Corner, MarkWalls.Long);

    /// <summary>A dimension over several spaces stands for nails that are there, each at that space from the next, in one row.</summary>
    [Theory]
    [MemberData(nameof(WallsWithSpaces))]
    public void Spaces_counted_in_a_dimension_are_those_of_the_nails(string yaml)
    {
        Drawn drawn = Draw(yaml);
        int found = 0;
        foreach (Dimension d in drawn.Set.Model.OfType<Dimension>().Where(d => d.Angle == 0 && d.Words is not null))
        {
            Match match = Regex.Match(d.Words!, @"^(\d+) SPA\. @ ([\d.]+)' = ");
            if (!match.Success)
                continue;
            found++;
            int count = int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
            double space = double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture);
            double left = Math.Min(d.From.X, d.To.X), right = Math.Max(d.From.X, d.To.X);
            var heads = drawn.Set.Model.OfType<BlockReference>().Where(b => b.Shown is not null).Select(b => (b.Position, Row: b.Nail![..b.Nail!.LastIndexOf('-')])).ToArray();
            string[] rows = [.. heads.Where(h => (h.Position - d.From).Length < 1e-6).Select(h => h.Row)];
            Assert.NotEmpty(rows);
            double[] at = [.. heads.Where(h => rows.Contains(h.Row) && h.Position.X > left - 0.001 && h.Position.X < right + 0.001).Select(h => h.Position.X).Order()];
            Assert.Equal(count + 1, at.Length);
            Assert.All(at.Zip(at.Skip(1)), p => Assert.Equal(space, p.Second - p.First, 0.0051));
        }
        Assert.True(found > 0);
    }

    /// <summary>Part rows of the plain wall stand at both sides of its middle only: nothing is measured from one side to the other.</summary>
    [Fact]
    public void No_dimension_crosses_the_break_of_a_part_row()
    {
        Drawn drawn = Draw(Plain);
        Nail[][] parts = [.. drawn.Layout.Nails.Where(n => n.Row.IsPart).GroupBy(n => n.Row).Select(g => g.OrderBy(n => n.Along).ToArray())];

        Assert.Contains(parts, p => p.Zip(p.Skip(1)).Any(n => n.Second.Along - n.First.Along > 10));
        Assert.DoesNotContain(drawn.Dimensions, d => d.Angle == 0 && d.Words is null && Math.Abs(d.To.X - d.From.X) > 10);
        Assert.DoesNotContain(drawn.Set.Model.OfType<Text>(), t => t.Value.Contains(" TO A-1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dimension_with_words_stays_one_in_the_drawing_and_measures()
    {
        SheetSet set = Draw(Plain).Set;
        using var stream = new MemoryStream();
        DxfSheetWriter.Write(set, stream);
        stream.Position = 0;
        DxfDocument document = DxfReader.Read(stream).Document!;

        DxfDimension height = document.Model.OfType<DxfDimension>().Single(d => d.Words == "H MAX. = <>");

        Assert.Equal(21, height.Measurement, 6);
        Assert.DoesNotContain(document.Model.OfType<DxfDimension>(), d => d.Words is string w && !w.Contains("<>", StringComparison.Ordinal));
    }

    [Fact]
    public void Elevations_stand_in_their_height_at_both_sides()
    {
        Drawn drawn = Draw(Plain);
        Sheet sheet = drawn.Set.Sheets.First(s => s.IsView);
        Viewport view = sheet.Viewports.First(v => v.ToPaper.Apply(new Point2(224, 110)) is var p && v.Frame.Contains(p));
        (double Height, Point2 At)[] scale = [.. sheet.Paper.OfType<Text>().Where(t => Regex.IsMatch(t.Value, "^1[012][0-9]$")).Select(t => (double.Parse(t.Value, CultureInfo.InvariantCulture), t.Position + new Point2(0, t.Height / 2)))];

        Assert.True(scale.Count(s => s.At.X < view.Frame.Left) >= 3);
        Assert.True(scale.Count(s => s.At.X > view.Frame.Right) >= 3);
        Assert.All(scale, s => Assert.Equal(view.ToPaper.Apply(new Point2(224, s.Height)).Y, s.At.Y, 6));
    }

    /// <summary>Columns along a face that is shorter than the layout line stand closer than the grid, each gap a little other than the next: one dimension for all.</summary>
    [Fact]
    public void Gaps_that_hardly_differ_share_a_dimension()
    {
        string yaml = Plain.Replace("elements: [{line: 48}]", "elements: [{arc: {radius: 60, length: 48, turn: left}}]", StringComparison.Ordinal)
            .Replace("layout_line: L\n", "layout_line: L\n    face_offset: 3\n", StringComparison.Ordinal);
        Drawn drawn = Draw(yaml);

        string[] all = [.. drawn.Words, .. drawn.Set.Sheets.SelectMany(s => s.Paper).Concat(drawn.Set.Model).OfType<Text>().Select(t => t.Value)];

        Assert.Contains(all, w => Regex.IsMatch(w, @"\d+ SPA\. (@|OF) 3\.\d\d'"));
        int single = drawn.Words.Count(w => Regex.IsMatch(w, @"^3\.[789]\d'$"));
        Assert.True(single < 8, $"{single} gaps are dimensioned one by one");
    }
}
