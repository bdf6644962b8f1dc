using SheetGen.Exchange.Common;
using SheetGen.Exchange.Ifc;
using Xunit;

namespace SheetGen.Tests.Exchange;

public class StepTests
{
    // ISO 10303-21, 6.4.2 to 6.4.3 (from memory): a real has a point, an exponent is written with E.
    [Theory]
    [InlineData(0, "0.")]
    [InlineData(12, "12.")]
    [InlineData(0.1, "0.1")]
    [InlineData(-2.5, "-2.5")]
    [InlineData(1e-9, "1.E-09")]
    [InlineData(1.25e22, "1.25E+22")]
    [InlineData(2487654.321, "2487654.321")]
    public void A_real_has_a_point_and_reads_back_the_same(double value, string text) => Assert.Equal(text, StepFile.Real(value));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_number_that_is_not_finite_is_never_written(double value) =>
        Assert.Throws<InvalidOperationException>(() => StepFile.Real(value));

    [Theory]
    [InlineData("a'b\\c", @"'a''b\\c'")]
    [InlineData("Ö ü", @"'\X2\00D6\X0\ \X2\00FC\X0\'")]
    [InlineData("𝄞", @"'\X4\0001D11E\X0\'")]
    [InlineData("a\nb", @"'a\X2\000A\X0\b'")]
    public void A_text_is_written_in_printable_ascii(string text, string quoted) => Assert.Equal(quoted, StepFile.Quote(text));

    // The UUID of the worked example of the IFC documentation could not be had; these follow from the rule: base 64, first digit of 2 bits.
    [Theory]
    [InlineData("00000000-0000-0000-0000-000000000000", "0000000000000000000000")]
    [InlineData("ffffffff-ffff-ffff-ffff-ffffffffffff", "3$$$$$$$$$$$$$$$$$$$$$")]
    [InlineData("01000000-0000-0000-0000-000000000001", "0100000000000000000001")]
    public void A_uuid_has_22_digits(string uuid, string digits) => Assert.Equal(digits, StableId.Compress(new Guid(uuid)));

    [Fact]
    public void Ids_follow_from_number_and_mark_alone()
    {
        var feet = new StableId(ExchangeWalls.Of("feet").Project);
        Assert.Equal(5, feet.Of("nail|A-1-01").Version);
        Assert.Equal(feet.Of("nail|A-1-01"), new StableId(ExchangeWalls.Of("feet").Project with { InputHash = "other" }).Of("nail|A-1-01"));
        Assert.NotEqual(feet.Of("nail|A-1-01"), feet.Of("nail|A-1-02"));
        Assert.NotEqual(feet.Of("nail|A-1-01"), new StableId(ExchangeWalls.Of("metres").Project).Of("nail|A-1-01"));
    }
}
