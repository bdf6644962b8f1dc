using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Tests.Drawing.Set;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>Every row has its name and its elevation on every sheet that shows nails of it, part rows inside a view among them.</summary>
public class RowNameTests
{
    public static TheoryData<string, string> Walls => new()
    {
        { "demo", Repository.Read("demo", "heron-street-bridge", "wall.yaml") },
        { "arc", MarkWalls.Arc },
        { "small sheet", MarkWalls.TwoOnASmallSheet },
        { "corner", MarkWalls.Corner },
        { "given", GivenProject.Yaml },
    };

    [Theory]
    [MemberData(nameof(Walls))]
    public void Every_row_is_named_with_its_elevation(string name, string yaml)
    {
        DrawingContext context = PlacedWall.Context(yaml);
        SheetSet set = PlacedWall.Sheets(context);
        int rows = 0;
        var wrong = new List<string>();
        foreach (Sheet sheet in set.Sheets.Where(s => s.IsView))
        {
            string written = string.Join(" ", SheetPicture.Of(set, sheet).Select(p => p.Primitive).OfType<Text>().Select(t => t.Value));
            var marks = set.Model.OfType<BlockReference>().Where(b => b.Nail is not null && sheet.Viewports.Any(v => v.Frame.Contains(v.ToPaper.Apply(b.Position)))).Select(b => b.Nail!).ToHashSet();
            foreach (string row in context.Layout.Nails.Where(n => marks.Contains(n.Mark) && n.Kind != Model.Results.NailKind.Verification).Select(MarkForms.RowOf).Distinct())
            {
                rows++;
                if (!written.Contains($"ROW {row} EL ", StringComparison.Ordinal))
                    wrong.Add($"{name}, {sheet.Name}: row {row} is not named with its elevation");
            }
        }
        Assert.True(rows > 5, $"{rows} rows");
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }
}
