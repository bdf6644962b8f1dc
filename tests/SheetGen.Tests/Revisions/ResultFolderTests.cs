using SheetGen.Layout.Clearance;
using SheetGen.Layout.Quantities;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.ProjectFile.Records;
using SheetGen.Tests.Inputs;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Json;
using SheetGen.Writers.Workbook;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>Files beside a nails.csv that are not of the same build: they are named and left out, not compared as if they were.</summary>
public sealed class ResultFolderTests
{
    private static readonly EditedWall Wall = EditedWall.Shared;

    private static NailLayout Other(Func<Nail, Nail?> change) => Wall.Layout with { Nails = [.. Wall.Layout.Nails.Select(change).OfType<Nail>()] };

    private static string[] Problems(NailLayout nails, NailLayout beside, out RevisionState? state, bool alone = false)
    {
        using var folder = new InputFolder();
        void Write(string name, Action<Stream> write)
        {
            using FileStream stream = File.Create(folder.Of(name));
            write(stream);
        }
        Write("nails.csv", s => NailCsv.Write(Wall.Project, nails, Checker.Check(Wall.Project, nails), s));
        ClearanceReport report = Checker.Check(Wall.Project, beside);
        Write("findings.json", s => FindingsJson.Write(Wall.Project, beside, report, s));
        Write("tables.zip", s => TableCsv.WriteZip(Wall.Project, beside, report, TakeOff.Measure(Wall.Project, beside), new BidTable(new PayItemSet("none", "none", []), []), new RunInfo("0.1.0"), s));
        var problems = new List<Problem>();
        state = ResultFolder.Read(folder.Of("nails.csv"), "before", alone, problems);
        return [.. problems.Select(p => $"{p.Severity}: {p.Message}")];
    }

    [Fact]
    public void Files_of_one_build_agree()
    {
        Assert.Equal([], Problems(Wall.Layout, Wall.Layout, out RevisionState? state));
        Assert.True(state is { Unit: not null, Findings: not null, Amounts: not null });
    }

    [Fact]
    public void Findings_of_another_wall_are_named_and_not_taken()
    {
        NailLayout other = Other(n => n with { Mark = "Z" + n.Mark, Reason = new NailReason(null, null, null, null, [], "moved by hand") });
        string[] problems = Problems(Wall.Layout, other, out RevisionState? state);
        Assert.Collection(problems,
            p => Assert.StartsWith("Warning: the findings beside it are of another state: ", p, StringComparison.Ordinal),
            p => Assert.StartsWith("Warning: the tables beside it are not compared: they are of another state, ", p, StringComparison.Ordinal));
        Assert.True(state is { Unit: null, Findings: null, Amounts: null, Items: null });
    }

    [Fact]
    public void Files_of_an_older_build_of_the_wall_are_named_and_not_taken()
    {
        string mark = Wall.Layout.Nails[0].Mark;
        Assert.Equal([$"Warning: the tables beside it are not compared: they are of another state, {mark} is not there, or otherwise"],
            Problems(Wall.Layout, Other(n => n.Mark == mark ? n with { Length = n.Length + 1 } : n), out RevisionState? longer));
        Assert.True(longer is { Findings: not null, Amounts: null });
        string[] reason = Problems(Wall.Layout, Other(n => n.Mark == mark ? n with { Reason = new NailReason(null, null, null, null, [], "moved by hand") } : n), out RevisionState? moved, alone: true);
        Assert.Equal([$"Warning: the findings beside it are of another state: {mark} has another reason in nails.csv; neither they nor their unit are taken"], reason);
        Assert.Null(moved!.Unit);
    }
}
