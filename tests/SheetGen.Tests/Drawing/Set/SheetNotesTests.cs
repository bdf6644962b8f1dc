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
