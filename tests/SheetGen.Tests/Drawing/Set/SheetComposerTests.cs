using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Drawing.Labels;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

public class SheetComposerTests
{
    private static readonly string[] Samples = [SampleWalls.TwoWalls, SampleWalls.Metric];

    [Theory]
    [InlineData(0, 7)]
    [InlineData(0, 3)]
    [InlineData(0, 16)]
    [InlineData(1, 7)]
    [InlineData(1, 11)]
    public void No_text_stands_on_another_or_on_a_nail(int sample, int seed)
    {
        SheetSet set = SampleSheets.Compose(Samples[sample], seed);

        Assert.Equal("", string.Join("\n", set.Sheets.SelectMany(s => CrossedTexts.On(set, s))));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(13)]
    public void No_text_stands_on_another_on_random_walls(ulong seed)
    {
        WallProject project = SampleLayout.Read(RandomWall.Yaml(seed));

        SheetSet set = SampleSheets.Compose(project, SampleLayout.Make(project, (int)seed));

        Assert.Equal("", string.Join("\n", set.Sheets.SelectMany(s => CrossedTexts.On(set, s))));
    }

    /// <summary>A given scale need not be a customary one: dimensions of a plan drawn at it once had no style, and the run ended as a fault of the program.</summary>
    [Theory]
    [InlineData("4")]
    [InlineData("7.5")]
    public void Every_dimension_has_its_style_at_a_scale_of_the_users_own(string scale)
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.TwoWalls.Replace("scale: 10,", $"scale: {scale},", StringComparison.Ordinal));
        HashSet<string> styles = [.. set.DimensionStyles.Select(s => s.Name)];
        Assert.Equal(set.DimensionStyles.Count, styles.Count);
        Assert.Equal([], set.Model.Concat(set.Plan).Concat(set.Sheets.SelectMany(s => s.Paper)).OfType<Dimension>().Select(d => d.Style).Where(s => !styles.Contains(s)).Distinct());
    }

    [Fact]
    public void The_checker_sees_a_text_on_a_text()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.Metric);
        Sheet sheet = set.Sheets[0];
        Text text = sheet.Paper.OfType<Text>().First();
        Sheet spoiled = sheet with { Paper = [.. sheet.Paper, text with { Position = text.Position + new Point2(1, 1) }] };

        Assert.NotEmpty(CrossedTexts.On(set, spoiled));
    }

    [Fact]
    public void Few_labels_find_no_room_and_no_callout_goes_to_a_note()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.TwoWalls);
        int labels = set.Model.OfType<Text>().Count();

        string[] unplaced = [.. set.Findings.Select(f => f.Message).Where(m => m.Contains("no room for the label", StringComparison.Ordinal))];
        Assert.True(unplaced.Length <= labels / 60, string.Join("\n", unplaced));
        Assert.DoesNotContain(set.Sheets.SelectMany(s => s.Paper).OfType<Text>(), t => t.Layer == LayerRole.Note && t.Value.Contains("DO NOT DRILL ", StringComparison.Ordinal) && t.Value.StartsWith('('));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Every_nail_is_one_reference_at_its_station_and_elevation(int sample)
    {
        WallProject project = SampleLayout.Read(Samples[sample]);
        NailLayout layout = SampleLayout.Make(project);
        SheetSet set = SampleSheets.Compose(project, layout);

        var references = set.Model.OfType<BlockReference>().ToDictionary(b => b.Nail!);
        Assert.Equal(layout.Nails.Select(n => n.Mark).Order(), references.Keys.Order());
        foreach (IGrouping<Wall, Nail> wall in layout.Nails.GroupBy(n => n.Wall))
        {
            int sign = wall.Key.RetainedSide == Turn.Right ? -1 : 1;
            Nail first = wall.First();
            Point2 origin = references[first.Mark].Position - new Point2(sign * first.Station, first.Elevation);
            foreach (Nail nail in wall)
            {
                BlockReference b = references[nail.Mark];
                Assert.Equal(sign * nail.Station + origin.X, b.Position.X, 6);
                Assert.Equal(nail.Elevation + origin.Y, b.Position.Y, 6);
                Assert.Equal(nail.Mark, b.Attributes[0].Value);
                Assert.Equal([nail.Mark], b.Data);
            }
        }
        Assert.DoesNotContain(set.Sheets.SelectMany(s => s.Paper).OfType<BlockReference>(), b => b.Block.StartsWith("NAIL", StringComparison.Ordinal));
    }

    [Fact]
    public void The_frame_of_each_elevation_carries_what_reading_back_needs()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.TwoWalls);

        IReadOnlyList<string>[] frames = [.. set.Model.OfType<Polyline>().Where(p => p.Data.Count > 0).Select(p => p.Data)];

        Assert.Equal(2, frames.Length);
        Assert.Contains("wall=Wall 1", frames[0]);
        Assert.Contains("sign=-1", frames[0]);
        Assert.Contains("origin=0,0", frames[0]);
        Assert.Contains("unit=ft", frames[0]);
        Assert.Contains("sign=1", frames[1]);
    }

    /// <summary>A person in front of a wall with the soil to the right, looking up-station, has up-station on the left.</summary>
    [Theory]
    [InlineData(Turn.Right, 12, "LEFT", "UP-STA")]
    [InlineData(Turn.Right, -12, "RIGHT", "DN-STA")]
    [InlineData(Turn.Left, 12, "RIGHT", "UP-STA")]
    [InlineData(Turn.Left, -12, "LEFT", "DN-STA")]
    public void Sides_are_those_of_a_person_who_faces_the_wall(Turn side, double splay, string word, string station)
    {
        Wall wall = SampleLayout.Read(SampleWalls.TwoWalls).Walls[0] with { RetainedSide = side };

        Assert.Equal(word, Sides.Of(wall, splay));
        Assert.Equal(station, Sides.ByStation(splay));
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(0, true)]
    [InlineData(1, false)]
    [InlineData(1, true)]
    public void Arrows_point_to_the_tip_on_the_drawing_and_words_do_not_turn_with_it(int sample, bool fromBehind)
    {
        WallProject project = SampleLayout.Read(Samples[sample]);
        project = project with { Sheets = project.Sheets with { FromBehind = fromBehind } };
        NailLayout layout = SampleLayout.Make(project);
        SheetSet set = SampleSheets.Compose(project, layout);

        foreach (Nail nail in layout.Nails.Where(n => n.Status is NailStatus.Noted or NailStatus.Redirected && n.Splay != 0))
        {
            BlockReference b = set.Model.OfType<BlockReference>().Single(r => r.Nail == nail.Mark);
            bool left = Sides.Of(nail.Wall, nail.Splay) == "LEFT";
            Assert.Equal(left != fromBehind ? 180 : 0, b.Rotation);
            Assert.StartsWith(left ? "LEFT" : "RIGHT", b.Attributes[5].Value, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Noted_nails_are_called_out_with_angle_and_side()
    {
        WallProject project = SampleLayout.Read(SampleWalls.TwoWalls);
        NailLayout layout = SampleLayout.Make(project);
        SheetSet set = SampleSheets.Compose(project, layout);

        foreach (Nail nail in layout.Nails.Where(n => n.Status == NailStatus.Noted))
        {
            string words = string.Join(" ", set.Model.OfType<Text>().Where(t => t.Layer == LayerRole.Callout && t.Nail == nail.Mark).Select(t => t.Value));
            Assert.Contains(nail.Mark, words, StringComparison.Ordinal);
            Assert.Contains($"{Math.Abs(nail.Splay):0}° {Sides.Of(nail.Wall, nail.Splay)} ({Sides.ByStation(nail.Splay)})", words, StringComparison.Ordinal);
        }
        foreach (Nail nail in layout.Nails.Where(n => n.Status == NailStatus.Unresolved))
            Assert.Contains(set.Model.OfType<Text>(), t => t.Nail == nail.Mark && t.Value.StartsWith("DO NOT DRILL", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_gap_of_the_take_off_that_is_not_the_grids_is_dimensioned_once()
    {
        WallProject project = SampleLayout.Read(SampleWalls.TwoWalls);
        NailLayout layout = SampleLayout.Make(project);
        SheetSet set = SampleSheets.Compose(project, layout);
        QuantityTable quantities = SampleLayout.Measure(project, layout);

        string?[] dimensions = [.. set.Model.OfType<Dimension>().Where(d => d.Angle == 0 && d.Nail is not null).Select(d => d.Nail)];
        IEnumerable<string?> written = set.Model.OfType<Text>().Where(t => t.Layer == LayerRole.Dimension && t.Nail is not null).Select(t => t.Nail).Distinct();
        IEnumerable<string?> noted = set.Sheets.SelectMany(s => s.Paper).OfType<Text>()
            .SelectMany(t => System.Text.RegularExpressions.Regex.Matches(t.Value, "GAPS? IN ROW ([^:]+): (.*?)(?:     |$)"))
            .SelectMany(row => System.Text.RegularExpressions.Regex.Matches(row.Groups[2].Value, "(\\S+) TO ").Select(m => row.Groups[1].Value + "-" + m.Groups[1].Value));
        Dictionary<string, Nail> nails = layout.Nails.ToDictionary(n => n.Mark);
        double typical = NailLabels.TypicalWithin(project.Unit) + 1e-9;
        IEnumerable<string> wanted = quantities.Sections.SelectMany(s => s.Gaps)
            .Where(g => Math.Abs(g.Gap - nails[g.FirstMark].Section.HorizontalSpacing) > typical).Select(g => g.FirstMark);

        Assert.Equal(wanted.Order(), dimensions.Concat(written).Concat(noted).Order());
    }

    [Fact]
    public void A_default_says_so_where_it_is_printed_and_a_given_value_does_not()
    {
        string Notes(string yaml) => string.Join(" ", SampleSheets.Compose(yaml).Sheets[0].Paper.OfType<Text>().Select(t => t.Value));
        string left = Notes(SampleWalls.TwoWalls), given = Notes(SampleWalls.TwoWalls + "\nrules: {redirect: {field_tolerance: 10}}\n");

        Assert.DoesNotContain("TURN A NAIL BY UP TO 10° (DEFAULT)", given, StringComparison.Ordinal);
        Assert.Contains("TURN A NAIL BY UP TO 10° (DEFAULT)", left, StringComparison.Ordinal);
        Assert.Contains("30 WORKING DAYS (DEFAULT)", given, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "NO BETTER LAYOUT EXISTS WITHIN THE RULES")]
    [InlineData(-1, "NOTED 2 (AT LEAST 1 WITHIN THE RULES)")]
    public void The_notes_say_how_good_the_layout_is(int slack, string words)
    {
        WallProject project = SampleLayout.Read(SampleWalls.Metric);
        NailLayout layout = SampleLayout.Make(project) with { Score = new(new(0, 0), new(2, 2 + slack), new(9, slack == 0 ? 9 : null)) };

        string notes = string.Join(" ", SampleSheets.Compose(project, layout).Sheets[0].Paper.OfType<Text>().Select(t => t.Value));

        Assert.Contains(words, notes, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_without_room_above_the_elevation_gets_a_sheet_of_its_own()
    {
        string yaml = SampleWalls.TwoWalls.Replace("scale: 10", "scale: 5", StringComparison.Ordinal).Replace("ANSI D", "ANSI B", StringComparison.Ordinal);
        SheetSet set = SampleSheets.Compose(yaml);

        Assert.Contains(set.Sheets, s => s.Title == "PLAN, WALL 1" && s.Viewports.Count == 1);
        Assert.All(set.Sheets, s => Assert.Equal(s.Name, ((BlockReference)s.Paper[0]).Attributes.Single(a => a.Key == "SHEET").Value));
        string[] cuts = [.. set.Sheets.Where(s => s.IsView).SelectMany(s => s.Paper).OfType<Text>().Where(t => t.Layer == LayerRole.Title).Select(t => t.Value).Where(v => v.StartsWith("SN-", StringComparison.Ordinal))];
        Assert.NotEmpty(cuts);
        Assert.All(cuts, c => Assert.Matches("SECTIONS|NOTES", set.Sheets.Single(s => s.Name == c).Title));
        Assert.Equal("", string.Join("\n", set.Sheets.SelectMany(s => CrossedTexts.On(set, s))));
    }

    [Fact]
    public void Notes_of_the_users_own_are_read_and_a_wrong_file_says_why()
    {
        DrawingTemplates own = TemplateReader.WithNotes(TemplateReader.Default(), """[{"heading": "OURS", "notes": ["PROJECT {number}"]}]""");

        Assert.Equal("OURS", Assert.Single(own.Notes).Heading);
        Assert.Throws<FormatException>(() => TemplateReader.WithNotes(own, """[{"heading": "OURS"}]"""));
    }

    [Fact]
    public void No_plotted_text_is_under_two_millimetres()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.TwoWalls);

        Assert.All(set.Sheets.SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<Text>(), t => Assert.True(t.Height >= 2 - 1e-9, t.Value));
    }

    [Fact]
    public void A_long_wall_is_cut_at_panel_breaks_and_loses_no_nail()
    {
        string yaml = SampleWalls.TwoWalls.Replace("scale: 10", "scale: 5", StringComparison.Ordinal).Replace("ANSI D", "ANSI B", StringComparison.Ordinal);
        WallProject project = SampleLayout.Read(yaml);
        Wall wall = project.Walls[0];

        IReadOnlyList<SheetWindow> windows = SheetWindow.Cut(wall, 45, [], 0, 5);

        Assert.Equal(wall.Start, windows[0].Start);
        Assert.Equal(wall.End, windows[^1].End);
        for (int i = 0; i + 1 < windows.Count; i++)
        {
            Assert.Equal(windows[i].End, windows[i + 1].Start);
            Assert.Contains(wall.PanelBreaks, b => Math.Abs(b - windows[i].End) < 1e-6);
        }
        Assert.All(SampleLayout.Make(project).Nails.Where(n => n.Wall == wall), n => Assert.Single(windows, w => w.Has(n.Along)));
    }

    [Fact]
    public void Small_sheets_have_match_lines_that_name_each_other()
    {
        string yaml = SampleWalls.Metric.Replace("ISO A1", "ISO A3", StringComparison.Ordinal);
        SheetSet set = SampleSheets.Compose(yaml);

        string[] matches = [.. set.Sheets.SelectMany(s => s.Paper).OfType<Text>().Where(t => t.Layer == LayerRole.MatchLine).Select(t => t.Value)];

        Sheet[] views = [.. set.Sheets.Where(s => s.Title.StartsWith("PLAN AND ELEVATION", StringComparison.Ordinal))];
        Assert.True(views.Length > 1);
        Assert.All(views, v => Assert.Contains(matches, m => m.EndsWith("SEE SHEET " + v.Name, StringComparison.Ordinal)));
        Assert.Equal("", string.Join("\n", set.Sheets.SelectMany(s => CrossedTexts.On(set, s))));
    }

    [Fact]
    public void An_unknown_sheet_size_is_a_finding()
    {
        WallProject project = SampleLayout.Read(SampleWalls.Metric);
        project = project with { Sheets = project.Sheets with { Size = "ISO Q9" } };

        SheetSet set = SampleSheets.Compose(project, SampleLayout.Make(project));

        Assert.Contains(set.Findings, f => f.Code == FindingCode.Sheet && f.Message.Contains("ISO Q9", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_given_scale_the_largest_that_fits_is_taken()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.Metric.Replace(", scale: 100", "", StringComparison.Ordinal));

        double chosen = set.Sheets[1].Viewports[0].UnitsPerMillimetre;
        Assert.Contains(chosen * 1000, TemplateReader.Default().MetreScales.Select(s => Math.Round(s, 9)));
        Assert.True(chosen < 0.1);
    }

    /// <summary>A set that is part of a larger one: its sheets, and every reference from one to another, count from the given number.</summary>
    [Fact]
    public void Sheets_are_numbered_from_the_given_number_on()
    {
        WallProject project = SampleLayout.Read(Repository.Read("docs", "cookbook", "06-a-revision.yaml"));
        SheetSet plain = SampleSheets.Compose(project, SampleLayout.Make(project)), moved = SampleSheets.Compose(project with { Sheets = project.Sheets with { FirstNumber = 97 } }, SampleLayout.Make(project));
        string[] Names(SheetSet set) => [.. set.Sheets.Select(s => s.Name)];
        string[] Told(SheetSet set) => [.. set.Sheets.SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<Text>().Select(t => t.Value).Where(t => t.Contains("SN-", StringComparison.Ordinal))];
        Assert.Equal(Enumerable.Range(97, plain.Sheets.Count).Select(n => FormattableString.Invariant($"SN-{n:00}")), Names(moved));
        Assert.NotEmpty(Told(plain));
        string[] back = [.. Told(moved).Select(t => System.Text.RegularExpressions.Regex.Replace(t, "SN-([0-9]+)", m => FormattableString.Invariant($"SN-{int.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture) - 96:00}")))];
        Assert.Equal(Told(plain).Order(StringComparer.Ordinal), back.Order(StringComparer.Ordinal));
    }
}
