using System.Globalization;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Properties;

/// <summary>A scenario read, placed and checked.</summary>
internal sealed record BuiltWall(WallProject Project, NailLayout Layout, ClearanceReport Report)
{
    public static BuiltWall Of(WallScenario scenario)
    {
        string text = ScenarioYaml.Print(scenario);
        ReadResult read = ProjectReader.ReadText(text, "wall.yaml");
        Assert.True(read.Project is not null, string.Join('\n', read.Problems.Where(p => p.Severity == Severity.Error)) + "\n" + text);
        NailLayout layout = Placer.Place(read.Project, new PlacingOptions());
        return new BuiltWall(read.Project, layout, Checker.Check(read.Project, layout));
    }

    /// <summary>Every nail as the layout states it, a line each.</summary>
    public IReadOnlyList<string> NailLines =>
    [
        .. Layout.Nails.Select(n => string.Create(
            CultureInfo.InvariantCulture,
            $"{n.Mark} {n.Kind} {n.Station:0.000} {n.Elevation:0.000} {n.Splay:0.###} {n.Inclination:0.###} {n.Length:0.###} {n.Status}")),
    ];

    /// <summary>Every finding that depends on the ground only, a line each; clear distances to the given decimals.</summary>
    public IReadOnlyList<string> FindingLines(string format = "0.000") =>
    [
        .. Report.Findings.Select(f =>
            $"{f.Code} {string.Join(',', f.Nails)} {f.Obstruction} " +
            string.Create(CultureInfo.InvariantCulture, $"{f.Station:0.00} {f.ToStation:0.00} ") + f.Clear?.ToString(format, CultureInfo.InvariantCulture)),
    ];

    /// <summary>The three figures of the layout found.</summary>
    public (double Unresolved, double Noted, double Effort) Figures =>
        (Layout.Score.Unresolved.Found, Layout.Score.Noted.Found, Math.Round(Layout.Score.Effort.Found, 6));
}
