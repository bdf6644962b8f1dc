using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Tests.Drawing.Details;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing.Labels;

/// <summary>A leader of a section or detail ends at its own thing and crosses nothing that it can avoid.</summary>
public class LeaderTests
{
    public static TheoryData<string> Names => new("heron", "heron half", "quarry", "quarry half", "two", "metric", "details", "metres", "corner", "small", "random");

    private static IEnumerable<SheetSet> Sets(string name)
    {
        string Demo(string demo) => Repository.Read("demo", demo, "wall.yaml");
        string? yaml = name switch
        {
            "heron" or "heron half" => Demo("heron-street-bridge"),
            "quarry" or "quarry half" => Demo("quarry-lane"),
            "two" => SampleWalls.TwoWalls,
            "metric" => SampleWalls.Metric,
            "details" => DetailWalls.Feet(DetailWalls.Facts),
            "metres" => DetailWalls.Metres,
            "corner" => MarkWalls.Corner,
            "small" => MarkWalls.TwoOnASmallSheet,
            _ => null,
        };
        if (yaml is not null)
        {
            WallProject project = SampleLayout.Read(yaml);
            project = project with { Sheets = project.Sheets with { IsForHalfSize = name.EndsWith("half", StringComparison.Ordinal) } };
            yield return SampleSheets.Compose(project, Placer.Place(project, new PlacingOptions()));
            yield break;
        }
        for (ulong seed = 700; seed < 715; seed++)
            yield return SampleSheets.Compose(RandomWall.Yaml(seed), (int)seed);
    }

    private const double MostCrossing = 0.065, MostLoose = 0.016;

    [Theory]
    [MemberData(nameof(Names))]
    public void Leaders_of_sections_and_details_cross_nothing_that_they_can_avoid(string walls)
    {
        CrossedLeaders[] all = [.. Sets(walls).Select(CrossedLeaders.In)];
        string[] nails = [.. all.SelectMany(a => a.Nails)], shotcrete = [.. all.SelectMany(a => a.Shotcrete)], others = [.. all.SelectMany(a => a.Others)];
        string[] measured = [.. all.SelectMany(a => a.Dimensions)], nothing = [.. all.SelectMany(a => a.Nothing)];
        int leaders = all.Sum(a => a.Leaders);
        string told = $"{leaders} leaders\nnails: {string.Join("; ", nails)}\nshotcrete: {string.Join("; ", shotcrete)}\nothers: {string.Join("; ", others)}\ndimensions: {string.Join("; ", measured)}\nnothing: {string.Join("; ", nothing)}";
        TestContext.Current.TestOutputHelper?.WriteLine(told);

        Assert.True(leaders > 10, $"{leaders} leaders");
        Assert.True(others.Length == 0 && measured.Length == 0, told);
        // Where every other place is taken a leader may run through a nail or the shotcrete.
        Assert.True(nails.Length + shotcrete.Length <= Math.Max(2, MostCrossing * leaders), told);
        Assert.True(nothing.Length <= Math.Max(1, MostLoose * leaders), told);
    }
}
