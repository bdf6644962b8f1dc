using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Values;

/// <summary>Stations, shares, slopes, scales and steel grades.</summary>
internal static partial class OtherValues
{
    [GeneratedRegex(@"^(?:sta(?:tion)?\.?\s*)?(?<sign>[+-]?)(?<full>[0-9]{1,9})\s*\+\s*(?<rest>[0-9]+)(?<decimals>\.[0-9]*)?$", RegexOptions.IgnoreCase)]
    private static partial Regex StationForm();

    [GeneratedRegex(@"^sta(?:tion)?\.?\s*(?<number>[0-9].*)$", RegexOptions.IgnoreCase)]
    private static partial Regex StationWord();

    [GeneratedRegex(@"^(?<full>[0-9]{1,7})[ \-](?<rest>[0-9]{2,3}(?:\.[0-9]*)?)$")]
    private static partial Regex StationWithoutPlus();

    [GeneratedRegex(@"^(?<number>[+-]?[0-9.,_]+(?:[eE][+-]?[0-9]+)?)\s*(?<unit>[\p{L}%\u00b0][\p{L}%\u00b0. ]*)$")]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"^(?<sign>[+-]?)(?<a>[0-9]+(?:\.[0-9]+)?)\s*(?<ua>[hv]?)\s*:\s*(?<b>[0-9]+(?:\.[0-9]+)?)\s*(?<ub>[hv]?)$", RegexOptions.IgnoreCase)]
    private static partial Regex RatioForm();

    [GeneratedRegex(@"^(?:gr(?:ade)?\.?\s*)?(?<number>[0-9]{1,4})(?:\s*(?<unit>ksi|mpa))?$", RegexOptions.IgnoreCase)]
    private static partial Regex GradeForm();

    [GeneratedRegex(@"^(?<station>.*[0-9.])\s*\(?(?<mark>bk|back|ah|ahd|ahead)\.?\)?$", RegexOptions.IgnoreCase)]
    private static partial Regex StationEnd();

    /// <summary>A station without BK or AH behind it or @ before it, and which of them it was.</summary>
    public static (string Text, StationMark Mark) MarkOf(string text)
    {
        if (text.StartsWith('@'))
            return (text[1..].Trim(), StationMark.Along);
        Match end = StationEnd().Match(text);
        if (!end.Success)
            return (text, StationMark.None);
        return (end.Groups["station"].Value, char.ToLowerInvariant(end.Groups["mark"].Value[0]) == 'b' ? StationMark.Back : StationMark.Ahead);
    }

    /// <summary>The printed station as a number.</summary>
    public static Amount Station(string text, LengthUnit unit)
    {
        text = Spelling.Plain(text);
        Match word = StationWord().Match(text);
        Amount plain = Numbers.Parse(word.Success ? word.Groups["number"].Value : text);
        if (plain.IsGood || plain.Fault == ProblemCodes.OutOfRange)
            return plain;
        int full = PrintedStation.Full(unit);
        int digits = full == 100 ? 2 : 3;
        Match match = StationForm().Match(text);
        if (!match.Success)
            return Amount.Bad(ProblemCodes.BadStation, plain.Why.Length > 0 ? plain.Why : StationWithoutPlus().Match(text) is { Success: true } two ? $"did you mean {two.Groups["full"]}+{two.Groups["rest"]}?" : "");
        string rest = match.Groups["rest"].Value;
        if (rest.Length != digits)
            return Amount.Bad(ProblemCodes.BadStation, $"in {(digits == 2 ? "feet two" : "metres three")} digits stand behind the plus{Meant(match, digits)}");
        string decimals = match.Groups["decimals"].Value;
        if (decimals.Length > 12)
            return Amount.Bad(ProblemCodes.BadStation, "too many decimals");
        decimal value = decimal.Parse(match.Groups["full"].Value, CultureInfo.InvariantCulture) * full
            + decimal.Parse(rest + decimals, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return Amount.Of(match.Groups["sign"].Value == "-" ? -value : value);
    }

    /// <summary>True for a text in the form of a station with its plus.</summary>
    public static bool LooksLikeStation(string text) => StationForm().IsMatch(Spelling.Plain(text));

    /// <summary>A ratio; 5 % and 5 percent are 0.05.</summary>
    public static Amount Share(string text)
    {
        text = Spelling.Plain(text);
        Amount plain = Numbers.Parse(text);
        return plain.IsGood || plain.Fault == ProblemCodes.OutOfRange ? plain : Percent(text, plain, "shares take %");
    }

    /// <summary>Rise per run: 0.01, 1 %, 1:100 (horizontal to vertical or the other way, the flatter is taken), 1V:100H.</summary>
    public static Amount Slope(string text)
    {
        text = Spelling.Plain(text);
        Amount plain = Numbers.Parse(text);
        if (plain.IsGood || plain.Fault == ProblemCodes.OutOfRange)
            return plain;
        if (Ratio(text) is { } ratio)
            return Amount.Of(ratio.Sign * (ratio.Vertical ?? Math.Min(ratio.A, ratio.B)) / (ratio.Horizontal ?? Math.Max(ratio.A, ratio.B)));
        return Percent(text, plain, "slopes take %, or a ratio such as 1:100");
    }

    /// <summary>Feet per inch of paper, or the ratio in metres; 1:120 in feet is 10, and so are 1" = 10' and 1 in = 10 ft.</summary>
    public static Amount Scale(string text, LengthUnit unit)
    {
        text = Spelling.Plain(text);
        string bare = Spelling.Bare(text);
        foreach (string inch in new[] { "1\"=", "1in=", "1inch=" })
        {
            if (Lengths.IsFoot(unit) && bare.StartsWith(inch, StringComparison.Ordinal) && text.Split('=') is [_, { } feet])
                return LengthValues.Parse(feet, unit);
        }
        if (!text.StartsWith("1:", StringComparison.Ordinal))
            return Numbers.Parse(text);
        Amount ratio = Numbers.Parse(text[2..].Trim());
        return ratio.IsGood && Lengths.IsFoot(unit) ? Amount.Of(ratio.Exact / 12m) : ratio;
    }

    /// <summary>Yield strength in ksi: 75, 75 ksi, Gr 75, Grade 75; in MPa by the pairs of ASTM A615/A615M (from memory).</summary>
    public static Amount Grade(string text)
    {
        Match match = GradeForm().Match(Spelling.Plain(text));
        if (!match.Success)
            return Amount.Bad(ProblemCodes.WrongType, "");
        int number = int.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture);
        if (!match.Groups["unit"].Value.Equals("mpa", StringComparison.OrdinalIgnoreCase))
            return KsiOf(number) is { } meant ? Amount.Bad(ProblemCodes.OutOfRange, $"the grade is in ksi: did you mean {meant} ({number} MPa)?") : Amount.Of(number, number);
        return KsiOf(number) is { } ksi ? Amount.Of(ksi, ksi) : Amount.Bad(ProblemCodes.OutOfRange, "grades in MPa are 280, 420, 520, 550 and 690");
    }

    /// <summary>The parts of a ratio a:b, with what is known to be horizontal and vertical; null where it is none.</summary>
    internal static (decimal Sign, decimal A, decimal B, decimal? Horizontal, decimal? Vertical)? Ratio(string text)
    {
        Match match = RatioForm().Match(text);
        if (!match.Success)
            return null;
        decimal a = Digits(match, "a"), b = Digits(match, "b");
        if (a == 0 || b == 0)
            return null;
        string first = match.Groups["ua"].Value.ToLowerInvariant(), second = match.Groups["ub"].Value.ToLowerInvariant();
        bool aHorizontal = first == "h" || (first.Length == 0 && second == "v");
        bool named = first.Length > 0 || second.Length > 0;
        decimal sign = match.Groups["sign"].Value == "-" ? -1 : 1;
        return (sign, a, b, named ? aHorizontal ? a : b : null, named ? aHorizontal ? b : a : null);
    }

    internal static decimal Digits(Match match, string group) =>
        decimal.Parse(match.Groups[group].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    private static Amount Percent(string text, Amount plain, string takes)
    {
        Match match = WithUnit().Match(text);
        if (!match.Success)
            return plain;
        Amount number = Numbers.Parse(match.Groups["number"].Value);
        if (!number.IsGood)
            return number.Why.Length > 0 ? number : plain;
        string name = match.Groups["unit"].Value;
        return Spelling.Bare(name) is "%" or "percent" or "pct"
            ? Amount.Of(number.Exact / 100m)
            : Amount.Bad(ProblemCodes.UnknownUnit, $"unknown unit \"{Shown.Short(name)}\"; {takes}");
    }

    private static string Meant(Match match, int digits)
    {
        string full = match.Groups["full"].Value, rest = match.Groups["rest"].Value;
        if (rest.Length < digits)
            return $"; did you mean {full}+{rest.PadLeft(digits, '0')}{match.Groups["decimals"]}?";
        string all = full + rest;
        return all.Length > digits ? $"; did you mean {all[..^digits]}+{all[^digits..]}{match.Groups["decimals"]}?" : "";
    }

    private static int? KsiOf(int megapascals) => megapascals switch
    {
        280 => 40,
        420 => 60,
        520 => 75,
        550 => 80,
        690 => 100,
        _ => null,
    };
}
