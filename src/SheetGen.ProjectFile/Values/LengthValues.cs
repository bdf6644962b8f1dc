using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Values;

/// <summary>
/// Lengths with or without a unit of their own, in exact decimals. In feet of either kind an inch is a twelfth of that foot and a foot
/// mark is that foot; every other unit is converted by its exact size in metres.
/// </summary>
internal static partial class LengthValues
{
    private static readonly string[] UnitNames = ["ft", "us-ft", "in", "m", "cm", "mm"];

    [GeneratedRegex(@"^(?<number>[+-]?[0-9.,_]+(?:[eE][+-]?[0-9]+)?)\s*-?\s*(?<unit>[\p{L}'""][\p{L}\-\.'"" ]*)$")]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"^(?<sign>-?)(?<feet>[0-9]+)\s*-?\s*(?:'|ft\.?|feet|foot)\s*[-,]?\s*(?<inches>[0-9]+(?:\.[0-9]+)?)?(?:(?:^|[ -]+|(?<=['t.])\s*)(?<over>[0-9]+)/(?<under>[0-9]+))?\s*-?\s*(?:""|in\.?|inch|inches)?$", RegexOptions.IgnoreCase)]
    private static partial Regex FeetAndInches();

    [GeneratedRegex(@"^(?<sign>-?)(?:(?<whole>[0-9]+)[ -]+)?(?<over>[0-9]+)/(?<under>[0-9]+)\s*-?\s*(?<unit>[\p{L}'""][\p{L}\-\.'"" ]*)?$")]
    private static partial Regex Fraction();

    /// <summary>The length in the project's unit.</summary>
    public static Amount Parse(string text, LengthUnit unit)
    {
        text = Spelling.Plain(text);
        Amount plain = Numbers.Parse(text);
        if (plain.IsGood || plain.Fault == ProblemCodes.OutOfRange)
            return plain;
        Match both = FeetAndInches().Match(text);
        if (both.Success && (both.Groups["inches"].Success || both.Groups["over"].Success))
            return ParseFeetAndInches(both, unit);
        Match fraction = Fraction().Match(text);
        if (fraction.Success)
            return ParseFraction(fraction, unit);
        Match one = WithUnit().Match(text);
        if (!one.Success)
            return OtherValues.LooksLikeStation(text) ? Amount.Bad(ProblemCodes.WrongType, "that is a station; are two values swapped?") : plain;
        Amount number = Numbers.Parse(one.Groups["number"].Value);
        if (!number.IsGood)
            return number.Why.Length > 0 ? number : plain;
        return InUnit(number.Exact, number, one.Groups["unit"].Value, unit);
    }

    /// <summary>The same number in another unit that fits, such as "42 in" for 42; null where none does.</summary>
    /// <param name="value">In the project's unit.</param>
    public static string? Meant(string text, double value, LengthUnit unit, Func<double, bool> fits)
    {
        Match one = WithUnit().Match(Spelling.Plain(text));
        string given = one.Success ? one.Groups["number"].Value : Spelling.Plain(text);
        if (!Numbers.Parse(given).IsGood)
            return null;
        string[] units = Lengths.IsFoot(unit) ? ["in", "ft", "m", "mm", "cm"] : ["mm", "cm", "m", "ft", "in"];
        foreach (string name in units)
        {
            Amount amount = Parse($"{given} {name}", unit);
            if (amount.IsGood && Math.Abs(amount.Value - value) > 1e-9 * Math.Abs(value) && fits(amount.Value))
                return $"{given} {name}";
        }
        return null;
    }

    private static Amount InUnit(decimal exact, Amount asGiven, string name, LengthUnit unit)
    {
        if (SizeOf(UnitOf(name), unit) is { } size)
            return size.Over == size.Under ? asGiven : Amount.Of(exact * size.Over / size.Under);
        string meant = Suggestion.Nearest(name, UnitNames) is { } near ? $"did you mean {near}?" : "lengths take " + string.Join(", ", UnitNames);
        return Amount.Bad(ProblemCodes.UnknownUnit, $"unknown unit \"{Shown.Short(name)}\"; {meant}");
    }

    private static Amount ParseFeetAndInches(Match match, LengthUnit unit)
    {
        decimal inches = 0;
        if (!TryDigits(match, "feet", out decimal feet) || (match.Groups["inches"].Success && !TryDigits(match, "inches", out inches)))
            return Amount.Bad(ProblemCodes.OutOfRange, "the number is too large");
        if (match.Groups["over"].Success)
        {
            if (Ratio(match) is not { } part)
                return Amount.Bad(ProblemCodes.WrongType, "the fraction of an inch cannot be read");
            inches += part;
        }
        if (inches >= 12)
            return Amount.Bad(ProblemCodes.OutOfRange, "inches behind feet are under 12");
        (decimal Over, decimal Under) = SizeOf("'", unit)!.Value;
        decimal total = (feet + inches / 12m) * Over / Under;
        return Amount.Of(match.Groups["sign"].Value == "-" ? -total : total);
    }

    private static Amount ParseFraction(Match match, LengthUnit unit)
    {
        string name = match.Groups["unit"].Value;
        if (name.Length == 0)
            return Amount.Bad(ProblemCodes.WrongType, $"a fraction needs its unit: {match.Value} in");
        decimal whole = 0;
        if (Ratio(match) is not { } part || (match.Groups["whole"].Success && !TryDigits(match, "whole", out whole)))
            return Amount.Bad(ProblemCodes.WrongType, "the fraction cannot be read");
        decimal exact = (match.Groups["sign"].Value == "-" ? -1 : 1) * (whole + part);
        return InUnit(exact, Amount.Of(exact), name, unit);
    }

    private static decimal? Ratio(Match match) =>
        TryDigits(match, "over", out decimal over) && TryDigits(match, "under", out decimal under) && under != 0 ? over / under : null;

    private static bool TryDigits(Match match, string group, out decimal value)
    {
        string text = match.Groups[group].Value;
        value = 0;
        return text.Length <= 12 && decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
    }

    /// <summary>The unit's name as this program writes it; a name that it does not know stays.</summary>
    private static string UnitOf(string name) => Spelling.Bare(name) switch
    {
        "ft" or "foot" or "feet" or "'" => name.Contains('\'') ? "'" : "ft",
        "in" or "inch" or "inches" => "in",
        "\"" => "\"",
        "usft" or "ussurveyft" or "ussurveyfoot" or "ussurveyfeet" or "surveyft" or "surveyfoot" or "surveyfeet" => "us-ft",
        "m" or "meter" or "meters" or "metre" or "metres" => "m",
        "cm" or "centimeter" or "centimeters" or "centimetre" or "centimetres" => "cm",
        "mm" or "millimeter" or "millimeters" or "millimetre" or "millimetres" => "mm",
        _ => name,
    };

    /// <summary>Size of a unit as a fraction of the project's unit.</summary>
    private static (decimal Over, decimal Under)? SizeOf(string name, LengthUnit unit)
    {
        bool foot = Lengths.IsFoot(unit);
        (decimal Over, decimal Under)? metres = name switch
        {
            "'" when foot => Metres(unit),
            "\"" or "in" when foot => (Metres(unit).Over, Metres(unit).Under * 12),
            "ft" or "'" => (381, 1250),
            "us-ft" => (1200, 3937),
            "in" or "\"" => (127, 5000),
            "m" => (1, 1),
            "cm" => (1, 100),
            "mm" => (1, 1000),
            _ => null,
        };
        if (metres is not { } size)
            return null;
        (decimal over, decimal under) = Metres(unit);
        return (size.Over * under, size.Under * over);
    }

    private static (decimal Over, decimal Under) Metres(LengthUnit unit) => unit switch
    {
        LengthUnit.Foot => (381, 1250),
        LengthUnit.SurveyFoot => (1200, 3937),
        _ => (1, 1),
    };
}
