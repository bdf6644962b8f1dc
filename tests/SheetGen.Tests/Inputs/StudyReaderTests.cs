using SheetGen.ProjectFile.Studies;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Studies whose tables would name values that no variant has.</summary>
public sealed class StudyReaderTests
{
    private const string Line = "start: {station: 10+00, northing: 5000, easting: 2000, azimuth: 90}\n    elements: [{line: 200}]";

    [Theory]
    [InlineData("  inclination: [10, 15]\n  inclination[section A]: [12, 20]\n", "4:3 L02 \"inclination\" names a place that a later key of the study names too")]
    [InlineData("  inclination[wall W, section A]: [10]\n  walls.sections.inclination: [12, 20]\n", "4:3 L02 \"inclination[wall W, section A]\" names a place that a later key of the study names too")]
    [InlineData("  horizontal_spacing: {from: 3, to: 4.2, step: 0.5}\n", "4:37 L03 steps of 0.5 from 3 do not end at 4.2, which would be left out")]
    [InlineData("  horizontal_spacing: [4.5, 5, 4.50]\n", "4:32 L03 4.50 is the same as 4.5, which is given before it")]
    [InlineData("  horizontal_spacing: [4.5 ft, 54 in]\n", "4:32 L03 54 in is the same as 4.5 ft, which is given before it")]
    [InlineData("  lengths: [20, [20]]\n", "4:17 L03 20 is given twice")]
    [InlineData("  clearance.nail: [4 in, 4 in]\n", "4:26 L03 4 in is given twice")]
    [InlineData("  units: [ft, m]\n", "4:3 L02 no single value of the project file is named \"units\"")]
    [InlineData("  horizontal_spacing: {from: 3.1 ft, to: 4.0 ft, step: 0.3 ft}\n  vertical_spacing: [3, 4]\n  inclination: [10]\n  lengths: [[20, 18]]\n", null)]
    public void Each_value_of_a_study_is_that_of_its_variants(string vary, string? problem)
    {
        using var folder = new InputFolder();
        folder.With("wall.yaml", InputFolder.Yaml(Line, "[[10+00, 118], [12+00, 118]]", "[10+00, 12+00]", bottom: "100"))
            .With("study.yaml", "format: 1\ntitle: T\nvary:\n" + vary);
        StudyResult read = StudyReader.Read(folder.Of("wall.yaml"), folder.Of("study.yaml"));
        Assert.Equal(problem is null ? [] : [problem], read.Problems.Select(p => $"{p.Spot.Line}:{p.Spot.Column} {p.Code} {p.Message}"));
        Assert.Equal(problem is null ? 8 : 0, read.Study?.Count ?? 0);
    }
}
