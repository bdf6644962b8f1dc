using System.Globalization;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Tables;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Tables;

public class TableLayoutTests
{
    /// <summary>A table over several sheets is one table: each piece has the columns of the whole, and every row stands in one piece.</summary>
    [Theory]
    [InlineData(200)]
    [InlineData(90)]
    public void Pieces_of_a_cut_table_have_the_columns_of_the_whole_and_all_its_rows(double room)
    {
        WallProject project = SampleLayout.Read(RandomWall.Yaml(4100));
        NailLayout layout = SampleLayout.Make(project);
        var context = new DrawingContext(project, layout, SampleLayout.Report(layout), SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"), TemplateReader.Default());
        // Words grow longer downwards: measured by itself, each piece would be wider than the one before it.
        string[][] rows = [.. Enumerable.Range(1, 150).Select(i => new[] { i.ToString(CultureInfo.InvariantCulture), new string('W', 1 + i / 10) })];
        SheetPart whole = Assert.Single(new TableLayout(context).Parts([SheetTable.Of("Nails", ["#No", "Word"], rows)], 600));

        var pieces = new List<SheetPart>();
        for (SheetPart? rest = whole; rest is not null;)
        {
            (SheetPart First, SheetPart Others)? cut = rest.Height > room ? rest.Cut!(room) : null;
            pieces.Add(cut?.First ?? rest);
            rest = cut?.Others;
        }

        Assert.True(pieces.Count > 3);
        Assert.All(pieces, p => Assert.Equal(whole.Width, p.Width));
        Assert.All(pieces, p => Assert.True(p.Height <= room));
        BlockDefinition[] blocks = [.. pieces.Select(p => Assert.Single(p.Draw(default, new SheetRefs("SN-01", [])).Blocks))];
        Assert.Single(blocks.Select(b => string.Join(' ', b.Primitives.OfType<Line>().Where(l => l.From.X == l.To.X).Select(l => l.From.X))).Distinct());
        Assert.Equal(rows.Select(r => r[1]), pieces.SelectMany(p => p.Draw(default, new SheetRefs("SN-01", [])).Paper.OfType<BlockReference>().Single().Attributes.Where(a => a.Key.EndsWith("C2", StringComparison.Ordinal)).Select(a => a.Value)));
    }
}
