namespace SheetGen.Model.Units;

/// <summary>Exact factors between length units; conversions are made only where a value is read or printed.</summary>
public static class Lengths
{
    /// <summary>Metres in one foot, exactly.</summary>
    public const double MetresPerFoot = 0.3048;

    /// <summary>Metres in one inch, exactly.</summary>
    public const double MetresPerInch = 0.0254;

    /// <summary>Metres in one US survey foot, exactly 1200/3937.</summary>
    public const double MetresPerSurveyFoot = 1200.0 / 3937.0;

    /// <summary>Metres in one of the given unit.</summary>
    public static double MetresPer(LengthUnit unit) => unit switch
    {
        LengthUnit.Foot => MetresPerFoot,
        LengthUnit.SurveyFoot => MetresPerSurveyFoot,
        _ => 1.0,
    };

    /// <summary>True for both feet.</summary>
    public static bool IsFoot(LengthUnit unit) => unit != LengthUnit.Metre;

    /// <summary>A length in inches, in the given unit. In both feet 12 inches of that foot are one foot, so that 6 in stays 0.5.</summary>
    public static double FromInches(double inches, LengthUnit unit) =>
        IsFoot(unit) ? inches / 12.0 : inches * 25.4 / 1000.0;

    /// <summary>A length in the given unit, in inches of that unit's system.</summary>
    public static double ToInches(double length, LengthUnit unit) =>
        IsFoot(unit) ? length * 12.0 : length / MetresPerInch;

    /// <summary>The rounding quantum of stations and elevations: 0.01 ft or 0.001 m.</summary>
    public static double Quantum(LengthUnit unit) => unit == LengthUnit.Metre ? 0.001 : 0.01;

    /// <summary>Decimals that print a station or an elevation without loss: 2 in feet, 3 in metres.</summary>
    public static int Decimals(LengthUnit unit) => unit == LengthUnit.Metre ? 3 : 2;

    /// <summary>The value rounded to the unit's quantum, halves away from zero.</summary>
    public static double RoundToQuantum(double value, LengthUnit unit) =>
        Math.Round(value, Decimals(unit), MidpointRounding.AwayFromZero);

    /// <summary>The name used in project files and results: ft, us-ft or m.</summary>
    public static string Symbol(LengthUnit unit) => unit switch
    {
        LengthUnit.Foot => "ft",
        LengthUnit.SurveyFoot => "us-ft",
        _ => "m",
    };
}
