using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Placing;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>Where the grid's columns were given or chosen, the sheets say where they stand; centred ones that nobody asked about they leave out.</summary>
public sealed class ZoneColumnsTests
{
    private static string Words(WallProject project)
    {
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        SheetSet set = PlacedWall.Sheets(new(project, layout, Checker.Check(project, layout), SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"), TemplateReader.Default(null, null, null)));
        return string.Join('\n', set.Model.Concat(set.Sheets.SelectMany(s => s.Paper)).OfType<Text>().Select(t => t.Value));
    }

    [Theory]
    [InlineData("", null)]
    [InlineData("centred", null)]
    [InlineData("1", "FIRST COLUMN")]
    [InlineData("best", "COLUMNS CENTRED")]
    public void Columns_that_were_given_or_chosen_are_stated(string columns, string? stated)
    {
        string words = Words(ColumnPhases.Choose(new PlacingWall { Length = 28, Columns = columns }.Project));
        Assert.All(["FIRST COLUMN", "COLUMNS CENTRED"], w => Assert.Equal(w == stated, words.Contains(w, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_better_place_that_was_chosen_is_stated()
    {
        WallProject chosen = ColumnPhases.Choose((ColumnPhaseTests.InTheWay(28) with { Columns = "best" }).Project);
        Assert.NotNull(chosen.Walls[0].Sections[0].FirstColumn);
        Assert.Contains("FIRST COLUMN", Words(chosen), StringComparison.Ordinal);
    }
}
