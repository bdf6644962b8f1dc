using System.IO.Compression;
using SheetGen.Model.Revisions;
using SheetGen.Tests.Outside;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>
/// Drawings that were edited in LibreCAD's window (2.2.0) and saved there, see Cases/librecad/README.md: what was done is named, and nothing
/// else. LibreCAD drops the extended data and the values of attributes, so that every nail is known by its place.
/// </summary>
public sealed class LibreCadTests
{
    private const string FrameGone = "the frame of the elevation of Wall 1 is gone, or has lost its data; that of the project as it is now was taken";
    private const string ByPlace = " was known by its place alone: its block has lost mark and attributes";
    private const string PlanTells = "a plan tells no elevations: heads keep their height, holes their inclination";
    private const string PlanLost = "the lines of the nails have lost their marks; each nail was known by where its line lies";

    /// <summary>The edit; what changed; what is said not to be read; what else is noted.</summary>
    private static readonly (string Edit, string[] Changed, string[] NotRead, string[] Notes)[] Edits =
    [
        ("saved-2007", [], [], []),
        ("saved-2004", [], [], []),
        ("saved-2000", [], [], []),
        ("saved-r14", [], [], []),
        ("saved-r12", [], [], []),
        ("move", ["A-2-02 moved 1.00 ft down-station, 0+06.00 to 0+05.00"], [], ["A-2-02" + ByPlace]),
        ("move-r12", ["A-2-04 lowered 0.50 ft, elevation 106.00 to 105.50"], [], ["A-2-04" + ByPlace]),
        ("move-two",
            ["A-1-02 moved 0.50 ft down-station, 0+06.00 to 0+05.50; lowered 0.25 ft, elevation 110.00 to 109.75", "A-3-05 moved 0.50 ft down-station, 0+18.00 to 0+17.50; lowered 0.25 ft, elevation 102.00 to 101.75"],
            [], ["A-1-02" + ByPlace, "A-3-05" + ByPlace]),
        ("move-far", ["A-1-03 moved 2.50 ft up-station, 0+10.00 to 0+12.50"], [], ["A-1-03" + ByPlace]),
        ("copy", ["A-1-05a added at 0+19.50, elevation 110.00, no splay, 15 deg down, length 20 ft"], [], []),
        ("delete", ["A-3-03 removed from 0+10.00, elevation 102.00, no splay, 15 deg down, length 16 ft"], [], []),
        ("delete-two",
            ["A-1-01 removed from 0+02.00, elevation 110.00, no splay, 15 deg down, length 20 ft", "A-2-06 removed from 0+22.00, elevation 106.00, no splay, 15 deg down, length 18 ft"],
            [], []),
        ("delete-and-move", ["A-2-06 removed from 0+22.00, elevation 106.00, no splay, 15 deg down, length 18 ft", "A-3-02 moved 1.00 ft up-station, 0+06.00 to 0+07.00"], [], ["A-3-02" + ByPlace]),
        ("rotate", [], ["A-1-03: its block is turned by 90 degrees on the drawing, which says nothing of the hole; SPLAY and INCLINATION count, and they are as they were"], []),
        ("explode", [], ["A-2-05: its block is exploded; its symbol stands where it stood, so the nail is taken as it was"], []),
        ("explode-turned", [], ["A-2-04: its block is exploded; its symbol stands where it stood, so the nail is taken as it was"], []),
        ("explode-and-copy", ["A-1-05a added at 0+19.50, elevation 110.00, no splay, 15 deg down, length 20 ft"], ["A-2-05: its block is exploded; its symbol stands where it stood, so the nail is taken as it was"], []),
        ("delete-and-copy",
            ["A-2-01 removed from 0+02.00, elevation 106.00, no splay, 15 deg down, length 18 ft", "A-3-03a added at 0+11.50, elevation 102.00, no splay, 15 deg down, length 16 ft"],
            [], []),
        ("rename-layer", [], [], []),
        ("other-entities", [], [], []),
        ("inches", [], [], ["the drawing is scaled by 12; it was read in the project's unit"]),
        ("inches-and-delete", ["A-3-03 removed from 0+10.00, elevation 102.00, no splay, 15 deg down, length 16 ft"], [], ["the drawing is scaled by 12; it was read in the project's unit"]),
        ("move-all", [], [], ["the drawing is moved by 1000, 500; it was read where it was"]),
        ("move-all-and-one", ["A-2-02 moved 1.00 ft down-station, 0+06.00 to 0+05.00"], [], ["the drawing is moved by -37.25, 12.5; it was read where it was", "A-2-02" + ByPlace]),
        ("turn-all", [], [], ["the drawing is turned by 90 degrees; it was read as it was"]),
        ("plan-saved", [], [], []),
        ("plan-saved-r12", [], [], []),
        ("plan-move", ["A-1-02 moved 1.00 ft up-station, 0+06.00 to 0+07.00"], [], []),
        ("plan-turn", ["A-1-03 turned from no splay to splay 10 deg up-station"], [], []),
        ("plan-delete", ["A-2-04 removed from 0+14.00, elevation 106.00, splay 5 deg up-station, 15 deg down, length 18 ft"], [], []),
        ("plan-copy", [], ["a line like a nail's from 2019.5, 5000 to 2019.5, 4980.68: the plan has lost its marks, so it is not known what nail it is; not read"], []),
        ("plan-move-all", [], [], ["the drawing is moved by -2000, -5000; it was read where it was"]),
        ("plan-turn-all", [], [], ["the drawing is turned by 90 degrees; it was read as it was", "the drawing is moved by 7000, 3000; it was read where it was"]),
        ("plan-inches", [], [], ["the drawing is scaled by 12; it was read in the project's unit"]),
    ];

    private static readonly EditedWall Wall = new(File.ReadAllText(Path.Combine(Folder, "wall.yaml")));

    private static string Folder => Path.Combine(OutsideReader.ToolsFolder(), "..", "SheetGen.Tests", "Cases", "librecad");

    public static TheoryData<string> Names => [.. Edits.Select(e => e.Edit)];

    [Theory, MemberData(nameof(Names))]
    public void An_edit_in_the_window_of_a_drawing_program_is_named_and_nothing_else(string edit)
    {
        (_, string[] changed, string[] notRead, string[] notes) = Edits.Single(e => e.Edit == edit);
        DrawingReading reading = Wall.Read(Drawing(edit));
        Assert.Equal(changed, Wall.Changes(reading).Order(StringComparer.Ordinal));
        Assert.Equal(notRead, reading.NotRead);
        string[] usual = edit.StartsWith("plan", StringComparison.Ordinal) ? [PlanTells, PlanLost] : [FrameGone];
        Assert.Equal(usual.Concat(notes).Order(StringComparer.Ordinal), reading.Notes.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_drawing_that_was_edited_is_asked_for() =>
        Assert.Equal(Edits.Select(e => e.Edit).Order(StringComparer.Ordinal), Directory.GetFiles(Folder, "*.dxf.gz").Select(f => Path.GetFileName(f)[..^".dxf.gz".Length]).Order(StringComparer.Ordinal));

    /// <summary>The edits of today's sheets, made anew in the window; it takes minutes, so it is asked for by name.</summary>
    [Fact, Trait("Category", "Outside")]
    public void Edits_made_anew_are_those_that_are_kept()
    {
        if (Environment.GetEnvironmentVariable("SHEETGEN_WINDOW") is not { Length: > 0 } wanted)
        {
            Assert.Skip("SHEETGEN_WINDOW names the edits to make anew in LibreCAD's window, for example move,copy");
            return;
        }
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder.File("sheets.dxf"), Wall.Drawing);
        File.WriteAllBytes(folder.File("plan.dxf"), Wall.Plan);
        string[] names = wanted.Split(',');
        OutsideResult done = OutsideReader.Program("python3").Run([Path.Combine(OutsideReader.ToolsFolder(), "edit_librecad.py"), folder.File("sheets.dxf"), folder.File("plan.dxf"), folder.Path, .. names]);
        Assert.True(done.ExitCode == 0, done.Errors);
        foreach (string name in names)
            Assert.Equal(Wall.Changes(Wall.Read(Drawing(name))), Wall.Changes(Wall.Read(Drawing(name, folder.Path))));
    }

    private static byte[] Drawing(string edit, string? folder = null)
    {
        using var file = new GZipStream(File.OpenRead(Path.Combine(folder ?? Folder, edit + ".dxf.gz")), CompressionMode.Decompress);
        using var stream = new MemoryStream();
        file.CopyTo(stream);
        return stream.ToArray();
    }
}
