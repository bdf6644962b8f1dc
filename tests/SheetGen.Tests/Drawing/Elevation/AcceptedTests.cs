using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

public class AcceptedTests
{
    private const string Reason = "cap to be cut down first", By = "C. D., 2026-01-15";

    private static readonly Acceptance Covers = new(null, null, [], null, null, null, Reason, By, new SourceSpot("w.yaml", 1, 1));

    private static (SheetSet Set, Nail Nail) Draw(bool isAnErrorOpen)
    {
        WallProject project = SampleLayout.Read(SampleWalls.TwoWalls);
        NailLayout layout = SampleLayout.Make(project);
        Nail nail = layout.Nails.First(n => n.Status == NailStatus.Unresolved);
        Finding Of(string code, bool isAccepted) => new()
        {
            Code = code,
            Severity = isAccepted ? Severity.Accepted : Severity.Error,
            AcceptedBy = isAccepted ? Covers : null,
            Nails = [nail.Mark],
            Obstruction = "S1",
            Clear = 0.1,
            Required = 0.5,
            Message = "too close",
        };
        Finding[] findings = [Of(FindingCode.Unresolved, true), Of(FindingCode.NailObstruction, !isAnErrorOpen)];
        return (SheetComposer.Compose(project, layout, SampleLayout.Report(layout) with { Findings = findings }, SampleLayout.Measure(project, layout), [], new RunInfo("0"), TemplateReader.Default()), nail);
    }

    private static string Notes(SheetSet set) => string.Join(" ", set.Sheets.Where(s => s.IsView).SelectMany(s => s.Paper).OfType<Text>().Select(t => t.Value));

    [Fact]
    public void A_nail_whose_every_error_is_accepted_may_be_drilled_and_the_sheet_says_why()
    {
        (SheetSet set, Nail nail) = Draw(false);
        BlockReference symbol = set.Model.OfType<BlockReference>().Single(b => b.Nail == nail.Mark);

        Assert.DoesNotContain("STOP", symbol.Block, StringComparison.Ordinal);
        Assert.Contains($"{nail.Mark}, S1: CLEARANCE ACCEPTED BY {By.ToUpperInvariant()}: {Reason.ToUpperInvariant()}", Notes(set), StringComparison.Ordinal);
        Assert.DoesNotContain(set.Model.OfType<Text>(), t => t.Nail == nail.Mark && t.Value.StartsWith("DO NOT DRILL", StringComparison.Ordinal));
    }

    [Fact]
    public void A_nail_with_an_error_that_nobody_accepted_stays_forbidden()
    {
        (SheetSet set, Nail nail) = Draw(true);
        BlockReference symbol = set.Model.OfType<BlockReference>().Single(b => b.Nail == nail.Mark);

        Assert.Contains("STOP", symbol.Block, StringComparison.Ordinal);
        Assert.DoesNotContain("ACCEPTED BY", Notes(set), StringComparison.Ordinal);
        Assert.Contains(set.Model.OfType<Text>(), t => t.Nail == nail.Mark && t.Value.StartsWith("DO NOT DRILL", StringComparison.Ordinal));
    }

    /// <summary>The words name their nails, or a leader leads from them to the one nail.</summary>
    [Fact]
    public void A_forbidden_nail_is_named_or_pointed_at()
    {
        WallProject project = SampleLayout.Read(MarkWalls.Corner);
        NailLayout layout = SampleLayout.Make(project);
        layout = layout with { Nails = [.. layout.Nails.Select((n, i) => i % 4 == 0 && n.Kind == NailKind.Production ? n with { Status = NailStatus.Unresolved } : n)] };
        SheetSet set = SampleSheets.Compose(project, layout);

        foreach (IGrouping<string?, Text> words in set.Model.OfType<Text>().Where(t => t.Layer == LayerRole.Callout).GroupBy(t => t.Nail))
        {
            if (!words.Any(t => t.Value.StartsWith("DO NOT DRILL", StringComparison.Ordinal)))
                continue;
            bool isNamed = words.Any(t => t.Value.Contains(words.Key!, StringComparison.Ordinal) || t.Value.Contains(" TO ", StringComparison.Ordinal));
            Assert.True(isNamed || set.Model.OfType<Leader>().Any(l => l.Nail == words.Key), words.Key);
        }
    }
}
