using System.Text.RegularExpressions;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Values;

/// <summary>Angles, azimuths and the lean of a face, in degrees.</summary>
internal static partial class AngleValues
{
    [GeneratedRegex(@"^(?<sign>[+-]?)(?<d>[0-9]{1,3})\s*(?<mark>-|\u00b0|d|deg\.?|degrees?|\s)\s*(?<m>[0-9]{1,2}(?:\.[0-9]{1,9})?)\s*(?:-|'|m|min\.?|minutes?)?\s*(?:(?<=[-'mnes.\s])\s*(?<s>[0-9]{1,2}(?:\.[0-9]{1,9})?)\s*(?:""|s|sec\.?|seconds?)?)?$", RegexOptions.IgnoreCase)]
    private static partial Regex DegreesForm();

    [GeneratedRegex(@"^(?<number>[+-]?[0-9.,_]+(?:[eE][+-]?[0-9]+)?)\s*(?<unit>[\p{L}%\u00b0][\p{L}%\u00b0.]*)$")]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"^(?<ns>n|s|north|south)\.?\s*(?<angle>[0-9].*?)\s*(?<ew>e|w|east|west)\.?$", RegexOptions.IgnoreCase)]
    private static partial Regex Bearing();

    /// <summary>Degrees.</summary>
    /// <param name="surveyed">True where 62-15 can only be degrees and minutes; elsewhere it may be a range, and is refused.</param>
    public static Amount Angle(string text, bool surveyed)
    {
        text = Spelling.Plain(text);
        Amount plain = Numbers.Parse(text);
        if (plain.IsGood || plain.Fault == ProblemCodes.OutOfRange)
            return plain;
        Match parts = DegreesForm().Match(text);
        if (parts.Success)
            return ParseParts(parts, surveyed);
        Match match = WithUnit().Match(text);
        if (!match.Success)
            return plain;
        Amount number = Numbers.Parse(match.Groups["number"].Value);
        if (!number.IsGood)
            return number.Why.Length > 0 ? number : plain;
        string name = match.Groups["unit"].Value;
        return Spelling.Bare(name) is "deg" or "degree" or "degrees" or "\u00b0" or "d"
            ? number
            : Amount.Bad(ProblemCodes.UnknownUnit, $"unknown unit \"{Shown.Short(name)}\"; angles take deg");
    }

    /// <summary>An azimuth clockwise from north: degrees, a quadrant bearing such as N 62°15' E, or a point of the compass.</summary>
    public static Amount Azimuth(string text)
    {
        text = Spelling.Plain(text);
        string bare = Spelling.Bare(text);
        if (bare.StartsWith("due", StringComparison.Ordinal))
            bare = bare[3..];
        decimal? cardinal = bare switch { "n" or "north" => 0, "e" or "east" => 90, "s" or "south" => 180, "w" or "west" => 270, _ => null };
        if (cardinal is { } point)
            return Amount.Of(point);
        if (bare is "ne" or "nw" or "se" or "sw" or "northeast" or "northwest" or "southeast" or "southwest")
            return Amount.Bad(ProblemCodes.WrongType, $"say how far: for example {char.ToUpperInvariant(bare[0])} 45 {(bare.EndsWith('e') || bare.EndsWith("east", StringComparison.Ordinal) ? "E" : "W")}");
        Match bearing = Bearing().Match(text);
        if (!bearing.Success)
            return Angle(text, surveyed: true);
        Amount angle = Angle(bearing.Groups["angle"].Value, surveyed: true);
        if (!angle.IsGood)
            return angle;
        if (angle.Exact is < 0 or > 90)
            return Amount.Bad(ProblemCodes.OutOfRange, "the angle of a bearing is 0 to 90, from north or south towards east or west");
        bool north = char.ToLowerInvariant(bearing.Groups["ns"].Value[0]) == 'n', east = char.ToLowerInvariant(bearing.Groups["ew"].Value[0]) == 'e';
        return Amount.Of((north, east) switch
        {
            (true, true) => angle.Exact,
            (false, true) => 180 - angle.Exact,
            (false, false) => 180 + angle.Exact,
            _ => angle.Exact == 0 ? 0 : 360 - angle.Exact,
        });
    }

    /// <summary>The lean of a face from vertical: degrees, or a ratio such as 1:10 or 1H:10V.</summary>
    public static Amount Lean(string text)
    {
        text = Spelling.Plain(text);
        if (OtherValues.Ratio(text) is not { } ratio)
            return Angle(text, surveyed: false);
        decimal run = ratio.Horizontal ?? Math.Min(ratio.A, ratio.B), rise = ratio.Vertical ?? Math.Max(ratio.A, ratio.B);
        double degrees = Math.Atan2((double)run, (double)rise) * 180 / Math.PI;
        return Amount.Of((decimal)degrees, degrees);
    }

    private static Amount ParseParts(Match parts, bool surveyed)
    {
        bool seconds = parts.Groups["s"].Success;
        if (!surveyed && !seconds && (parts.Groups["mark"].Value is "-" or " "))
            return Amount.Bad(ProblemCodes.WrongType, $"that may be a range, or degrees and minutes: write one angle, such as {parts.Groups["d"]}\u00b0{parts.Groups["m"]}'");
        decimal m = OtherValues.Digits(parts, "m"), s = seconds ? OtherValues.Digits(parts, "s") : 0;
        if (m >= 60 || s >= 60)
            return Amount.Bad(ProblemCodes.OutOfRange, "minutes and seconds are under 60");
        decimal value = OtherValues.Digits(parts, "d") + m / 60m + s / 3600m;
        return Amount.Of(parts.Groups["sign"].Value == "-" ? -value : value);
    }
}
