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
    [InlineData("6 inch", LengthUnit.Foot, 0.5)]
    [InlineData("6 inches", LengthUnit.Foot, 0.5)]
    [InlineData("6-inch", LengthUnit.Foot, 0.5)]
    [InlineData("6 IN", LengthUnit.Foot, 0.5)]
    [InlineData("6 in.", LengthUnit.Foot, 0.5)]
    [InlineData("6''", LengthUnit.Foot, 0.5)]
    [InlineData("6\u201d", LengthUnit.Foot, 0.5)]
    [InlineData("6\u2033", LengthUnit.Foot, 0.5)]
    [InlineData("5\u2019-6\u201d", LengthUnit.Foot, 5.5)]
    [InlineData("5\u2032 6\u2033", LengthUnit.Foot, 5.5)]
    [InlineData("5'6\"", LengthUnit.Foot, 5.5)]
    [InlineData("5'-6", LengthUnit.Foot, 5.5)]
    [InlineData("5'-1/2\"", LengthUnit.Foot, 5 + 0.5 / 12)]
    [InlineData("5'-6\u00bd\"", LengthUnit.Foot, 5 + 6.5 / 12)]
    [InlineData("5 1/2 in", LengthUnit.Foot, 5.5 / 12)]
    [InlineData("5-1/2\"", LengthUnit.Foot, 5.5 / 12)]
    [InlineData("5\u00bd\"", LengthUnit.Foot, 5.5 / 12)]
    [InlineData("3/4 in", LengthUnit.Foot, 0.0625)]
    [InlineData("5 feet", LengthUnit.Foot, 5)]
    [InlineData("5 feet 6 inches", LengthUnit.Foot, 5.5)]
    [InlineData("5 FT.", LengthUnit.Foot, 5)]
    [InlineData("5 foot", LengthUnit.Foot, 5)]
    [InlineData("24-foot", LengthUnit.Foot, 24)]
    [InlineData("\u22122 ft", LengthUnit.Foot, -2)]
    [InlineData("150 millimeters", LengthUnit.Metre, 0.15)]
    [InlineData("1.5 metres", LengthUnit.Metre, 1.5)]
    [InlineData("10 US survey feet", LengthUnit.SurveyFoot, 10)]
    [InlineData("6\u00a0in", LengthUnit.Foot, 0.5)]
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
    [InlineData("Sta 212+50", LengthUnit.Foot, 21250)]
    [InlineData("STA. 212+50.25", LengthUnit.Foot, 21250.25)]
    [InlineData("sta.212+50", LengthUnit.Foot, 21250)]
    [InlineData("Station 212 + 50", LengthUnit.Foot, 21250)]
    [InlineData("Sta 21250", LengthUnit.Foot, 21250)]
    public void A_station_is_read_in_both_forms(string text, LengthUnit unit, double value) =>
        Assert.Equal(value, OtherValues.Station(text, unit).Value);

    [Theory]
    [InlineData("15", 15)]
    [InlineData("15 deg", 15)]
    [InlineData("-7.5\u00b0", -7.5)]
    [InlineData("89-30-36", 89.51)]
    [InlineData("89\u00b030'36\"", 89.51)]
    public void An_angle_is_read_in_degrees(string text, double value) => Assert.Equal(value, AngleValues.Angle(text, surveyed: false).Value);

    /// <summary>Quadrant bearings count from north or south towards east or west (any surveying textbook, from memory).</summary>
    [Theory]
    [InlineData("N 62d15' E", 62.25)]
    [InlineData("N 62\u00b015' E", 62.25)]
    [InlineData("N62\u00b015'30\"E", 62 + 15 / 60.0 + 30 / 3600.0)]
    [InlineData("N 62\u00b0 15\u2032 30\u2033 E", 62 + 15 / 60.0 + 30 / 3600.0)]
    [InlineData("N 62-15-30 E", 62 + 15 / 60.0 + 30 / 3600.0)]
    [InlineData("N 62 15 30 E", 62 + 15 / 60.0 + 30 / 3600.0)]
    [InlineData("N 62 deg 15 min 30 sec E", 62 + 15 / 60.0 + 30 / 3600.0)]
    [InlineData("n 62.25 e", 62.25)]
    [InlineData("S 15 E", 165)]
    [InlineData("S 15\u00b0 W", 195)]
    [InlineData("N 15 W", 345)]
    [InlineData("North 15 degrees West", 345)]
    [InlineData("N 0 W", 0)]
    [InlineData("62-15", 62.25)]
    [InlineData("62\u00b015'", 62.25)]
    [InlineData("62d15m30s", 62 + 15 / 60.0 + 30 / 3600.0)]
    [InlineData("due east", 90)]
    [InlineData("W", 270)]
    [InlineData("123.5", 123.5)]
    [InlineData("15 degrees", 15)]
    public void An_azimuth_is_read_in_every_usual_form(string text, double value) => Assert.Equal(value, AngleValues.Azimuth(text).Value, 12);

    [Theory]
    [InlineData("NE", "say how far: for example N 45 E")]
    [InlineData("N 95 E", "the angle of a bearing is 0 to 90, from north or south towards east or west")]
    [InlineData("N 62-75 E", "minutes and seconds are under 60")]
    public void What_is_no_azimuth_is_named(string text, string why) => Assert.Equal(why, AngleValues.Azimuth(text).Why);

    [Theory]
    [InlineData("10-15", "that may be a range, or degrees and minutes: write one angle, such as 10\u00b015'")]
    [InlineData("15 feet", "unknown unit \"feet\"; angles take deg")]
    public void What_is_no_angle_is_named(string text, string why) => Assert.Equal(why, AngleValues.Angle(text, surveyed: false).Why);

    [Theory]
    [InlineData("5", 5)]
    [InlineData("1:10", 5.710593137499643)]
    [InlineData("1H:10V", 5.710593137499643)]
    [InlineData("10V:1H", 5.710593137499643)]
    [InlineData("10:1", 5.710593137499643)]
    public void The_lean_of_a_face_is_an_angle_or_a_ratio(string text, double value) => Assert.Equal(value, AngleValues.Lean(text).Value, 12);

    [Theory]
    [InlineData("1 %", 0.01)]
    [InlineData("-0.5 percent", -0.005)]
    [InlineData("0.02", 0.02)]
    [InlineData("1:100", 0.01)]
    [InlineData("2:1", 0.5)]
    [InlineData("2H:1V", 0.5)]
    [InlineData("1H:2V", 2)]
    public void A_slope_is_rise_per_run(string text, double value) => Assert.Equal(value, OtherValues.Slope(text).Value, 12);

    /// <summary>Pairs of ASTM A615/A615M, from memory.</summary>
    [Theory]
    [InlineData("75", 75)]
    [InlineData("75 ksi", 75)]
    [InlineData("Gr 75", 75)]
    [InlineData("Grade 75", 75)]
    [InlineData("gr. 150", 150)]
    [InlineData("520 MPa", 75)]
    [InlineData("420 MPa", 60)]
    public void A_grade_is_in_ksi(string text, double value) => Assert.Equal(value, OtherValues.Grade(text).Value);

    [Theory]
    [InlineData("212 50", "did you mean 212+50?")]
    [InlineData("212-50.25", "did you mean 212+50.25?")]
    [InlineData("212+5", "in feet two digits stand behind the plus; did you mean 212+05?")]
    [InlineData("21+250", "in feet two digits stand behind the plus; did you mean 212+50?")]
    [InlineData("21,250", "write 21250, without the comma")]
    public void What_is_no_station_is_named(string text, string why) => Assert.Equal(why, OtherValues.Station(text, LengthUnit.Foot).Why);

    [Theory]
    [InlineData("1,250.5", "write 1250.5, without the comma")]
    [InlineData("1,5", "write the decimals with a point")]
    [InlineData("10+00", "that is a station; are two values swapped?")]
    [InlineData("1/2", "a fraction needs its unit: 1/2 in")]
    public void What_is_no_length_is_named(string text, string why) => Assert.Equal(why, LengthValues.Parse(text, LengthUnit.Foot).Why);

    [Theory]
    [InlineData("42", 42.0, "42 in")]
    [InlineData("42 ft", 42.0, "42 in")]
    [InlineData("900", 900.0, "900 mm")]
    [InlineData("1", 1.0, "1 m")]
    [InlineData("1000", 1000.0, "1000 mm")]
    [InlineData("20000", 20000.0, null)]
    public void A_length_far_from_usual_says_which_unit_fits(string text, double value, string? meant) =>
        Assert.Equal(meant, LengthValues.Meant(text, value, LengthUnit.Foot, v => v is > 1.5 and < 14));

    [Theory]
    [InlineData("5 percent", 0.05)]
    [InlineData("5 %", 0.05)]
    [InlineData("0.05", 0.05)]
    [InlineData("4%", 0.04)]
    public void A_share_is_read_as_ratio_or_percentage(string text, double value) => Assert.Equal(value, OtherValues.Share(text).Value);

    [Theory]
    [InlineData("10", LengthUnit.Foot, 10)]
    [InlineData("1:120", LengthUnit.Foot, 10)]
    [InlineData("1:100", LengthUnit.Metre, 100)]
    [InlineData("1 in = 10 ft", LengthUnit.Foot, 10)]
    [InlineData("1\" = 10'", LengthUnit.Foot, 10)]
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
