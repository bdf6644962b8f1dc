using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Tests.Geometry;
using Xunit;

namespace SheetGen.Tests.Clearance;

/// <summary>What mutation testing found unseen: neighbours far away, the limits of usual values, joined findings of cover.</summary>
public sealed partial class FarAndUsualTests
{
    /// <summary>However far the next nail or obstruction is, it is the nearest one and its distance is that of the slow twin.</summary>
    [Theory]
    [InlineData(15)]
    [InlineData(35)]
    [InlineData(62)]
    [InlineData(90)]
    public void The_nearest_is_told_however_far_it_is(double apart)
    {
        WallProject project = SmallProjects.Project([SmallProjects.Wall()]);
        Nail a = SmallProjects.Nail(project, "A-1-01", 10, 117, splay: 3), b = SmallProjects.Nail(project, "A-1-02", 10 + apart, 112, splay: -2);
        ClearanceReport report = Checker.Check(project, SmallProjects.Layout(a, b));
        Assert.Equal("A-1-02", report.Nails["A-1-01"].Nearest);
        Assert.Equal(SlowTwin.Between(a.Hole, b.Hole), report.Nails["A-1-01"].LeastClear, 1e-6);
        Assert.Equal(SlowTwin.Between(a.Hole, b.Hole), report.Nails["A-1-02"].LeastClear, 1e-6);

        // A shaft without another nail: the axis stands at N = -8, east of the nail by as much.
        Vector3D top = new(-8, 10 + apart, 130), foot = new(-8, 10 + apart, 60);
        WallProject shaft = SmallProjects.Project([SmallProjects.Wall()], SmallProjects.Obstruction("S1", ObstructionKind.Shaft, new CylinderSolid(top, foot, 1.5)));
        NailClearance clear = Checker.Check(shaft, SmallProjects.Layout(SmallProjects.Nail(shaft, "A-1-01", 10, 117))).Nails["A-1-01"];
        Assert.Equal("S1", clear.Nearest);
        Hole straight = SmallProjects.Nail(shaft, "A-1-01", 10, 117).Hole;
        double twin = SlowTwin.ToSolid(straight, p => Math.Sqrt((p.N - top.N) * (p.N - top.N) + (p.E - top.E) * (p.E - top.E)) - 1.5);
        Assert.Equal(twin, clear.LeastClear, 1e-4);
    }

    /// <summary>Typical values of GEC 7 (FHWA-NHI-14-007, 2015), sections 2.3, 3.2, 3.3 and 6.3: nothing is said at a limit, and something just beyond it.</summary>
    [Theory]
    [InlineData("horizontal", 4, 6.5, 0.01, false)]
    [InlineData("vertical", 4, 6.5, 0.01, false)]
    [InlineData("inclination", 10, 20, 0.5, false)]
    [InlineData("hole", 4 / 12.0, 8 / 12.0, 0.01, false)]
    [InlineData("lift", 3, 6.5, 0.01, false)]
    [InlineData("horizontal", 1.2, 1.98, 0.01, true)]
    [InlineData("vertical", 1.2, 1.98, 0.01, true)]
    [InlineData("inclination", 10, 20, 0.5, true)]
    [InlineData("hole", 0.1, 0.2, 0.005, true)]
    [InlineData("lift", 1, 2, 0.01, true)]
    public void Usual_values_reach_up_to_their_limits(string what, double least, double most, double beyond, bool metric)
    {
        Assert.Empty(Said(what, least, metric));
        Assert.Empty(Said(what, most, metric));
        Assert.Single(Said(what, least - beyond, metric));
        Assert.Single(Said(what, most + beyond, metric));
    }

    [Theory]
    [InlineData(6.4, 6.5, false, true)]
    [InlineData(6.5, 6.5, false, false)]
    [InlineData(1.97, 1.97, true, true)]
    [InlineData(1.98, 1.98, true, false)]
    public void A_face_area_over_42_ft2_a_nail_is_told(double horizontal, double vertical, bool metric, bool usual)
    {
        double area = horizontal * vertical * (metric ? 10.7639 : 1);
        Assert.Equal(usual, area <= 42);
        IReadOnlyList<string> said = Warnings(s => s with { HorizontalSpacing = horizontal, VerticalSpacing = vertical }, null, metric);
        Assert.Equal(usual ? 0 : 1, said.Count);
        Assert.All(said, m => Assert.Contains("over the usual 42 ft2", m));
    }

    /// <summary>The lack grows with the sloping top; the one finding tells its greatest figure, that at its higher end.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_lack_under_a_sloping_top_is_one_finding_with_its_worst_figure(bool falls)
    {
        Wall wall = SmallProjects.Wall() with { Top = new Profile(falls ? [new(0, 126), new(60, 120)] : [new(0, 120), new(60, 120), new(120, 126)]) };
        WallProject project = SmallProjects.Project([wall]);
        Nail[] nails = [.. Enumerable.Range(0, 24).SelectMany(i => new[] { 117.5, 112.5, 107.5, 102.5 }.Select((z, r) => SmallProjects.Nail(project, $"A-{r + 1}-{i + 1:00}", 2.5 + 5 * i, z, row: r + 1)))];
        Finding[] cover = [.. Checker.Check(project, SmallProjects.Layout(nails)).Findings.Where(f => f.Code == FindingCode.Cover && f.Message.Contains("below the top", StringComparison.Ordinal))];
        Finding one = Assert.Single(cover);
        double from = one.Station!.Value - wall.StationOf(0), to = one.ToStation!.Value - wall.StationOf(0), allowed = one.Required!.Value;
        double At(double along) => (falls ? Math.Max(120, 126 - along / 10) : Math.Max(120, 120 + (along - 60) / 10)) - 117.5;
        Assert.Equal(allowed, At(falls ? to : from), 0.02);
        Assert.Equal(falls ? 0 : 120, falls ? from : to, 0.02);
        double figure = double.Parse(BelowTop().Match(one.Message).Groups[1].Value, CultureInfo.InvariantCulture);
        // A depth is that of the head where it stands: the outermost one is 2.5 from the end.
        Assert.Equal(8.25, figure, 0.01);
    }

    /// <summary>A stretch without nails is told with the reasons of the closed stretches at it, and with no others.</summary>
    [Fact]
    public void A_lack_names_the_closed_stretches_at_it_only()
    {
        Wall wall = SmallProjects.Wall() with
        {
            ClosedStretches = [new ClosedStretch(30, 50, null, null, "vault behind", default), new ClosedStretch(90, 92, null, null, "weep pipe", default)],
        };
        WallProject project = SmallProjects.Project([wall]);
        Nail[] nails = [.. Enumerable.Range(0, 24).Where(i => 2.5 + 5 * i is < 30 or > 50).SelectMany(i => new[] { 117.5, 112.5, 107.5, 102.5 }.Select((z, r) => SmallProjects.Nail(project, $"A-{r + 1}-{i + 1:00}", 2.5 + 5 * i, z, row: r + 1)))];
        Finding[] cover = [.. Checker.Check(project, SmallProjects.Layout(nails)).Findings.Where(f => f.Code == FindingCode.Cover)];
        Assert.NotEmpty(cover);
        Assert.All(cover, f => Assert.Contains("no nails are allowed there (vault behind)", f.Message));
        Assert.Contains(cover, f => f.Message.Contains("no nail within 2.5", StringComparison.Ordinal));
    }

    [GeneratedRegex(@"is (\d+(?:\.\d+)?) ft below the top")]
    private static partial Regex BelowTop();

    private static IReadOnlyList<string> Said(string what, double value, bool metric) => what == "lift"
        ? Warnings(s => s, value, metric)
        : Warnings(s => what switch
        {
            "horizontal" => s with { HorizontalSpacing = value },
            "vertical" => s with { VerticalSpacing = value },
            "inclination" => s with { Inclination = value },
            _ => s with { HoleDiameter = value },
        }, null, metric);

    private static IReadOnlyList<string> Warnings(Func<Section, Section> change, double? lift, bool metric)
    {
        Wall wall = SmallProjects.Wall();
        Section usual = wall.Sections[0] with { HorizontalSpacing = metric ? 1.5 : 5, VerticalSpacing = metric ? 1.5 : 5, TopRowDepth = metric ? 0.5 : 1.5, HoleDiameter = metric ? 0.15 : 0.5 };
        WallProject project = SmallProjects.Project([wall with { Sections = [change(usual)], Lifts = lift is null ? null : new Lifts(null, lift, null) }]);
        if (metric)
            project = project with { Unit = LengthUnit.Metre, Rules = Rules.Default(LengthUnit.Metre) };
        return [.. Checker.Check(project, SmallProjects.Layout()).Findings.Where(f => f.Code == FindingCode.Guidance).Select(f => f.Message)];
    }
}
