using SheetGen.Layout.Clearance;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.Tests.Properties;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>The checker's tools on random walls, each against the checker itself. SHEETGEN_TOOL_WALLS asks for more walls.</summary>
[Trait("Category", "Long")]
public sealed class RandomToolTests
{
    private static readonly int Walls = int.TryParse(Environment.GetEnvironmentVariable("SHEETGEN_TOOL_WALLS"), out int walls) ? walls : 3;
    private static readonly ulong First = ulong.TryParse(Environment.GetEnvironmentVariable("SHEETGEN_TOOL_SEED"), out ulong seed) ? seed : 40;

    public static TheoryData<ulong> Seeds => [.. Enumerable.Range(0, Walls).Select(i => First + (ulong)i)];

    private static BuiltWall Wall(ulong seed) => BuiltWall.Of(RandomWall.Scenario(seed, new RandomWallOptions { Nails = 24, Obstructions = 10 }));

    [Theory, MemberData(nameof(Seeds))]
    public void Each_direction_of_a_nail_equals_a_check_with_only_that_nail_turned(ulong seed)
    {
        BuiltWall built = Wall(seed);
        // The nail with the least room: most is decided there.
        Nail nail = built.Layout.Nails.MinBy(n => (Math.Round(built.Report.Nails[n.Mark].LeastClear, 6), n.Mark))!;
        TurnWindow window = new TurnWindows(built.Project, built.Layout).Of(nail);
        int close = window.Cells.Count(cell => WindowTests.IsAsChecked(built.Project, built.Layout, nail, cell));
        Assert.Equal(window.Cells.Count - window.FreeCount, close);
    }

    [Theory, MemberData(nameof(Seeds))]
    public void A_record_of_the_plan_gives_nothing_and_one_shifted_nail_what_the_checker_finds(ulong seed)
    {
        BuiltWall built = Wall(seed);
        WallProject project = built.Project;
        AsBuiltNail Line(Nail n, double along, double splay) => new(n.Mark, n.Station + along, n.Elevation, n.Splay + splay, n.Inclination, n.Length, null, "", "", default);
        AsBuiltReport Report(params AsBuiltNail[] record) => AsBuilt.Of(project, built.Layout, record, AsBuilt.Tolerances.Default(project.Unit));
        AsBuiltReport plan = Report([.. built.Layout.Nails.Select(n => Line(n, 0, 0))]);
        // Of the plan's own nails only those that were not to be drilled are told.
        string[] Stopped(params Nail[] nails) => [.. nails.Where(n => n.Status == NailStatus.Unresolved).Select(n => n.Mark + " drilled, though the plan says DO NOT DRILL")];
        Assert.Equal(Stopped([.. built.Layout.Nails]), plan.Misses.Select(m => $"{m.Mark} {m.What}"));
        Assert.Empty(plan.NewFindings);
        Assert.Empty(plan.Open);

        double inches = Math.Round(3 * 0.0254 / Lengths.MetresPer(project.Unit), Lengths.Decimals(project.Unit));
        HashSet<string> planned = [.. Checker.Check(project, built.Layout).Findings.Select(f => f.Message)];
        foreach (Nail nail in built.Layout.Nails.OrderBy(n => built.Report.Nails[n.Mark].LeastClear).Take(4))
        {
            foreach (int way in new[] { -1, 1 })
            {
                double station = Lengths.RoundToQuantum(nail.Station + way * inches, project.Unit), along = nail.Wall.LayoutLine.AlongOf(station);
                if (along < nail.Wall.Start || along > nail.Wall.End)
                    continue;
                Nail drilled = nail with
                {
                    Along = along,
                    Station = station,
                    Splay = nail.Splay + 2 * way,
                    Hole = new Face(nail.Wall).HoleAt(along, nail.Elevation, nail.Splay + 2 * way, nail.Inclination, nail.Length, nail.HoleDiameter, project.Rules.Drift),
                };
                string[] expected = [.. Checker.Check(project, built.Layout with { Nails = [.. built.Layout.Nails.Select(n => n == nail ? drilled : n)] }).Findings
                    .Where(f => f.Code is not FindingCode.Unresolved and not FindingCode.NotedRedirect).Select(f => f.Message).Where(m => !planned.Contains(m)).Order(StringComparer.Ordinal)];
                AsBuiltReport report = Report(Line(nail, way * inches, 2 * way));
                Assert.Equal(expected, report.NewFindings.Where(f => f.Code is not FindingCode.Unresolved and not FindingCode.NotedRedirect).Select(f => f.Message).Order(StringComparer.Ordinal));
                Assert.Equal(Stopped(nail), report.Misses.Select(m => $"{m.Mark} {m.What}"));
            }
        }
    }

    [Theory, MemberData(nameof(Seeds))]
    public void What_is_read_back_is_what_was_written_and_an_edit_is_told_both_ways(ulong seed)
    {
        BuiltWall built = Wall(seed);
        DrawnNail[] drawn = [.. built.Layout.Nails.Select(n => new DrawnNail(n, n.Wall, n.Along, n.Elevation, null, null, null))];
        RevisionState State(NailLayout layout) => new()
        {
            Name = "wall",
            Unit = built.Project.Unit,
            Walls = built.Project.Walls,
            Nails = [.. layout.Nails.Select(RevisionNail.Of)],
            Findings = [.. Checker.Check(built.Project, layout).Findings.Select(RevisionFinding.Of)],
        };
        Assert.True(Comparison.Of(State(built.Layout), State(EditedLayout.Of(built.Project, built.Layout, drawn, "read back").Layout)).IsEmpty);
        int third = drawn.Length / 3;
        DrawnNail[] edited = [.. drawn.Where((_, i) => i != third).Select((d, i) => i == 0 ? d with { Splay = d.Was!.Splay + 4 } : i == drawn.Length - 2 ? d with { Length = d.Was!.Length + 2 } : d)];
        RevisionState a = State(built.Layout), b = State(EditedLayout.Of(built.Project, built.Layout, edited, "by hand").Layout);
        RevisionDifference there = Comparison.Of(a, b), back = Comparison.Of(b, a);
        Assert.Equal([drawn[0].Was!.Mark, drawn[third].Was!.Mark, drawn[^1].Was!.Mark], there.Nails.Select(n => n.Mark).OrderBy(m => Array.FindIndex(drawn, d => d.Was!.Mark == m)));
        Assert.Equal(there.Nails.Select(n => (n.Before?.Mark, n.After?.Mark)).Order(), back.Nails.Select(n => (n.After?.Mark, n.Before?.Mark)).Order());
        Assert.Equal(there.Findings.Select(f => (f.Before?.Message, f.After?.Message)).Order(), back.Findings.Select(f => (f.After?.Message, f.Before?.Message)).Order());
        Assert.True(Comparison.Of(b, b).IsEmpty);
    }
}
