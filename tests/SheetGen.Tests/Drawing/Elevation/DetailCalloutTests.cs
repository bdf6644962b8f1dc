using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

public class DetailCalloutTests
{
    public static TheoryData<string> Walls => new(MarkWalls.Corner, SampleWalls.TwoWalls);

    /// <summary>Each detail that has a place in an elevation is called out there with its number over its own sheet, or named in a note.</summary>
    [Theory]
    [MemberData(nameof(Walls))]
    public void Elevations_call_out_details_that_are_in_the_set(string yaml)
    {
        SheetSet set = SampleSheets.Compose(yaml);
        (string Number, string Sheet, string Title)[] details = [.. set.Sheets.SelectMany(s => s.Paper.OfType<Text>()
            .Select(t => (s.Name, Match: Regex.Match(t.Value, "^DETAIL ([0-9]+), (END OF WALL|CORNER|OPENING|DRAIN|FOOT OF WALL AND DRAIN|CONSTRUCTION JOINT)"))).Where(t => t.Match.Success)
            .Select(t => (t.Match.Groups[1].Value, t.Name, t.Match.Value)))];
        string[] notes = [.. set.Sheets.SelectMany(s => s.Paper).OfType<Text>().Select(t => t.Value)];
        Text[] seen = [.. set.Sheets.Where(s => s.IsView).SelectMany(s => SheetPicture.Of(set, s).Where(p => p.Window is not null).Select(p => p.Primitive)).OfType<Text>().Where(t => t.Layer == LayerRole.Title)];

        Assert.NotEmpty(details);
        Assert.All(details.Where(d => !d.Title.Contains(", DRAIN", StringComparison.Ordinal)), d => Assert.True(
            seen.Any(n => n.Value == d.Number && seen.Any(s => s.Value == d.Sheet && Math.Abs(s.Position.X - n.Position.X) < 0.01 && n.Position.Y > s.Position.Y && n.Position.Y - s.Position.Y < 3 * n.Height))
                || notes.Any(n => n.Contains($"DETAIL {d.Number}, SHEET {d.Sheet}: ", StringComparison.Ordinal)),
            $"{d.Title} on {d.Sheet} is called out in no elevation"));
        Assert.Contains(seen, t => details.Any(d => d.Sheet == t.Value));
    }
}
