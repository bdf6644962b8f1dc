using System.Text.RegularExpressions;
using SheetGen.Layout.Advice;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Advice;

/// <summary>What is said of a layout although no rule is broken, and spacing as built.</summary>
public sealed class AdviceTests
{
    private const string Sloping = "03-on-a-curve.yaml";

    [Theory]
    [InlineData("01-first-wall.yaml", "5.00' H x 4.37' V (5.00' MAX)")]
    [InlineData("04-steps.yaml", "5.00' H x 5.00' V")]
    [InlineData("02-under-a-bridge.yaml", "4.50' H x 4.25' V (4.50' MAX)")]
    [InlineData("09-metric-and-staggered.yaml", "1.500 m H x 1.300 m V (1.500 m MAX)")]
    public void Spacing_is_written_as_built(string file, string text)
    {
        (WallProject project, NailLayout layout) = Laid(file);
        Wall wall = project.Walls[0];

        Assert.Equal(text, BuiltSpacing.Text(wall, wall.Sections[0], layout.Rows, project.Unit));
    }

    /// <summary>The gap that is written is the one between the nails of neighbouring grid rows, column by column.</summary>
    [Theory]
    [InlineData("01-first-wall.yaml")]
    [InlineData("05-two-walls.yaml")]
    [InlineData("08-a-corner.yaml")]
    public void The_gap_of_rows_is_that_of_their_nails(string file)
    {
        (WallProject project, NailLayout layout) = Laid(file);
        foreach (Wall wall in project.Walls)
        {
            foreach (Section section in wall.Sections)
            {
                double[] levels = [.. layout.Nails.Where(n => n.Wall == wall && n.Section == section && n.Kind != NailKind.Verification && !n.Row.IsPart).Select(n => n.Elevation).Distinct().OrderDescending()];
                double[] gaps = [.. levels.Zip(levels.Skip(1), (a, b) => a - b)];
                (double least, double greatest) = BuiltSpacing.RowGaps(wall, section, layout.Rows)!.Value;
                Assert.All(gaps, g => Assert.InRange(g, least - 0.011, greatest + 0.011));
            }
        }
    }

    [Fact]
    public void A_section_with_one_row_has_no_gap()
    {
        (WallProject project, NailLayout layout) = Laid("05-two-walls.yaml");
        Wall wall = project.Walls[0];

        Assert.Equal("5.00' H x 5.00' V MAX", BuiltSpacing.Text(wall, wall.Sections[0], layout.Rows.Where(r => r.Number.Whole == 1), LengthUnit.Foot));
    }

    /// <summary>What a notice says of another choice of rows is what placing with that choice gives.</summary>
    [Theory]
    [InlineData("01-first-wall.yaml")]
    [InlineData(Sloping)]
    [InlineData("09-metric-and-staggered.yaml")]
    public void The_choices_of_rows_are_tried_and_not_guessed(string file)
    {
        string text = Repository.Read("docs", "cookbook", file);
        (WallProject project, NailLayout layout) = Laid(text, isText: true);
        Finding notice = LayoutAdvice.Of(project, layout).Single(IsOfPartRows);
        Nail[] part = [.. layout.Nails.Where(n => n.Row.IsPart)];
        Assert.Equal(Severity.Notice, notice.Severity);
        Assert.StartsWith(FormattableString.Invariant($"section A: {part.Length} of {layout.Nails.Count} nails ({part.Sum(n => n.Length):#,##0.##} "), notice.Message, StringComparison.Ordinal);
        string now = Regex.Match(text, @"rows: (\w+)\n") is { Success: true } given ? given.Groups[1].Value : "level";
        foreach (string other in new[] { "level", "parallel", "top_parallel" }.Where(k => k != now))
        {
            string changed = Regex.IsMatch(text, @"rows: \w+\n") ? Regex.Replace(text, @"rows: \w+\n", $"rows: {other}\n") : text.Replace("        top_row_depth", $"        rows: {other}\n        top_row_depth", StringComparison.Ordinal);
            NailLayout then = Laid(changed, isText: true).Layout;
            int stations = then.Rows.Where(r => r.Number.IsPart).Sum(r => r.GridStations.Count), all = then.Rows.Sum(r => r.GridStations.Count);
            string said = FormattableString.Invariant($"rows: {other} would need {(stations == 0 ? "none" : stations)} of these ({all} nails in all)");
            Assert.Equal(stations < part.Length, notice.Message.Contains(said, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Heads_below_finished_grade_are_counted_and_none_puts_none_there()
    {
        string text = Repository.Read("docs", "cookbook", "01-first-wall.yaml");
        (WallProject project, NailLayout layout) = Laid(text, isText: true);
        Wall wall = project.Walls[0];
        Nail[] below = [.. layout.Nails.Where(n => n.Elevation < wall.FinishedGrade!.At(n.Along) - 0.01)];

        Finding warning = LayoutAdvice.Of(project, layout).Single(IsOfGrade);
        Assert.Equal(Severity.Warning, warning.Severity);
        Assert.StartsWith(
            FormattableString.Invariant($"section A: {below.Length} nails ({below.Sum(n => n.Length):#,##0.##} ft) have their heads below the finished grade, the deepest "), warning.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(LayoutAdvice.Of(Laid(text + "rules: {heads_below_grade: allow}\n", isText: true).Project, layout), IsOfGrade);

        (WallProject none, NailLayout above) = Laid(text + "rules: {heads_below_grade: none}\n", isText: true);
        Assert.DoesNotContain(above.Nails, n => n.Elevation < wall.FinishedGrade!.At(n.Along) - 0.01);
        Assert.NotEmpty(above.Nails);
        Finding broken = LayoutAdvice.Of(none, layout).Single(IsOfGrade);
        Assert.Equal(Severity.Error, broken.Severity);
        Assert.EndsWith("rules: heads_below_grade allows none", broken.Message, StringComparison.Ordinal);
    }

    private static bool IsOfPartRows(Finding finding) => finding.Code == FindingCode.Guidance && finding.Message.Contains("part row", StringComparison.Ordinal);

    private static bool IsOfGrade(Finding finding) => finding.Code == FindingCode.Guidance && finding.Message.Contains("below the finished grade", StringComparison.Ordinal);

    private static (WallProject Project, NailLayout Layout) Laid(string file, bool isText = false)
    {
        WallProject project = ProjectReader.ReadText(isText ? file : Repository.Read("docs", "cookbook", file), "wall.yaml").Project!;
        return (project, Placer.Place(project, new PlacingOptions()));
    }
}
