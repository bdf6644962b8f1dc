using SheetGen.Model.Problems;
using SheetGen.Tests.Inputs;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Facts that the project states in its own words, against the figures that it gives for the same: the sheets print the words.</summary>
public sealed class FactFigureTests
{
    private const string Line = "start: {station: 10+00, northing: 5000, easting: 2000, azimuth: 90}\n    elements: [{line: 200}]";

    private static string[] Said(string facts, string figures, string more = "", string units = "ft")
    {
        using var folder = new InputFolder();
        (string line, string top, string stations) = units == "ft" ? (Line, "[[10+00, 118], [12+00, 118]]", "[10+00, 12+00]")
            : (Line.Replace("10+00", "0+000", StringComparison.Ordinal), "[[0+000, 106], [0+060, 106]]", "[0+000, 0+060]");
        string yaml = InputFolder.Yaml(line, top, stations, units, bottom: "100")
            .Replace("hole: 6 in}", "hole: 6 in, design: {" + figures + "}}", StringComparison.Ordinal);
        return [.. folder.Read(yaml + $"\ndesign:\n  {facts}\n{more}").Problems.Where(p => p.Severity == Severity.Warning && p.Code == "R93" || p.Severity == Severity.Error).Select(p => p.Message)];
    }

    [Theory]
    [InlineData("shotcrete_strength: 4000 psi at 28 days", "facing: {concrete_strength: 5000 psi}", "section A has 5000 psi (design: facing: concrete_strength)")]
    [InlineData("concrete_strength: \"f'c = 4,000 psi\"", "permanent_facing: {concrete_strength: 4500 psi}", "section A has 4500 psi (design: permanent_facing: concrete_strength)")]
    [InlineData("plate: 8 x 8 x 3/4 in", "plate: {width: 9 in, thickness: 0.75 in}", "section A has 9 in (design: plate: width)")]
    [InlineData("plate: 8 x 8 x 3/4 in", "plate: {width: 8 in, thickness: 1 in}", "section A has 1 in (design: plate: thickness)")]
    [InlineData("waler_bars: \"2 #4 each way\"", "facing: {waler_bars: {size: \"#5\", count: 2}}", "section A has 2 #5 (design: facing: waler_bars)")]
    [InlineData("bearing_bars: \"2 #4, 3 ft long\"", "facing: {bearing_bars: {size: \"#4\", count: 4}}", "section A has 4 #4 (design: facing: bearing_bars)")]
    [InlineData("mesh: 6x6 W2.9xW2.9", "facing: {mesh: 0.087 in2/ft}", "section A has 0.087 in2/ft (design: facing: mesh)")]
    [InlineData("bond: 10 psi ultimate", "bond: 15 psi", "section A has 15 psi (design: bond)")]
    [InlineData("nail_load: 28 kip", "t_max: [18, 20]", "section A has 20 kip (design: t_max)")]
    public void Words_that_name_another_value_than_the_figure_are_told(string facts, string figures, string said)
    {
        string message = Assert.Single(Said(facts, figures));
        Assert.Contains(said, message, StringComparison.Ordinal);
        Assert.Contains("the sheets print the words", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("shotcrete_strength: 4 ksi", "facing: {concrete_strength: 4000 psi}")]
    [InlineData("shotcrete_strength: 27.6 MPa", "facing: {concrete_strength: 4000 psi}")]
    [InlineData("shotcrete_strength: as specified", "facing: {concrete_strength: 4000 psi}")]
    [InlineData("plate: 8 x 8 x 3/4 in", "plate: {width: 8 in, thickness: 0.75 in}")]
    [InlineData("plate: 203 x 203 x 19 mm", "plate: {width: 8 in, thickness: 0.75 in}")]
    [InlineData("waler_bars: \"2 #4 each way\"", "facing: {waler_bars: {size: \"#4\", count: 2}}")]
    [InlineData("waler_bars: \"#4 continuous\"", "facing: {waler_bars: {size: \"#4\", count: 2}}")]
    [InlineData("mesh: 4x4 W2.9xW2.9", "facing: {mesh: 0.087 in2/ft}")]
    [InlineData("mesh: 102x102 MW18.7xMW18.7", "facing: {mesh: 0.0866 in2/ft}")]
    [InlineData("bond: 10 psi in clay", "bond: 15 psi, bond_by_layer: {clay: 10 psi}")]
    [InlineData("nail_load: 18 kip in the first row", "t_max: [18, 20]")]
    public void Words_that_agree_or_name_no_value_are_not(string facts, string figures) => Assert.Empty(Said(facts, figures));

    [Fact]
    public void Rates_are_held_against_the_words_too()
    {
        string message = Assert.Single(Said("centralizers: at no more than 8 ft", "bond: 15 psi", "rates: {centralizer_spacing: 10 ft}"));
        Assert.Contains("the project has 10 ft (rates: centralizer_spacing)", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Metric_values_are_compared_in_their_own_unit()
    {
        Assert.Empty(Said("shotcrete_strength: 28 MPa", "facing: {concrete_strength: 28 MPa}", units: "m"));
        Assert.Empty(Said("bond: 100 kPa ultimate", "bond: 100 kPa", units: "m"));
        Assert.Contains("30 MPa", Assert.Single(Said("shotcrete_strength: 4000 psi", "facing: {concrete_strength: 30 MPa}", units: "m")), StringComparison.Ordinal);
        Assert.Contains("120 kPa", Assert.Single(Said("bond: 100 kPa ultimate", "bond: 120 kPa", units: "m")), StringComparison.Ordinal);
    }
}
