using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Tests.Drawing.Details;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Sections;

/// <summary>A bubble sends its reader to a section or a detail that stands on the sheet it names.</summary>
public partial class BubbleTests
{
    public static TheoryData<string> Walls => new("heron-street-bridge", "quarry-lane", "details");

    [Theory]
    [MemberData(nameof(Walls))]
    public void Every_bubble_names_what_stands_on_its_sheet(string name)
    {
        WallProject project = SampleLayout.Read(name == "details" ? DetailWalls.Feet(DetailWalls.Facts) : Repository.Read("demo", name, "wall.yaml"));
        SheetSet set = SampleSheets.Compose(project, Placer.Place(project, new PlacingOptions()));
        int details = 0, sections = 0;
        foreach ((Circle circle, IReadOnlyList<Primitive> space) in set.Sheets.Select(s => s.Paper).Append(set.Model).SelectMany(s => s.OfType<Circle>().Where(c => c.Layer == LayerRole.Title).Select(c => (c, s))))
        {
            Text[] texts = [.. space.OfType<Text>().Where(t => t.Layer == LayerRole.Title && (t.Position - circle.Center).Length < circle.Radius).OrderByDescending(t => t.Position.Y)];
            string[] words = [.. texts.Select(t => t.Value)];
            Assert.All(texts, t => Assert.True(t.Masked, $"lines of the view may cross {t.Value}"));
            Assert.True(words.Length == 2, string.Join("|", words));
            Sheet sheet = Assert.Single(set.Sheets, s => s.Name == words[1]);
            string[] titles = [.. sheet.Paper.OfType<Text>().Select(t => Title().Match(t.Value)).Where(m => m.Success && m.Groups[2].Value == words[0]).Select(m => m.Groups[1].Value)];
            Assert.NotEmpty(titles);
            // A bubble with a leader to it speaks of a detail.
            if (set.Model.OfType<Leader>().Any(l => Math.Abs((l.To - circle.Center).Length - circle.Radius) < 1e-3 * circle.Radius))
            {
                Assert.Contains("DETAIL", titles);
                details++;
            }
            else
            {
                Assert.Contains("SECTION", titles);
                sections++;
            }
        }
        Assert.True(details > 0 && sections > 0, $"{details} details, {sections} sections");
    }

    [GeneratedRegex(@"^(?:TYPICAL )?(SECTION|DETAIL) (\d+),")]
    private static partial Regex Title();
}
