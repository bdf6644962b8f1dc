using System.Text;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Texts that are no YAML, or YAML that project files do not use: one problem at its place.</summary>
public sealed class SyntaxTests
{
    [Theory]
    [InlineData("", "1:1: error R02: the file is empty (\"start\" writes a commented starter project)")]
    [InlineData("# only a comment\n", "1:1: error R02: the file is empty (\"start\" writes a commented starter project)")]
    [InlineData("format: 1\nproject:\n\ttitle: x\n", "3:1: error R02: a tab is used as indentation (indent with spaces)")]
    [InlineData("format: 1\r\nproject:\r\n  title: x\r\n \tunits: ft\r\n", "4:2: error R02: a tab is used as indentation (indent with spaces)")]
    [InlineData("format: 1\nproject: {title: x, units: ft\nwalls: []\n", "2:10: error R02: this brace { is not closed: line 3 starts a new key (add } behind the last value)")]
    [InlineData("format: 1\nproject: title: x\n", "2:10: error R02: a colon with a blank stands inside of a value (put \"title\" on a line of its own, or the text in quotes)")]
    [InlineData("format: 1\nproject:\n  title: \"abc", "3:10: error R02: this quote is not closed (add \" behind the text)")]
    [InlineData("format: 1\nproject: {title: x\n", "2:19: error R02: the YAML cannot be read: while parsing a flow mapping, did not find expected ',' or '}' (the bracket at 2:10 is open here)")]
    [InlineData("format: 1\nproject: \u0001\n", "2:10: error R02: a control character stands here (remove it; save the file as plain UTF-8 text)")]
    [InlineData("format: &a 1\n", "1:9: error R03: anchors are not used in project files: &a (write the value out where it is needed)")]
    [InlineData("format: *a\n", "1:9: error R03: aliases are not used in project files: *a (write the value out)")]
    [InlineData("project:\n  <<: {a: 1}\n", "2:3: error R03: merge keys (<<) are not used in project files (write the keys out)")]
    [InlineData("format: !!int 1\n", "1:9: error R03: tags are not used in project files: tag:yaml.org,2002:int (remove the tag)")]
    [InlineData("format: 1\n---\nformat: 1\n", "2:1: error R03: a second YAML document starts here (keep one document in a file)")]
    [InlineData("? [a, b]\n: 1\n", "1:3: error R03: a key must be a plain word (look for a missing colon or bracket)")]
    [InlineData("- a\n", "1:1: error R13: the project file takes a block of keys, found a list")]
    [InlineData("walls", "1:1: error R13: the project file takes a block of keys, found \"walls\"")]
    public void A_text_that_is_no_project_file_gives_one_problem(string text, string problem) =>
        Assert.Equal([$"{BaseWall.FileName}:{problem}"], BaseWall.Problems(text));

    /// <summary>A slip in the base file is named in plain words at its own line, wherever the YAML reader stopped.</summary>
    [Theory]
    [InlineData("    face_offset: 0\n", "   face_offset: 0\n", "15:4: error R02: line 15 is indented by 3, its neighbours by 4 (lines of one block start in one column)")]
    [InlineData("    face_offset: 0\n", "      face_offset: 0\n", "15:7: error R02: line 15 is indented by 6, its neighbours by 4 (lines of one block start in one column)")]
    [InlineData("    face_offset: 0\n", "    face_offset:0\n", "15:5: error R02: \"face_offset:0\" has no blank behind its colon (put a blank after the colon: face_offset: 0)")]
    [InlineData("    face_offset: 0\n", "    face_offset 0\n", "15:5: error R02: \"face_offset 0\" has no colon behind the key (write face_offset: 0)")]
    [InlineData("    face_offset: 0\n", "    face_offset = 0\n", "15:5: error R02: \"face_offset = 0\" has no colon behind the key (write face_offset: 0)")]
    [InlineData("    face_offset: 0\n", "    face_offset: 0\n    bottom: {steps: [[10+00, 102}]\n", "16:33: error R02: this } does not match the [ at 16:22 (write ] there, or add it before)")]
    [InlineData("    face_offset: 0\n", "    facing: {shotcrete: 4 in kind: other}\n", "15:30: error R02: there is no comma before \"kind\" (write shotcrete: 4 in, kind: ...; a text with a colon stands in quotes)")]
    [InlineData("    face_offset: 0\n", "    face_offset: \"5'-6\"\"\n", "15:24: error R02: the value goes on behind its closing quote (put the quotes round the whole value; feet and inches need none: 5'-6\")")]
    [InlineData("    face_offset: 0\n", "\t face_offset: 0\n", "15:1: error R02: a tab is used as indentation (indent with spaces)")]
    [InlineData("    face_offset: 0\n", "    top: [[10+00, 118], [11+00, 120]\n", "15:10: error R02: this bracket [ is not closed: line 16 starts a new key (add ] behind the last value)")]
    public void A_slip_is_named_at_its_own_line(string good, string slip, string problem)
    {
        string text = BaseWall.With("    stations: [10+00, 11+00]\n", "    stations: [10+00, 11+00]\n" + good);
        Assert.Equal([$"{BaseWall.FileName}:{problem}"], BaseWall.Problems(BaseWall.Replace(text, good, slip)));
    }

    [Fact]
    public void A_bare_bar_size_is_named_and_the_other_faults_too()
    {
        string text = BaseWall.With("lengths: 24\n        bar: {size: \"#8\", grade: 75}", "lengths: 24\n        bar: {size: #9, grade: 75}");

        Assert.Equal(
            ["wall.yaml:37:21: error R12: a # outside quotes starts a comment (write the size in quotes: \"#9\")", "wall.yaml:55:3: error R10: unknown key \"min_gapp\" in \"rules\" (did you mean \"min_gap\"?)"],
            BaseWall.Problems(BaseWall.Replace(text, "  min_gap: 2", "  min_gapp: 2")));
    }

    [Fact]
    public void Deep_nesting_is_refused() =>
        Assert.Equal(["wall.yaml:1:36: error R04: the file is nested more than 32 deep"], BaseWall.Problems("a: " + new string('[', 100_000)));

    [Fact]
    public void An_alias_bomb_is_refused_at_its_first_anchor()
    {
        var bomb = new StringBuilder("a0: &a0 [x, x]\n");
        for (int i = 1; i < 30; i++)
            bomb.Append($"a{i}: &a{i} [*a{i - 1}, *a{i - 1}]\n");

        Assert.Equal(["wall.yaml:1:5: error R03: anchors are not used in project files: &a0 (write the value out where it is needed)"], BaseWall.Problems(bomb.ToString()));
    }

    [Fact]
    public void A_huge_file_is_refused() =>
        Assert.Equal(["wall.yaml:1:1: error R04: the file has 4000001 characters; the limit is 4000000"], BaseWall.Problems(new string('x', 4_000_001)));

    [Fact]
    public void Too_many_values_are_refused()
    {
        string text = "a:\n" + string.Concat(Enumerable.Repeat("- x\n", 400_001));

        Assert.Equal(["wall.yaml:399999:3: error R04: the file has more than 400000 values"], BaseWall.Problems(text));
    }

    [Fact]
    public void A_thousand_problems_are_shown_and_the_rest_is_said_to_be_there()
    {
        string[] problems = BaseWall.Problems(string.Concat(Enumerable.Range(0, 5000).Select(i => $"key{i}: 1\n")));

        Assert.Equal(1001, problems.Length);
        Assert.Contains(problems, p => p.Contains("error R04: there are more problems than are shown"));
    }

    /// <summary>Any number of warnings refuses no file, and hides no error.</summary>
    [Fact]
    public void Warnings_beyond_a_thousand_are_counted_apart_from_errors()
    {
        var list = new ProblemList();
        for (int i = 1; i <= 1500; i++)
            list.Add(ProblemCodes.AcrossBend, new SourceSpot("f", i, 1), "a warning");
        Assert.False(list.HasErrors);
        Assert.Equal(1001, list.Sorted().Count);
        Assert.Equal("there are more warnings than are shown", Assert.Single(list.Sorted(), p => p.Code == "R04").Message);

        list.Add(ProblemCodes.TooManyNails, new SourceSpot("f", 2000, 1), "an error");
        Assert.True(list.HasErrors);
        Assert.Contains(list.Sorted(), p => p.Message == "an error");
    }

    [Fact]
    public void A_missing_file_and_one_that_is_not_UTF8_are_problems()
    {
        string folder = Directory.CreateTempSubdirectory("sheetgen").FullName;
        string latin = Path.Combine(folder, "latin.yaml"), none = Path.Combine(folder, "none.yaml");
        File.WriteAllBytes(latin, [.. "format: 1 # "u8, 0xE9]);

        Assert.Equal([$"{none}:1:1: error R01: there is no such file (check the path)"], ProjectReader.Read(none).Problems.Select(ProblemPrinter.Plain));
        Assert.Equal([$"{latin}:1:1: error R01: the file is not UTF-8 text (save it as UTF-8)"], ProjectReader.Read(latin).Problems.Select(ProblemPrinter.Plain));
        Assert.Equal([$"{folder}:1:1: error R01: the file is a folder (check the path)"], ProjectReader.Read(folder).Problems.Select(ProblemPrinter.Plain));
        Directory.Delete(folder, true);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Line_ends_of_every_kind_keep_places(string end)
    {
        string text = BaseWall.With("  min_gap: 2", "  min_gapp: 2").ReplaceLineEndings(end);

        Assert.Equal(["wall.yaml:55:3: error R10: unknown key \"min_gapp\" in \"rules\" (did you mean \"min_gap\"?)"], BaseWall.Problems(text));
    }

    [Theory]
    [InlineData("\uFEFFfromat: 1\n", "format: 1\n", "1:1")]
    [InlineData("project: {title: \"Écluse d'été\", nombre: 1, number: T-1, units: ft}\n", "project: {title: Base wall, number: T-1, units: ft}\n", "2:34")]
    [InlineData("project: {title:\tTabbed,\tnombre: 1, number: T-1, units: ft}\n", "project: {title: Base wall, number: T-1, units: ft}\n", "2:26")]
    public void A_mark_at_the_start_accents_and_tabs_keep_columns(string with, string line, string place)
    {
        string[] problems = BaseWall.Problems(BaseWall.With(line, with));

        Assert.StartsWith($"wall.yaml:{place}: error R10: unknown key", Assert.Single(problems));
    }

    [Fact]
    public void A_last_line_without_line_end_is_read() =>
        Assert.Equal(
            ["wall.yaml:55:12: error R14: \"min_gap\" is not a length: \"2 yd\" (unknown unit \"yd\"; lengths take ft, us-ft, in, m, cm, mm)"],
            BaseWall.Problems(BaseWall.With("min_gap: 2\n", "min_gap: 2 yd")));
}
