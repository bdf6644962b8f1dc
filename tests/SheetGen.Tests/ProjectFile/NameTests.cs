using SheetGen.Layout.Placing;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Inputs;
using SheetGen.Writers.Dxf;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Names that drawings, spreadsheets and marks of nails cannot tell apart.</summary>
public sealed class NameTests
{
    private static string Section(string name, string from, string to) =>
        $"{{name: \"{name}\", stations: [{from}, {to}], horizontal_spacing: 4, vertical_spacing: 4, top_row_depth: 2, inclination: 15, lengths: 8, bar: {{size: \"#8\", grade: 75}}, hole: 6 in}}";

    private static string Wall(string name, string from, string to, params string[] sections) =>
        $"  - {{name: \"{name}\", layout_line: L, retained_side: right, stations: [{from}, {to}], top: [[{from}, 112], [{to}, 112]], bottom: {{steps: [[{from}, 100]]}}, sections: [{string.Join(", ", sections)}]}}\n";

    private static string File(string walls, string more = "") =>
        "format: 1\nproject: {title: T, units: ft}\nlayout_lines:\n  - {name: L, start: {station: 10+00, northing: 0, easting: 0, azimuth: 90}, elements: [{line: 100}]}\nwalls:\n" + walls + more;

    private static string Pile(string name, string station) => $"  - {{name: {name}, kind: shaft, at: {{station: {station}, offset: 6}}, diameter: 3, top: 112, bottom: 80}}\n";

    /// <summary>Two sections "A" and "a" once ended in an exception: a table of a spreadsheet cannot have both as heads.</summary>
    [Fact]
    public void Names_that_differ_in_upper_and_lower_case_only_are_refused()
    {
        using var folder = new InputFolder();
        Assert.Equal(
            ["wall.yaml:6:339: error R20: the name \"a\" differs from that of the section in line 6, \"A\", in upper and lower case only (rename one of them)"],
            folder.Problems(File(Wall("W", "10+00", "10+40", Section("A", "10+00", "10+20"), Section("a", "10+20", "10+40")))).Select(p => p.Split(" [")[0]));
        string two = Wall("É", "10+00", "10+20", Section("A", "10+00", "10+20")) + Wall("é", "10+20", "10+40", Section("A", "10+20", "10+40"));
        string[] problems = folder.Problems(File(two, "obstructions:\n" + Pile("P", "10+10") + Pile("p", "10+20")));
        Assert.Equal(2, problems.Length);
        Assert.All(problems, p => Assert.Contains("error R20: the name", p, StringComparison.Ordinal));
        Assert.Contains(folder.Problems(File(Wall("X, section A", "10+00", "10+20", Section("B", "10+00", "10+20")))), p => p.Contains("error R13: a wall's name cannot have", StringComparison.Ordinal));
    }

    /// <summary>Two walls with names of 251 characters once ended in an exception: the DXF format keeps 255 of a mark beside an entity.</summary>
    [Theory]
    [InlineData(100, true)]
    [InlineData(101, false)]
    public void Names_have_a_length_that_drawings_take(int length, bool inside)
    {
        using var folder = new InputFolder();
        string wall = new('N', length - 1), section = new('S', length);
        ReadResult read = folder.Read(File(Wall(wall + "1", "10+00", "10+20", Section(section, "10+00", "10+20")) + Wall(wall + "2", "10+20", "10+40", Section(section, "10+20", "10+40"))));
        Assert.Equal(!inside, read.Problems.Any(p => p.Message == "\"name\" takes one line of text, at most 100 characters"));
        if (read.Project is { } project)
            DxfSheetWriter.Write(SampleSheets.Compose(project, Placer.Place(project, new PlacingOptions())), new MemoryStream());
        Assert.Equal(inside, read.Project is not null);
    }

    /// <summary>No two nails of a project share a mark, whatever walls and sections are called.</summary>
    [Theory]
    [InlineData("A-B", "S", "A", "B-S", "A B", "S")]
    [InlineData("W", "A-B", "W-A", "B", "Wall", "A-B")]
    [InlineData("Wall 1", "A", "Wall-1", "A", "WALL_1", "A")]
    [InlineData("1a", "A", "1A x", "A", "1ax", "A")]
    public void Marks_are_told_apart(string first, string itsSection, string second, string secondSection, string third, string thirdSection)
    {
        using var folder = new InputFolder();
        ReadResult read = folder.Read(File(Wall(first, "10+00", "10+20", Section(itsSection, "10+00", "10+20")) + Wall(second, "10+20", "10+40", Section(secondSection, "10+20", "10+40"))
            + Wall(third, "10+40", "10+60", Section(thirdSection, "10+40", "10+60"))));
        Assert.Equal([], read.Problems.Where(p => p.Severity == Severity.Error).Select(ProblemPrinter.Plain));
        string[] marks = [.. Placer.Place(read.Project!, new PlacingOptions()).Nails.Select(n => n.Mark)];
        Assert.True(marks.Length > 30);
        Assert.Equal(marks.Length, marks.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }
}
