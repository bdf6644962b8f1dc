using System.Text;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Review;
using SheetGen.Tests.Drawing;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Json;
using SheetGen.Writers.Pdf;
using SheetGen.Writers.Workbook;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>A number that is none reaches no output: each writer refuses it, and the run then writes nothing.</summary>
public class FiniteNumberTests
{
    private static readonly WallProject Project = SampleLayout.Read(SampleWalls.Metric);

    public static TheoryData<double> Bad => [double.NaN, double.NegativeInfinity];

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_layout(double bad)
    {
        NailLayout layout = SampleLayout.Make(Project);
        Assert.Same(layout, FiniteNumber.Of(layout));
        Nail nail = layout.Nails[3];
        foreach (Nail broken in new[] { nail with { Station = bad }, nail with { Elevation = bad }, nail with { Length = bad }, nail with { Splay = bad } })
        {
            var e = Assert.Throws<InvalidOperationException>(() => FiniteNumber.Of(layout with { Nails = [.. layout.Nails.Select(n => n == nail ? broken : n)] }));
            Assert.Contains(nail.Mark, e.Message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void The_workbook_and_its_tables(double bad)
    {
        Assert.Throws<InvalidOperationException>(() => SheetCell.Of(bad, CellStyle.Text));
        Assert.Throws<InvalidOperationException>(() => SheetCell.Of(double.PositiveInfinity, CellStyle.Text));
        Assert.Throws<InvalidOperationException>(() => SheetCell.Calculated("A1", bad, CellStyle.Text));
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void The_nail_table_and_the_findings(double bad)
    {
        NailLayout layout = SampleLayout.Make(Project);
        ClearanceReport report = SampleLayout.Report(layout);
        NailLayout broken = layout with { Nails = [layout.Nails[0] with { Length = bad }, .. layout.Nails.Skip(1)] };
        Assert.Throws<InvalidOperationException>(() => NailCsv.Write(Project, broken, report, new MemoryStream()));
        ClearanceReport odd = report with { Findings = [new Finding { Code = "clear", Severity = SheetGen.Model.Problems.Severity.Error, Message = "", Clear = bad }] };
        Assert.Throws<InvalidOperationException>(() => FindingsJson.Write(Project, layout, odd, new MemoryStream()));
        Assert.Throws<InvalidOperationException>(() => PlainNumber.Fixed(bad, 2));
        Assert.Equal("", PlainNumber.Fixed(double.PositiveInfinity, 2));
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_clear_distance_that_is_none_is_no_empty_cell(double bad)
    {
        Assert.Null(FiniteNumber.OrNone(null));
        Assert.Null(FiniteNumber.OrNone(double.PositiveInfinity));
        Assert.Equal(0.5, FiniteNumber.OrNone(0.5));
        Assert.Throws<InvalidOperationException>(() => FiniteNumber.OrNone(bad));
        NailLayout layout = SampleLayout.Make(Project);
        ClearanceReport report = SampleLayout.Report(layout);
        string mark = layout.Nails[0].Mark;
        ClearanceReport odd = report with { Nails = new Dictionary<string, NailClearance>(report.Nails) { [mark] = report.Nails[mark] with { LeastClear = bad } } };
        Assert.Throws<InvalidOperationException>(() => ReviewPage.Make(new ReviewInput(Project, layout, odd, [], new RunInfo("0")), Encoding.UTF8.GetBytes("{}")));
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void The_sheets(double bad)
    {
        Assert.Throws<InvalidOperationException>(() => Printed.Number(bad, 2));
        Assert.Throws<InvalidOperationException>(() => Printed.Fixed(bad, 2));
        NailLayout layout = SampleLayout.Make(Project);
        SheetSet set = SheetComposer.Compose(
            Project, layout, SampleLayout.Report(layout), SampleLayout.Measure(Project, layout), [], new RunInfo("0"), TemplateReader.Default());
        Sheet first = set.Sheets[0];
        SheetSet broken = set with { Sheets = [first with { Paper = [.. first.Paper, new Line(LayerRole.Border, new(1, 1), new(bad, 2))] }, .. set.Sheets.Skip(1)] };
        Assert.Throws<InvalidOperationException>(() => PdfSheetWriter.Write(broken, new MemoryStream()));
        Assert.ThrowsAny<Exception>(() => DxfSheetWriter.Write(broken, new MemoryStream()));
    }
}
