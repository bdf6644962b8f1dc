using SheetGen.Layout.Placing;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>The placer says where shifted corner rows would help, and only there.</summary>
[Trait("Category", "Long")]
public sealed class CornerAdviceTests
{
    private static readonly PlacingWall Sharp = new() { Length = 42, CornerAt = 21, Deflection = 80, Top = "[[0, 110], [END, 110]]", Lengths = "24" };

    [Fact]
    public void Advice_keeps_what_it_promises()
    {
        NailLayout continuous = Placer.Place(Sharp.Project, new PlacingOptions());
        NailLayout shifted = Placer.Place((Sharp with { CornerRows = "shifted" }).Project, new PlacingOptions());
        bool helps = (shifted.Score.Unresolved.Found, shifted.Score.Noted.Found).CompareTo((continuous.Score.Unresolved.Found, continuous.Score.Noted.Found)) < 0;
        Assert.True(helps, $"{continuous.Score} {shifted.Score}");
        string note = Assert.Single(continuous.Notes, n => n.StartsWith("corner_rows: shifted in section A", StringComparison.Ordinal));
        Assert.Contains($"would leave {shifted.Score.Unresolved.Found} nails unresolved and {shifted.Score.Noted.Found} noted", note, StringComparison.Ordinal);
        Assert.DoesNotContain(shifted.Notes, n => n.StartsWith("corner_rows", StringComparison.Ordinal));
    }

    [Fact]
    public void No_advice_at_an_inside_corner() =>
        Assert.DoesNotContain(
            Placer.Place((Sharp with { Deflection = -80 }).Project, new PlacingOptions()).Notes, n => n.StartsWith("corner_rows", StringComparison.Ordinal));
}
