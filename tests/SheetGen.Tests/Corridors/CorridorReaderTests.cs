using SheetGen.Model.Corridors;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Corridors;
using Xunit;

namespace SheetGen.Tests.Corridors;

/// <summary>Lists, folders and patterns of project files.</summary>
public sealed class CorridorReaderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("sheetgen-list-").FullName;

    [Fact]
    public void A_list_gives_its_walls_with_what_they_inherit()
    {
        Corridor corridor = Good("""
            format: 1
            title: Cedar corridor
            stage: 1
            contract: C-1
            prove: true
            walls:
              - walls/ramp a.yaml
              - {file: walls/b.yaml, name: Ramp B, stage: 2, prove: false}
              - {file: c/wall.yaml, coordinates: local}
            """);
        Assert.Equal(["ramp a", "Ramp B", "c"], corridor.Walls.Select(w => w.Name));
        Assert.Equal(["walls/ramp a.yaml", "walls/b.yaml", "c/wall.yaml"], corridor.Walls.Select(w => w.Shown));
        Assert.Equal([("1", "C-1", true, ""), ("2", "C-1", false, ""), ("1", "C-1", true, "local")], corridor.Walls.Select(w => (w.Stage, w.Contract, w.Prove, w.Coordinates)));
        Assert.Equal((7, 5), (corridor.Walls[0].Spot.Line, corridor.Walls[0].Spot.Column));
    }

    /// <summary>The workbook's formulas, which know no case, once summed the walls of C-1 and c-1 under both, and those of a stage "all" over every stage.</summary>
    [Fact]
    public void A_contract_is_one_whatever_its_case_and_none_is_called_all()
    {
        Corridor corridor = Good("format: 1\ntitle: T\nwalls:\n  - {file: a.yaml, contract: C-1, stage: 2a}\n  - {file: b.yaml, contract: c-1, stage: 2A}\n  - {file: c.yaml}\n");
        Assert.Equal([("C-1", "2a"), ("C-1", "2a"), ("", "")], corridor.Walls.Select(w => (w.Contract, w.Stage)));
        Assert.Equal(
        [
            "list.yaml:3:11: error R15: \"contract\" cannot be \"all\": the register's sums over every contract stand under that word (write another name)",
            "list.yaml:5:27: error R15: \"stage\" cannot be \"All\": the register's sums over every stage stand under that word (write another name)",
        ], Problems("format: 1\ntitle: T\ncontract: all\nwalls:\n  - {file: a.yaml, stage: All}\n"));
    }

    /// <summary>Every fault of a list in one run, each with place and hint.</summary>
    [Fact]
    public void A_bad_list_gives_exactly_its_problems()
    {
        string[] problems = Problems("""
            format: 2
            titel: Cedar corridor
            walls:
              - {file: a.yaml, name: "a/b"}
              - {name: X}
              - {file: b.yaml, name: Ramp}
              - {file: c.yaml, name: RAMP, stge: 2}
              - {file: d.yaml, prove: perhaps}
              - {file: e.yaml, name: "=1+1"}
              - {file: nul.yaml}
            """);
        Assert.Equal(
        [
            "list.yaml:1:9: error R15: \"format\" cannot be 2 (it takes 1)",
            "list.yaml:2:1: error R10: unknown key \"titel\" in a corridor list (did you mean \"title\"?)",
            "list.yaml:4:26: error L01: \"a/b\" cannot be the name of a set: \"/\" cannot stand in the name of a folder (use letters, digits, blanks, - and _)",
            "list.yaml:5:5: error R11: \"file\" is missing in a wall of the list (for example file: walls/ramp-a.yaml)",
            "list.yaml:7:26: error R20: two walls of the list are named \"RAMP\", and each needs a folder of its own (give one of them another name; the first is in line 6)",
            "list.yaml:7:32: error R10: unknown key \"stge\" in a wall of the list (did you mean \"stage\"?)",
            "list.yaml:8:27: error R13: \"prove\" takes true or false, found \"perhaps\"",
            "list.yaml:9:26: error R13: \"name\" cannot start with =: a spreadsheet that reads the tables would take it for a formula (start it with a letter or a digit)",
            "list.yaml:10:12: error L01: \"nul\" cannot be the name of a set: some systems keep that name for a device (use letters, digits, blanks, - and _)",
        ], problems);
    }

    [Fact]
    public void A_folder_gives_its_project_files_and_says_what_it_passes_over()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "two"));
        File.WriteAllText(Path.Combine(_folder, "one.yaml"), "format: 1\nproject: {title: T, units: ft}\n");
        File.WriteAllText(Path.Combine(_folder, "two", "wall.yaml"), "format: 1\n");
        File.WriteAllText(Path.Combine(_folder, "items.yaml"), "format: 1\nname: Generic\nitems: []\n");
        Corridor corridor = CorridorReader.Read([_folder]).Corridor!;
        Assert.Equal(["one", "two"], corridor.Walls.Select(w => w.Name));
        Assert.Contains("items.yaml was passed over", Assert.Single(corridor.Notes), StringComparison.Ordinal);

        File.WriteAllText(Path.Combine(_folder, "corridor.yaml"), "format: 1\ntitle: T\nwalls: [one.yaml]\n");
        Assert.Equal(["one"], CorridorReader.Read([_folder]).Corridor!.Walls.Select(w => w.Name));
    }

    [Fact]
    public void A_pattern_gives_the_files_that_fit_and_names_none_twice()
    {
        foreach (string name in new[] { "a/wall.yaml", "b/c/wall.yaml", "b/c/other.yaml", "b/wall.txt" })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(_folder, name))!);
            File.WriteAllText(Path.Combine(_folder, name), "project:\n");
        }
        Assert.Equal(["a", "other", "c"], CorridorReader.Read([Path.Combine(_folder, "**", "*.yaml")]).Corridor!.Walls.Select(w => w.Name));
        Assert.Equal(["a"], CorridorReader.Read([Path.Combine(_folder, "?", "wall.yaml")]).Corridor!.Walls.Select(w => w.Name));
        Assert.Equal("R01", Assert.Single(CorridorReader.Read([Path.Combine(_folder, "*.yaml")]).Problems).Code);
        Assert.Equal("R20", Assert.Single(CorridorReader.Read([Path.Combine(_folder, "a/wall.yaml"), Path.Combine(_folder, "b/../a/wall.yaml")]).Problems).Code);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private Corridor Good(string text)
    {
        CorridorResult read = Read(text);
        Assert.Equal([], read.Problems.Select(ProblemPrinter.Plain));
        return read.Corridor!;
    }

    private string[] Problems(string text)
    {
        CorridorResult read = Read(text);
        Assert.Null(read.Corridor);
        return [.. read.Problems.Select(p => ProblemPrinter.Plain(p)[(_folder.Length + 1)..])];
    }

    private CorridorResult Read(string text)
    {
        string path = Path.Combine(_folder, "list.yaml");
        File.WriteAllText(path, text);
        return CorridorReader.Read([path]);
    }
}
