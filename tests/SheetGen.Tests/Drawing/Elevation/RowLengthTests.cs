using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>The lengths on the elevation are those that are drilled: nails that the project file makes longer, one or a whole row, are told so.</summary>
public class RowLengthTests
{
    private static readonly Lazy<(DrawingContext Context, SheetSet Set)> Drawn = new(() =>
    {
        DrawingContext context = PlacedWall.Context(OneWall.Yaml("Pinned lengths", "ft", "station: 1+00, northing: 0, easting: 0, azimuth: 90", "{line: 80}",
            """
            retained_side: left
            name: W
            stations: [1+00, 1+80]
            top: [[1+00, 120], [1+80, 120]]
            bottom: {steps: [[1+00, 100]]}
            """,
            "name: A, stations: [1+00, 1+80], horizontal_spacing: 5, vertical_spacing: 5, rows: level, top_row_depth: 2, inclination: 15, lengths: [20, 18, 16]",
            "bar: {size: \"#8\", grade: 75}, hole: 6 in",
            """
            fixed:
              - {row: "1", station: 1+22.5, length: 31}
              - {row: "1", station: 1+27.5, length: 31}
              - {row: "2", length: 27}
            sheets: {size: ANSI D}
            """));
        return (context, PlacedWall.Sheets(context));
    });

    private static string[] Texts => [.. Drawn.Value.Set.Model.Concat(Drawn.Value.Set.Sheets.SelectMany(s => s.Paper)).OfType<Text>().Select(t => t.Value)];

    [Fact]
    public void ARowIsWrittenWithTheLengthThatItsNailsHave()
    {
        foreach (var row in Drawn.Value.Context.Layout.Nails.Where(n => n.Kind == NailKind.Production).GroupBy(n => n.Row.Name))
        {
            double most = row.GroupBy(n => n.Length).MaxBy(g => g.Count())!.Key;
            string[] words = [.. Texts.Where(t => t.StartsWith($"ROW A-{row.Key} EL ", StringComparison.Ordinal))];
            Assert.NotEmpty(words);
            Assert.All(words, w => Assert.EndsWith($" L {most}'", w));
        }
        Assert.Contains(Texts, t => t.StartsWith("ROW A-2 ", StringComparison.Ordinal) && t.EndsWith(" L 27'", StringComparison.Ordinal));
    }

    [Fact]
    public void NailsOfAnotherLengthThanTheirRowAreCalledOutTogether()
    {
        Assert.Equal(2, Drawn.Value.Context.Layout.Nails.Count(n => n.Length == 31));
        Assert.Contains("A-1-05 TO A-1-06 L 31'", string.Join(' ', Texts));
    }

    [Fact]
    public void TheTableOfRowsHasEveryLengthOfARow()
    {
        IEnumerable<Primitive> all = Drawn.Value.Set.Model.Concat(Drawn.Value.Set.Sheets.SelectMany(s => s.Paper));
        Assert.Contains("20', 31'", all.OfType<BlockReference>().SelectMany(b => b.Attributes).Select(a => a.Value));
    }
}
