using SheetGen.Drawing.Review;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Quantities;
using SheetGen.Layout.Revisions;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Records;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Pdf;
using SheetGen.Writers.Workbook;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>Old against new: nothing for equal states, the same both ways, and no change for another unit.</summary>
public sealed class CompareTests
{
    private static readonly EditedWall Wall = EditedWall.Shared;

    private static RevisionState State(NailLayout layout)
    {
        QuantityTable quantities = TakeOff.Measure(Wall.Project, layout);
        BidTable bid = new(new PayItemSet("none", "none", []), []);
        return RevisionState.Of("wall", Wall.Project, layout, Checker.Check(Wall.Project, layout), quantities, bid);
    }

    private static NailLayout Edited()
    {
        DrawingReading all = Wall.Read(Wall.Drawing);
        DrawnNail[] nails = [.. all.Nails.Where(n => n.Was!.Mark != "A-2-02").Select(n => n.Was!.Mark switch
        {
            "A-4-05" => n with { Splay = -14, Length = 22 },
            "A-3-03" => n with { Along = n.Along + 0.75 },
            _ => n,
        }), new DrawnNail(null, all.Nails[0].Wall, 20.25, 110, null, null, null)];
        return EditedLayout.Of(Wall.Project, Wall.Layout, nails, "by hand").Layout;
    }

    [Fact]
    public void Equal_states_have_no_difference()
    {
        Assert.True(Comparison.Of(State(Wall.Layout), State(Wall.Layout)).IsEmpty);
        Assert.True(Comparison.Of(State(Edited()), State(Edited())).IsEmpty);
    }

    [Fact]
    public void Every_change_is_told_with_both_figures()
    {
        RevisionDifference d = Comparison.Of(State(Wall.Layout), State(Edited()));
        string Of(string mark) => d.Nails.Single(n => n.Mark == mark).What;
        Assert.Equal(4, d.Nails.Count);
        Assert.Equal("turned from no splay to splay 14 deg down-station; length 20 to 22 ft", Of("A-4-05"));
        Assert.StartsWith("moved 0.75 ft up-station, ", Of("A-3-03"), StringComparison.Ordinal);
        Assert.StartsWith("removed from ", Of("A-2-02"), StringComparison.Ordinal);
        Assert.Contains(d.Nails, n => n.Kind == NailChangeKind.Added);
        Assert.Contains(d.Findings, f => f.After is { Code: FindingCode.NailNail, Severity: Severity.Error } && f.Before is null);
        AmountChange length = d.Amounts.First(a => a.Name == QuantityName.FaceLength && a.Wall.Length == 0);
        Assert.Equal(2, length.Difference, 6);
    }

    [Fact]
    public void The_other_way_round_everything_is_turned_round()
    {
        RevisionState a = State(Wall.Layout), b = State(Edited());
        RevisionDifference there = Comparison.Of(a, b), back = Comparison.Of(b, a);
        Assert.Equal(there.Nails.Select(n => (n.Before?.Mark, n.After?.Mark)).Order(), back.Nails.Select(n => (n.After?.Mark, n.Before?.Mark)).Order());
        Assert.Equal(there.Findings.Select(f => (f.Before?.Message, f.After?.Message)).Order(), back.Findings.Select(f => (f.After?.Message, f.Before?.Message)).Order());
        Assert.Equal(there.Amounts.Select(q => (q.Name, q.Wall, q.Before, q.After)).Order(), back.Amounts.Select(q => (q.Name, q.Wall, q.After, q.Before)).Order());
    }

    [Fact]
    public void Feet_against_metres_is_no_change()
    {
        RevisionState feet = State(Wall.Layout);
        double M(double ft) => Math.Round(ft * 0.3048, 3, MidpointRounding.AwayFromZero);
        RevisionState metres = feet with
        {
            Unit = LengthUnit.Metre,
            Nails = [.. feet.Nails.Select(n => n with { Station = M(n.Station), Elevation = M(n.Elevation), Length = M(n.Length), HoleDiameter = Math.Round(n.HoleDiameter * 0.3048, 6) })],
            Findings = [.. feet.Findings!.Select(f => f with { Station = f.Station * 0.3048, ToStation = f.ToStation * 0.3048, Clear = f.Clear * 0.3048, Required = f.Required * 0.3048, Message = "in metres" })],
            Amounts = [.. feet.Amounts!.Select(a => a.Unit switch
            {
                "ft" => a with { Unit = "m", Amount = a.Amount * 0.3048 },
                "ft2" => a with { Unit = "m2", Amount = a.Amount * 0.3048 * 0.3048 },
                "ft3" => a with { Unit = "m3", Amount = a.Amount * 0.3048 * 0.3048 * 0.3048 },
                "lb" => a with { Unit = "kg", Amount = a.Amount * 0.45359237 },
                _ => a,
            })],
        };
        Assert.True(Comparison.Of(feet, metres).IsEmpty);
        Assert.True(Comparison.Of(metres, feet).IsEmpty);
        RevisionState moved = metres with { Nails = [metres.Nails[0] with { Station = metres.Nails[0].Station + 0.02 }, .. metres.Nails.Skip(1)] };
        Assert.Single(Comparison.Of(feet, moved).Nails);
    }

    [Fact]
    public void Nails_csv_reads_back_as_it_was_written_and_its_faults_have_places()
    {
        using var stream = new MemoryStream();
        NailCsv.Write(Wall.Project, Wall.Layout, Checker.Check(Wall.Project, Wall.Layout), stream);
        string text = System.Text.Encoding.UTF8.GetString(stream.ToArray());
        var problems = new List<Problem>();
        IReadOnlyList<RevisionNail> read = NailTable.Read(text, "nails.csv", problems)!;
        Assert.Empty(problems);
        RevisionState csv = new() { Name = "csv", Unit = LengthUnit.Foot, Nails = read };
        Assert.Empty(Comparison.Of(csv, State(Wall.Layout)).Nails);
        Assert.Null(NailTable.Read(text.Replace(",A-1-02,production,", ",A-1-01,production,", StringComparison.Ordinal).Replace(",A-1-03,production,", ",A-1-03,production,x", StringComparison.Ordinal), "nails.csv", problems));
        Assert.Equal(["nails.csv:3:12", "nails.csv:4:30"], problems.Select(p => p.Spot.ToString()));
    }

    /// <summary>"Nothing changed" was once said of two sets whose nails belong to walls of other names.</summary>
    [Fact]
    public void Another_name_of_the_wall_is_a_change_of_its_nails()
    {
        RevisionState state = State(Wall.Layout);
        RevisionDifference d = Comparison.Of(state, state with { Nails = [state.Nails[0] with { Wall = "Other" }, .. state.Nails.Skip(1)] });
        Assert.Equal($"wall {state.Nails[0].Wall} to Other", Assert.Single(d.Nails).What);
    }

    [Fact]
    public void Workbook_and_pages_are_the_same_bytes_each_time()
    {
        RevisionDifference d = Comparison.Of(State(Wall.Layout), State(Edited()));
        byte[] Book()
        {
            using var stream = new MemoryStream();
            RevisionWorkbook.Write(d, stream);
            return stream.ToArray();
        }
        byte[] Pages()
        {
            using var stream = new MemoryStream();
            SheetSet set = RevisionPages.Compose(d, ReviewInfo.Of(Wall.Project, "0"), Wall.Project.Walls);
            PdfSheetWriter.Write(set, stream);
            return stream.ToArray();
        }
        Assert.Equal(Book(), Book());
        Assert.Equal(Pages(), Pages());
    }

    [Fact]
    public void Every_changed_nail_is_clouded_and_stands_in_the_revision_table()
    {
        RevisionDifference d = Comparison.Of(State(Wall.Layout), State(Edited()));
        SheetSet set = RevisionPages.Compose(d, ReviewInfo.Of(Wall.Project, "0"), Wall.Project.Walls);
        SheetGen.Drawing.Primitives.Primitive[] all = [.. set.Sheets.SelectMany(s => s.Paper)];
        Assert.Equal(d.Nails.Count, all.OfType<SheetGen.Drawing.Primitives.Polyline>().Count(p => p.Layer == SheetGen.Drawing.Primitives.LayerRole.Callout));
        string table = string.Join(' ', RevisionPages.RevisionRows(d).Select(r => r[2]));
        Assert.All(d.Nails, n => Assert.Contains(n.Mark, table, StringComparison.Ordinal));
    }
}
