using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>No set is refused for want of room of a note: what a sheet cannot hold stands on a further one, which it names.</summary>
public class SheetNotesTests
{
    [Theory]
    [InlineData("heron-street-bridge", "ISO A3")]
    [InlineData("heron-street-bridge", "ANSI B")]
    public void Notes_without_room_stand_on_a_further_sheet_that_their_own_names(string demo, string size)
    {
        WallProject project = SampleLayout.Read(Repository.Read("demo", demo, "wall.yaml"));
        SheetSet set = SampleSheets.Compose(project with { Sheets = project.Sheets with { Size = size } }, SampleLayout.Make(project));

        Assert.DoesNotContain(set.Findings, f => f.Severity == Severity.Error);
        Sheet[] full = [.. set.Sheets.Where(s => Words(s).Any(w => w.StartsWith("MORE NOTES", StringComparison.Ordinal)))];
        Assert.NotEmpty(full);
        foreach (Sheet sheet in full)
        {
            string further = Words(sheet).First(w => w.StartsWith("MORE NOTES", StringComparison.Ordinal)).Split(' ')[^1];
            string[] continued = [.. Words(set.Sheets.Single(s => s.Name == further))];
            Assert.Contains($"NOTES OF SHEET {sheet.Name}", continued);
            Assert.Contains(set.Sheets.SelectMany(s => s.Paper).OfType<BlockReference>().Where(b => b.Block == "TABLE-INDEX").SelectMany(b => b.Attributes), a => a.Value == further);
        }
    }

    /// <summary>Views are drawn before the set is planned: each name that they print is in the end that of a sheet, with two digits or three, and match lines name their neighbours.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(96)]
    public void Every_name_that_a_sheet_prints_is_of_the_set(int first)
    {
        WallProject project = SampleLayout.Read(Repository.Read("demo", "heron-street-bridge", "wall.yaml"));
        SheetSet set = SampleSheets.Compose(project with { Sheets = project.Sheets with { Size = "ISO A3", FirstNumber = first } }, SampleLayout.Make(project));
        string[] names = [.. set.Sheets.Select(s => s.Name)];
        string[] words = [.. set.Sheets.SelectMany(s => s.Paper).Concat(set.Model).OfType<Text>().Select(t => t.Value), .. set.Findings.Select(f => f.Message)];
        string[] printed = [.. words.SelectMany(w => Regex.Matches(w, @"SN-\w*").Select(m => m.Value))];

        Assert.DoesNotContain(words, w => w.Any(c => c is >= '\uE000' and <= '\uF8FF'));
        Assert.True(printed.Distinct().Count() > 5);
        Assert.All(printed, p => Assert.Contains(p, names));
        int lines = 0;
        for (int i = 0; i < set.Sheets.Count; i++)
        {
            string[] seen = [.. Words(set.Sheets[i]).Where(w => w.StartsWith("SEE SHEET ", StringComparison.Ordinal)).Select(w => w["SEE SHEET ".Length..])];
            Assert.All(seen, s => Assert.True(Math.Abs(Array.IndexOf(names, s) - i) == 1, $"{names[i]} goes on at {s}"));
            lines += seen.Length;
        }
        Assert.True(lines > 0);
    }

    /// <summary>Every number that stands in a view has its note on the sheet or on the one that the sheet names.</summary>
    [Fact]
    public void Every_number_of_a_note_has_its_note()
    {
        WallProject project = SampleLayout.Read(Repository.Read("demo", "heron-street-bridge", "wall.yaml"));
        SheetSet set = SampleSheets.Compose(project with { Sheets = project.Sheets with { Size = "ISO A3" } }, SampleLayout.Make(project));
        int numbers = 0;
        foreach (Sheet sheet in set.Sheets.Where(s => s.IsView))
        {
            string[] seen = [.. SheetPicture.Of(set, sheet).Where(p => p.Primitive is Text t && Regex.IsMatch(t.Value, @"^\([0-9]+\)$") && p.Window?.Contains(t.Position) != false).Select(p => ((Text)p.Primitive).Value).Distinct()];
            string? further = Words(sheet).FirstOrDefault(w => w.StartsWith("MORE NOTES", StringComparison.Ordinal))?.Split(' ')[^1];
            string notes = string.Join(" ", Words(sheet).Concat(further is null ? [] : After(Words(set.Sheets.Single(s => s.Name == further)), $"NOTES OF SHEET {sheet.Name}")));
            Assert.All(seen, n => Assert.Contains(n + " ", notes, StringComparison.Ordinal));
            numbers += seen.Length;
        }

        Assert.True(numbers > 5);
    }

    private static IEnumerable<string> Words(Sheet sheet) => sheet.Paper.OfType<Text>().Select(t => t.Value);

    private static IEnumerable<string> After(IEnumerable<string> words, string heading) =>
        words.SkipWhile(w => w != heading).Skip(1).TakeWhile(w => !w.StartsWith("NOTES OF SHEET", StringComparison.Ordinal));
}
