using System.Globalization;
using FsCheck.Xunit;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Values;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>
/// Units: 1 ft = 0.3048 m exactly (85 FR 62698, 2020), 1 us-ft = 1200/3937 m (Mendenhall Order 1893, from memory),
/// 1 in = 0.0254 m (from memory).
/// </summary>
public sealed class ValueTests
{
    [Theory]
    [InlineData("3.5", LengthUnit.Foot, 3.5)]
    [InlineData("3.5 ft", LengthUnit.Foot, 3.5)]
    [InlineData("6 in", LengthUnit.Foot, 0.5)]
    [InlineData("6in", LengthUnit.SurveyFoot, 0.5)]
    [InlineData("5.5 in", LengthUnit.Foot, 5.5 / 12)]
    [InlineData("5'-6\"", LengthUnit.Foot, 5.5)]
    [InlineData("5' 6 1/2\"", LengthUnit.Foot, 5 + 6.5 / 12)]
    [InlineData("5 ft 6 in", LengthUnit.Foot, 5.5)]
    [InlineData("-5'-6\"", LengthUnit.Foot, -5.5)]
    [InlineData("5.5'", LengthUnit.SurveyFoot, 5.5)]
    [InlineData("9\"", LengthUnit.Foot, 0.75)]
    [InlineData("150 mm", LengthUnit.Metre, 0.15)]
    [InlineData("15 cm", LengthUnit.Metre, 0.15)]
    [InlineData("6 in", LengthUnit.Metre, 0.1524)]
    [InlineData("10 ft", LengthUnit.Metre, 3.048)]
    [InlineData("5'-6\"", LengthUnit.Metre, 1.6764)]
    [InlineData("0.3048 m", LengthUnit.Foot, 1)]
    [InlineData("3048 mm", LengthUnit.Foot, 10)]
    [InlineData("12 m", LengthUnit.SurveyFoot, 39.37)]
    [InlineData("1.2e1 ft", LengthUnit.Foot, 12)]
    [InlineData("+.5", LengthUnit.Foot, 0.5)]
    public void A_length_is_exact_in_the_projects_unit(string text, LengthUnit unit, double value) =>
        Assert.Equal(value, LengthValues.Parse(text, unit).Value);

    /// <summary>1 ft = 0.999998 us-ft exactly; 2,000,000 us-ft are 4.000008 ft more in ft (computed from the two definitions).</summary>
    [Theory]
    [InlineData("1 ft", LengthUnit.SurveyFoot, 0.999998)]
    [InlineData("1000000 us-ft", LengthUnit.Foot, 1000002.000004000008)]
    [InlineData("2000000 us-ft", LengthUnit.Foot, 2000004.000008000016)]
    [InlineData("3937 us-ft", LengthUnit.Metre, 1200)]
    public void The_survey_foot_is_told_from_the_international_foot(string text, LengthUnit unit, double value) =>
        Assert.Equal(value, LengthValues.Parse(text, unit).Value);

    [Theory]
    [InlineData("100+25.5", LengthUnit.Foot, 10025.5)]
    [InlineData("10025.5", LengthUnit.Foot, 10025.5)]
    [InlineData("0+00", LengthUnit.SurveyFoot, 0)]
    [InlineData("-0+50.25", LengthUnit.Foot, -50.25)]
    [InlineData("12+34.", LengthUnit.Foot, 1234)]
    [InlineData("1+234.5", LengthUnit.Metre, 1234.5)]
    [InlineData("12+005.125", LengthUnit.Metre, 12005.125)]
    public void A_station_is_read_in_both_forms(string text, LengthUnit unit, double value) =>
        Assert.Equal(value, OtherValues.Station(text, unit).Value);

    [Theory]
    [InlineData("15", 15)]
    [InlineData("15 deg", 15)]
    [InlineData("-7.5\u00b0", -7.5)]
    [InlineData("89-30-36", 89.51)]
    [InlineData("89\u00b030'36\"", 89.51)]
    public void An_angle_is_read_in_degrees(string text, double value) => Assert.Equal(value, OtherValues.Angle(text).Value);

    [Theory]
    [InlineData("5 %", 0.05)]
    [InlineData("0.05", 0.05)]
    [InlineData("4%", 0.04)]
    public void A_share_is_read_as_ratio_or_percentage(string text, double value) => Assert.Equal(value, OtherValues.Share(text).Value);

    [Theory]
    [InlineData("10", LengthUnit.Foot, 10)]
    [InlineData("1:120", LengthUnit.Foot, 10)]
    [InlineData("1:100", LengthUnit.Metre, 100)]
    public void A_scale_is_read_in_both_forms(string text, LengthUnit unit, double value) => Assert.Equal(value, OtherValues.Scale(text, unit).Value);

    [Theory]
    [InlineData("")]
    [InlineData("ft")]
    [InlineData("1_000")]
    [InlineData("0x10")]
    [InlineData("1,5")]
    [InlineData("1 000")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("--5")]
    [InlineData("5'-13\"")]
    [InlineData("5'-6 1/0\"")]
    [InlineData("1e999")]
    [InlineData("5 % ft")]
    [InlineData("\u0661")]
    public void What_is_no_length_is_refused(string text) => Assert.False(LengthValues.Parse(text, LengthUnit.Foot).IsGood);

    [Property]
    public bool A_length_printed_with_a_unit_reads_back_in_every_other_unit_within_the_last_digit(int thousandths)
    {
        double value = thousandths / 1000.0;
        string number = value.ToString("R", CultureInfo.InvariantCulture);
        double metres = LengthValues.Parse(number + " ft", LengthUnit.Metre).Value;
        double survey = LengthValues.Parse(number + " ft", LengthUnit.SurveyFoot).Value;
        return Near(metres, value * Lengths.MetresPerFoot)
            && Near(survey, value * Lengths.MetresPerFoot / Lengths.MetresPerSurveyFoot)
            && LengthValues.Parse(number + " ft", LengthUnit.Foot).Value == value;
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-15 * Math.Max(Math.Abs(a), Math.Abs(b)) * 4;
}
