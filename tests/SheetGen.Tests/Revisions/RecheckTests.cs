using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using SheetGen.Tests.Outside;
using SheetGen.Writers.Dxf.Edited;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>Drawings that another program (ezdxf) has edited and saved: what was done is named, and nothing else.</summary>
public sealed class RecheckTests
{
    private const string First = "A-4-05", Second = "A-2-02";

    /// <summary>Edit and release; what changed (null: nothing); what is said not to be read (null: nothing).</summary>
    private static readonly (string Edit, string[] Changed, string? NotRead)[] Edits =
    [
        ("nothing:R12", [], null),
        ("nothing:R2000", [], null),
        ("nothing:R2010", [], null),
        ("nothing:R2018", [], null),
        ("nothing:R12bin", [], null),
        ("nothing:R2018bin", [], null),
        ("move:R2010", ["A-4-05 moved 0.50 ft"], null),
        ("move:R12", ["A-4-05 moved 0.50 ft"], null),
        ("move-down:R2000bin", ["A-4-05 lowered 0.25 ft"], null),
        ("move-two:R2018", ["A-2-02 moved 0.25 ft", "A-4-05 moved 0.50 ft"], null),
        ("turn:R2000", ["A-4-05 turned from no splay to splay 12 deg down-station"], null),
        ("incline:R2010", ["A-4-05 inclination 15 to 18 deg"], null),
        ("lengthen:R2018", ["A-4-05 length 20 to 26 ft"], null),
        ("turn-and-move:R12", ["A-4-05 moved 0.25 ft"], null),
        ("copy:R2010", ["A-4-05a added"], null),
        ("copy-and-delete:R2000", ["A-4-05 moved 0.50 ft"], null),
        ("delete:R2018bin", ["A-4-05 removed"], null),
        ("delete-two:R12", ["A-2-02 removed", "A-4-05 removed"], null),
        ("add:R2010", ["A-4-05a added"], null),
        ("array:R2010", ["A-4-05a added"], null),
        ("explode:R2010", [], "A-4-05: its block is exploded"),
        ("rename-layer:R2010", [], null),
        ("rename-block:R2010", [], null),
        ("rotate-block:R2010", [], "A-4-05: its block is turned by 30 degrees"),
        ("mark:R2010", [], "A-4-05: MARK reads \"Z-99\""),
        ("bar:R2010", [], "A-4-05: BAR reads"),
        ("station-text:R2010", [], "A-4-05: STATION reads"),
        ("spoilt:R2010", [], "A-4-05: SPLAY reads \"a little\""),
        ("reorder:R2010", [], null),
        ("other-entities:R2010", [], "SPLINE is not read"),
        ("inches:R2010", [], null),
        ("inches-and-move:R2000bin", ["A-4-05 moved 0.50 ft"], null),
        ("shift-all:R2010", [], null),
        ("turn-all:R2010", [], null),
        ("upside-down-inches:R2010", ["A-4-05 moved 0.50 ft"], null),
        ("upside-down-bare:R2018", ["A-2-02 removed"], null),
        ("no-xdata:R2010", ["A-4-05 moved 0.50 ft"], null),
        ("bare-blocks:R2010", ["A-4-05 moved 0.50 ft"], null),
        ("handles:R2010", [], null),
        ("nested:R2010", ["A-4-05 removed"], "A-4-05 stands inside of the block GROUP"),
    ];

    private static readonly EditedWall Wall = EditedWall.Shared;

    [Fact]
    public void What_was_written_reads_back_unchanged()
    {
        foreach (byte[] drawing in new[] { Wall.Drawing, Wall.Plan })
        {
            DrawingReading reading = Wall.Read(drawing);
            Assert.Empty(Wall.Changes(reading));
            Assert.Empty(reading.NotRead.Concat(reading.LeftOut));
            Assert.Equal(Wall.Layout.Nails.Count, reading.Nails.Count);
        }
    }

    [Fact, Trait("Category", "Outside")]
    public void Edits_of_another_program_are_named_and_nothing_else()
    {
        using var folder = new TemporaryFolder();
        string source = folder.File("sheets.dxf");
        File.WriteAllBytes(source, Wall.Drawing);
        OutsideResult done = OutsideReader.Script("edit_dxf.py", "ezdxf").Run([source, folder.Path, $"{First},{Second}", "move-all-nails:R2010", .. Edits.Select(e => e.Edit)]);
        Assert.True(done.ExitCode == 0, done.Errors);
        foreach ((string edit, string[] changed, string? notRead) in Edits)
        {
            DrawingReading reading = Wall.Read(File.ReadAllBytes(folder.File(edit.Replace(':', '-') + ".dxf")));
            string[] changes = Wall.Changes(reading);
            Assert.True(changes.Length == changed.Length && changes.Order(StringComparer.Ordinal).Zip(changed).All(p => p.First.StartsWith(p.Second, StringComparison.Ordinal)),
                $"{edit}: {string.Join(" | ", changes)}");
            string[] told = [.. reading.NotRead, .. reading.LeftOut];
            if (notRead is null)
                Assert.True(told.Length == 0, $"{edit}: {string.Join(" | ", told)}");
            else
                Assert.Contains(notRead, Assert.Single(told), StringComparison.Ordinal);
        }
        // All nails moved alike, and the outlines of the wall not: every nail has moved.
        string[] all = Wall.Changes(Wall.Read(File.ReadAllBytes(folder.File("move-all-nails-R2010.dxf"))));
        Assert.Equal(Wall.Layout.Nails.Count, all.Count(c => c.Contains(" moved 0.50 ft", StringComparison.Ordinal)));
    }

    /// <summary>Every nail was called moved, or the drawing turned by an odd angle.</summary>
    [Theory]
    [InlineData(-1, 1, true)]
    [InlineData(1, -1, true)]
    [InlineData(2, 1, true)]
    [InlineData(-1, -1, false)]
    [InlineData(12, 12, false)]
    public void A_drawing_that_is_mirrored_or_stretched_as_a_whole_is_refused(double x, double y, bool isRefused)
    {
        SheetGen.Dxf.DxfDocument document = SheetGen.Dxf.DxfReader.Read(Wall.Drawing).Document!;
        SheetGen.Dxf.DxfPoint At(SheetGen.Dxf.DxfPoint p) => new(p.X * x, p.Y * y);
        SheetGen.Dxf.DxfEntity[] scaled = [.. document.Model.Select(e => e switch
        {
            SheetGen.Dxf.DxfInsert i => i with { Position = At(i.Position), ScaleX = i.ScaleX * x, ScaleY = i.ScaleY * y },
            SheetGen.Dxf.DxfPolyline p => p with { Vertices = [.. p.Vertices.Select(v => v with { Point = At(v.Point) })] },
            _ => e,
        })];
        document.Model.Clear();
        document.Model.AddRange(scaled);
        using var stream = new MemoryStream();
        SheetGen.Dxf.DxfWriter.Write(document, stream);
        var problems = new List<Model.Problems.Problem>();
        DrawingReading? reading = EditedDrawing.Read(stream.ToArray(), "edited.dxf", Wall.Project, Wall.Layout, Wall.Sheets, problems);
        if (isRefused)
            Assert.Contains("mirrored, or stretched", Assert.Single(problems).Message, StringComparison.Ordinal);
        else
            Assert.Empty(Wall.Changes(reading!));
        Assert.Equal(isRefused, reading is null);
    }

    [Fact]
    public void A_plan_tells_where_a_nail_was_dragged_and_turned()
    {
        Nail nail = Wall.Layout.Nails.First(n => n.Mark == First);
        string text = System.Text.Encoding.ASCII.GetString(Wall.Plan);
        var problems = new List<Model.Problems.Problem>();
        SheetGen.Dxf.DxfDocument document = SheetGen.Dxf.DxfReader.Read(Wall.Plan).Document!;
        int at = document.Model.FindIndex(e => e is SheetGen.Dxf.DxfLine l && l.XData.Any(x => x.Values.Contains(new SheetGen.Dxf.DxfXValue.Text(First))));
        var line = (SheetGen.Dxf.DxfLine)document.Model[at];
        SheetGen.Dxf.DxfPoint way = line.End - line.Start;
        document.Model[at] = line with { End = line.Start + way.Rotated(-10) };
        using var stream = new MemoryStream();
        SheetGen.Dxf.DxfWriter.Write(document, stream);
        string change = Assert.Single(Wall.Changes(Wall.Read(stream.ToArray())));
        Assert.StartsWith(First + " turned from no splay to splay 10 deg ", change, StringComparison.Ordinal);
        Assert.NotEmpty(text);
        Assert.Empty(problems);
        Assert.Equal(0, nail.Splay);
    }

    /// <summary>Metres, inches and millimetres were once read as feet, and an emptied value was passed over without a word.</summary>
    [Theory]
    [InlineData("LENGTH", "26'", "length 20 to 26 ft", null)]
    [InlineData("LENGTH", "26 ft", "length 20 to 26 ft", null)]
    [InlineData("LENGTH", "8 m", null, "LENGTH reads \"8 m\", which is no number of ft; 20 is kept")]
    [InlineData("LENGTH", "240\"", null, "LENGTH reads \"240\"\", which is no number of ft; 20 is kept")]
    [InlineData("LENGTH", "900 mm", null, "LENGTH reads \"900 mm\", which is no number of ft; 20 is kept")]
    [InlineData("LENGTH", "", null, "LENGTH is empty; 20 is kept")]
    [InlineData("SPLAY", " ", null, "SPLAY is empty; 0 is kept")]
    [InlineData("INCLINATION", "18 deg", "inclination 15 to 18 deg", null)]
    [InlineData("INCLINATION", "18'", null, "INCLINATION reads \"18'\", which is no number of degrees below horizontal; 15 is kept")]
    public void A_value_is_read_in_the_units_of_the_wall_alone(string tag, string typed, string? change, string? notRead)
    {
        SheetGen.Dxf.DxfDocument document = SheetGen.Dxf.DxfReader.Read(Wall.Drawing).Document!;
        int at = document.Model.FindIndex(e => e is SheetGen.Dxf.DxfInsert i && i.XData.Any(x => x.Values.Contains(new SheetGen.Dxf.DxfXValue.Text(First))));
        var nail = (SheetGen.Dxf.DxfInsert)document.Model[at];
        document.Model[at] = nail with { Attributes = [.. nail.Attributes.Select(a => a.Tag == tag ? a with { Text = a.Text with { Value = typed } } : a)] };
        using var stream = new MemoryStream();
        SheetGen.Dxf.DxfWriter.Write(document, stream);
        DrawingReading reading = Wall.Read(stream.ToArray());
        Assert.Equal(change is null ? [] : [$"{First} {change}"], Wall.Changes(reading));
        Assert.Equal(notRead is null ? [] : [$"{First}: {notRead}"], reading.NotRead);
    }

    [Theory]
    [InlineData("26 us-ft", LengthUnit.SurveyFoot, 26.0)]
    [InlineData("26'", LengthUnit.SurveyFoot, 26.0)]
    [InlineData("26 FT", LengthUnit.SurveyFoot, 26.0)]
    [InlineData("8 m", LengthUnit.SurveyFoot, null)]
    [InlineData("8 m", LengthUnit.Metre, 8.0)]
    [InlineData("8000 mm", LengthUnit.Metre, null)]
    [InlineData("26 ft", LengthUnit.Metre, null)]
    public void A_length_is_read_in_each_unit_of_a_project(string typed, LengthUnit unit, double? length) =>
        Assert.Equal(length, NailBlock.Number(typed, unit));

    [Fact]
    public void A_turned_nail_is_checked_as_any_other_layout()
    {
        DrawingReading reading = Wall.Read(Wall.Drawing);
        DrawnNail[] turned = [.. reading.Nails.Select(d => d.Was!.Mark == First ? d with { Splay = -20 } : d)];
        EditedLayout edited = EditedLayout.Of(Wall.Project, Wall.Layout, turned, "by hand");
        ClearanceReport report = Checker.Check(Wall.Project, edited.Layout);
        Assert.Contains(report.Findings, f => f.Code == FindingCode.NailNail && f.Nails.Contains(First));
        Assert.Equal(NailStatus.Unresolved, edited.Layout.Nails.Single(n => n.Mark == First).Status);
        Assert.Equal([First], edited.Changed);
        Assert.DoesNotContain(report.Findings, f => f.Code == FindingCode.Hole);
    }

    [Fact]
    public void The_next_build_of_the_copy_keeps_moved_added_and_removed_nails()
    {
        DrawingReading reading = Wall.Read(Wall.Drawing);
        DrawnNail moved = reading.Nails.First(d => d.Was!.Mark == First);
        DrawnNail[] nails =
        [
            .. reading.Nails.Where(d => d.Was!.Mark is not (First or Second)),
            moved with { Along = moved.Along + 0.5, Elevation = moved.Elevation - 0.25, Splay = 3, Length = 23 },
            new DrawnNail(null, moved.Wall, 20.25, 110, 2, 14, 22),
        ];
        EditedLayout edited = EditedLayout.Of(Wall.Project, Wall.Layout, nails, "by hand");
        (IReadOnlyList<FixedNail> pins, IReadOnlyList<string> notPinned) = EditedPins.Of(Wall.Project, Wall.Layout, edited);
        Assert.Empty(notPinned);
        string? copy = FixedBlock.Put(ProjectReader.ReadText(Wall.Yaml, "wall.yaml"), Wall.Project, [("changed", pins)]);
        NailLayout next = Placer.Place(Drawing.SampleLayout.Read(copy!), new PlacingOptions());
        foreach (string mark in edited.Changed)
        {
            Nail wanted = edited.Layout.Nails.Single(n => n.Mark == mark), kept = next.Nails.Single(n => n.Mark == mark);
            Assert.Equal((wanted.Station, wanted.Elevation, wanted.Splay, wanted.Inclination, wanted.Length), (kept.Station, kept.Elevation, kept.Splay, kept.Inclination, kept.Length));
            Assert.True(kept.IsFixed);
        }
        Assert.DoesNotContain(next.Nails, n => n.Mark == Second);
        Assert.Contains(next.LeftOut, l => l.Mark == Second && l.Reason == "left out in the project file");
        Assert.DoesNotContain(Checker.Check(Wall.Project, next).Findings, f => f.Code == FindingCode.Hole);
    }

    [Fact]
    public void A_changed_nail_that_is_too_close_is_not_to_be_drilled_in_the_new_set_either()
    {
        DrawnNail[] nails = [.. Wall.Read(Wall.Drawing).Nails.Select(d => d.Was!.Mark == First ? d with { Splay = -20 } : d)];
        EditedLayout edited = EditedLayout.Of(Wall.Project, Wall.Layout, nails, "by hand");
        string copy = FixedBlock.Put(ProjectReader.ReadText(Wall.Yaml, "wall.yaml"), Wall.Project, [("changed", EditedPins.Of(Wall.Project, Wall.Layout, edited).Pins)])!;
        WallProject project = Drawing.SampleLayout.Read(copy);
        NailLayout built = Placer.Place(project, new PlacingOptions()), set = EditedLayout.Undecided(project, built, edited.Changed);
        Assert.Equal(NailStatus.Unresolved, set.Nails.Single(n => n.Mark == First).Status);
        Assert.Equal(built.Nails.Where(n => n.Mark != First), set.Nails.Where(n => n.Mark != First));
        Assert.Equal(set.Nails.Count(n => n.Status == NailStatus.Unresolved), set.Score.Unresolved.Found);
        Assert.Same(built, EditedLayout.Undecided(project, built, new HashSet<string>()));
    }

    [Theory]
    [InlineData("fixed: [{row: 1, station: 5, splay: 2}]\n")]
    [InlineData("fixed:\n- row: 1\n  station: 5\n  splay: 2\n\n# a word at the end\n")]
    public void Pins_that_were_there_stay_and_the_rest_of_the_text_too(string block)
    {
        string text = Wall.Yaml.TrimEnd() + "\n" + block;
        ReadResult read = ProjectReader.ReadText(text, "wall.yaml");
        WallProject project = read.Project!;
        FixedNail pin = project.FixedNails.Single() with { Along = 8.5 };
        string copy = FixedBlock.Put(read, project, [("kept", project.FixedNails), ("new", [pin])])!;
        Assert.Equal([5, 8.5], ProjectReader.ReadText(copy, "copy.yaml").Project!.FixedNails.Select(f => f.Along!.Value));
        Assert.StartsWith(Wall.Yaml.TrimEnd(), copy, StringComparison.Ordinal);
        Assert.Contains("# fixed:", copy, StringComparison.Ordinal);
    }
}
