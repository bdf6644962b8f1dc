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

    [GeneratedRegex(@"^(?<number>[+-]?[0-9.,_]+(?:[eE][+-]?[0-9]+)?)\s*(?<unit>[\p{L}'""][\p{L}\-\.'""]*)$")]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"^(?<sign>-?)(?<feet>[0-9]+)\s*(?:'|ft)\s*-?\s*(?<inches>[0-9]+(?:\.[0-9]+)?)(?:[ -](?<over>[0-9]+)/(?<under>[0-9]+))?\s*(?:""|in)$")]
    private static partial Regex FeetAndInches();

    /// <summary>The length in the project's unit.</summary>
    public static Amount Parse(string text, LengthUnit unit)
    {
        Amount plain = Numbers.Parse(text);
        if (plain.IsGood || plain.Fault == ProblemCodes.OutOfRange)
            return plain;
        Match both = FeetAndInches().Match(text);
        if (both.Success)
            return ParseFeetAndInches(both, unit);
        Match one = WithUnit().Match(text);
        if (!one.Success)
            return plain;
        Amount number = Numbers.Parse(one.Groups["number"].Value);
        if (!number.IsGood)
            return number.Why.Length > 0 ? number : plain;
        string name = one.Groups["unit"].Value;
        if (SizeOf(name, unit) is { } size)
            return size.Over == size.Under ? number : Amount.Of(number.Exact * size.Over / size.Under);
        string meant = Suggestion.Nearest(name, UnitNames) is { } near ? $"did you mean {near}?" : "lengths take " + string.Join(", ", UnitNames);
        return Amount.Bad(ProblemCodes.UnknownUnit, $"unknown unit \"{Shown.Short(name)}\"; {meant}");
    }

    private static Amount ParseFeetAndInches(Match match, LengthUnit unit)
    {
        if (!TryDigits(match, "feet", out decimal feet) || !TryDigits(match, "inches", out decimal inches))
            return Amount.Bad(ProblemCodes.OutOfRange, "the number is too large");
        if (match.Groups["over"].Success)
        {
            if (!TryDigits(match, "over", out decimal over) || !TryDigits(match, "under", out decimal under) || under == 0)
                return Amount.Bad(ProblemCodes.WrongType, "the fraction of an inch cannot be read");
            inches += over / under;
        }
        if (inches >= 12)
            return Amount.Bad(ProblemCodes.OutOfRange, "inches behind feet are under 12");
        (decimal Over, decimal Under) = SizeOf("'", unit)!.Value;
        decimal total = (feet + inches / 12m) * Over / Under;
        return Amount.Of(match.Groups["sign"].Value == "-" ? -total : total);
    }

    private static bool TryDigits(Match match, string group, out decimal value)
    {
        string text = match.Groups[group].Value;
        value = 0;
        return text.Length <= 12 && decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
    }

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
