using SheetGen.Exchange;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Exchange;

public class ExchangeFormatTests
{
    public static TheoryData<string> Words => [.. ExchangeFormat.All.Select(f => f.Word)];

    [Fact]
    public void Words_and_file_names_are_each_their_own()
    {
        Assert.Equal(["stakeout", "landxml", "geojson", "shape", "ifc", "bcf", "gltf"], ExchangeFormat.All.Select(f => f.Word));
        Assert.Equal(ExchangeFormat.AllFileNames.Count, ExchangeFormat.AllFileNames.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    [Theory]
    [MemberData(nameof(Words))]
    public void The_same_input_gives_the_same_bytes(string word)
    {
        ExchangeFormat format = ExchangeFormat.All.Single(f => f.Word == word);
        string yaml = ExchangeWalls.Yaml("feet");
        Assert.Equal(format.Make(ExchangeWalls.Of("feet")), format.Make(ExchangeWalls.Make(yaml)));
        Assert.Equal(format.FileNames.Count, format.Make(ExchangeWalls.Of("metres")).Count);
    }

    [Theory]
    [MemberData(nameof(Words))]
    public void A_number_that_is_not_finite_is_never_written(string word)
    {
        if (word == "bcf")
            return; // Only findings stand there: see below.
        ExchangeInput input = ExchangeWalls.Of("two walls");
        NailLayout layout = input.Layout with
        {
            Nails = [.. input.Layout.Nails.Select((n, i) => i == 3 ? n with { Hole = n.Hole with { Head = new Vector3D(double.NaN, 0, 0) } } : n)],
        };
        QuantityTable quantities = input.Quantities with { Nails = [.. input.Quantities.Nails.Zip(layout.Nails, (q, n) => q with { Nail = n })] };
        Assert.ThrowsAny<Exception>(() => ExchangeFormat.All.Single(f => f.Word == word).Make(input with { Layout = layout, Quantities = quantities }));
    }

    [Fact]
    public void A_finding_at_no_number_is_never_written()
    {
        ExchangeInput input = ExchangeWalls.Of("two walls");
        var bad = new Finding { Code = "x", Severity = Model.Problems.Severity.Error, Points = [new Vector3D(double.NaN, 0, 0)], Message = "m" };
        Assert.Throws<InvalidOperationException>(() => ExchangeFormat.All.Single(f => f.Word == "bcf").Make(input with { Report = input.Report with { Findings = [bad] } }));
    }
}
