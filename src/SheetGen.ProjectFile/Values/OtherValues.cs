using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Values;

/// <summary>Stations, angles, shares and scales.</summary>
internal static partial class OtherValues
{
    [GeneratedRegex(@"^(?<sign>[+-]?)(?<full>[0-9]{1,9})\+(?<rest>[0-9]+)(?<decimals>\.[0-9]*)?$")]
    private static partial Regex StationForm();

    [GeneratedRegex(@"^(?<sign>-?)(?<d>[0-9]{1,3})(?:-|\u00b0)(?<m>[0-9]{1,2})(?:-|')(?<s>[0-9]{1,2}(?:\.[0-9]{1,9})?)""?$")]
    private static partial Regex DegreesForm();

    [GeneratedRegex(@"^(?<number>[+-]?[0-9.,_]+(?:[eE][+-]?[0-9]+)?)\s*(?<unit>[\p{L}%\u00b0]+)$")]
    private static partial Regex WithUnit();

    /// <summary>The printed station as a number.</summary>
    public static Amount Station(string text, LengthUnit unit)
    {
        Amount plain = Numbers.Parse(text);
        if (plain.IsGood || plain.Fault == ProblemCodes.OutOfRange)
            return plain;
        int full = Stations.FullStation(unit);
        int digits = full == 100 ? 2 : 3;
        Match match = StationForm().Match(text);
        if (!match.Success)
            return Amount.Bad(ProblemCodes.BadStation, plain.Why);
        string rest = match.Groups["rest"].Value;
        if (rest.Length != digits)
            return Amount.Bad(ProblemCodes.BadStation, digits == 2 ? "in feet two digits stand behind the plus" : "in metres three digits stand behind the plus");
        string decimals = match.Groups["decimals"].Value;
        if (decimals.Length > 12)
            return Amount.Bad(ProblemCodes.BadStation, "too many decimals");
        decimal value = decimal.Parse(match.Groups["full"].Value, CultureInfo.InvariantCulture) * full
            + decimal.Parse(rest + decimals, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return Amount.Of(match.Groups["sign"].Value == "-" ? -value : value);
    }

    /// <summary>Degrees.</summary>
    public static Amount Angle(string text)
    {
        Amount plain = Numbers.Parse(text);
        if (plain.IsGood || plain.Fault == ProblemCodes.OutOfRange)
            return plain;
        Match parts = DegreesForm().Match(text);
        if (parts.Success)
        {
            decimal minutes = Digits(parts, "m"), seconds = Digits(parts, "s");
            if (minutes >= 60 || seconds >= 60)
                return Amount.Bad(ProblemCodes.OutOfRange, "minutes and seconds are under 60");
            decimal value = Digits(parts, "d") + minutes / 60m + seconds / 3600m;
            return Amount.Of(parts.Groups["sign"].Value == "-" ? -value : value);
        }
        return InUnit(text, plain, ["deg", "\u00b0"], 1m, "angles take deg");
    }

    /// <summary>A ratio; 5 % is 0.05.</summary>
    public static Amount Share(string text)
    {
        Amount plain = Numbers.Parse(text);
        return plain.IsGood || plain.Fault == ProblemCodes.OutOfRange ? plain : InUnit(text, plain, ["%"], 100m, "shares take %");
    }

    /// <summary>Feet per inch of paper, or the ratio in metres; 1:120 in feet is 10.</summary>
    public static Amount Scale(string text, LengthUnit unit)
    {
        if (!text.StartsWith("1:", StringComparison.Ordinal))
            return Numbers.Parse(text);
        Amount ratio = Numbers.Parse(text[2..].Trim());
        return ratio.IsGood && Lengths.IsFoot(unit) ? Amount.Of(ratio.Exact / 12m) : ratio;
    }

    private static decimal Digits(Match match, string group) =>
        decimal.Parse(match.Groups[group].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    private static Amount InUnit(string text, Amount plain, string[] units, decimal per, string takes)
    {
        Match match = WithUnit().Match(text);
        if (!match.Success)
            return plain;
        Amount number = Numbers.Parse(match.Groups["number"].Value);
        if (!number.IsGood)
            return number.Why.Length > 0 ? number : plain;
        string name = match.Groups["unit"].Value;
        if (!units.Contains(name))
            return Amount.Bad(ProblemCodes.UnknownUnit, $"unknown unit \"{Shown.Short(name)}\"; {takes}");
        return per == 1m ? number : Amount.Of(number.Exact / per);
    }
}
