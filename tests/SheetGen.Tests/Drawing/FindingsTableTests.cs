using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing;

public sealed class FindingsTableTests
{
    /// <summary>All of forty findings stand in the table, whole, errors before notices.</summary>
    [Fact]
    public void The_sheets_list_every_finding_whole_errors_first()
    {
        WallProject project = SampleLayout.Read(Repository.Read("docs", "cookbook", "06-a-revision.yaml"));
        NailLayout layout = SampleLayout.Make(project);
        Finding[] findings =
        [
            .. Enumerable.Range(1, 40).Select(i => new Finding
            {
                Code = FindingCode.Guidance,
                Severity = i % 2 == 0 ? Severity.Error : Severity.Notice,
                Station = 21250 + i,
                Message = $"first{i} " + string.Join(' ', Enumerable.Repeat("word", 40)) + $" last{i}",
            }),
        ];

        SheetSet set = SheetComposer.Compose(
            project, layout, SampleLayout.Report(layout) with { Findings = findings }, SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"), TemplateReader.Default(null));

        string[] words = [.. set.Sheets.SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<Text>().Where(t => t.Layer == LayerRole.TableText).SelectMany(t => t.Value.Split(' '))];
        Assert.Equal([], findings.SelectMany(f => f.Message.Split(' ')).Distinct().Except(words));
        Assert.True(Array.IndexOf(words, "last40") < Array.IndexOf(words, "first1"));
    }
}
