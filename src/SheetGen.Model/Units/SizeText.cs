using System.Globalization;
using System.Text.RegularExpressions;

namespace SheetGen.Model.Units;

/// <summary>Reads the sizes out of a fact in words, such as the plate's "8 x 8 x 3/4 in".</summary>
public static partial class SizeText
{
    /// <summary>
    /// Every length of a text in project units, in order. Figures joined by x share the unit of the last; a figure without a unit, or
    /// after a letter or #, is no length.
    /// </summary>
    public static IReadOnlyList<double> Lengths(string text, LengthUnit unit)
    {
        var found = new List<double>();
        foreach (Match chain in Chain().Matches(text))
        {
            string last = chain.Groups["unit"].Captures[^1].Value;
            foreach (Capture part in chain.Groups["part"].Captures)
            {
                Match one = Part().Match(part.Value);
                string own = one.Groups["unit"].Value;
                found.Add(Value(one.Groups["number"].Value) * In(own.Length > 0 ? own : last, unit));
            }
        }
        return found;
    }

    /// <summary>Diameter of a bar that a text names by its number, such as "#4"; null where it names none that is known.</summary>
    public static double? BarDiameter(string text, LengthUnit unit) =>
        BarNumber().Match(text) is { Success: true } m && BarTable.Find(m.Groups[1].Value, 0) is Bar bar ? Units.Lengths.FromInches(bar.DiameterInches, unit) : null;

    private static double Value(string number)
    {
        double sum = 0;
        foreach (string part in number.Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries))
        {
            string[] fraction = part.Split('/');
            double value = double.Parse(fraction[0], CultureInfo.InvariantCulture);
            sum += fraction.Length == 1 ? value : value / Math.Max(1, double.Parse(fraction[1], CultureInfo.InvariantCulture));
        }
        return sum;
    }

    private static double In(string symbol, LengthUnit unit) => symbol.ToLowerInvariant() switch
    {
        "mm" => 0.001 / Units.Lengths.MetresPer(unit),
        "cm" => 0.01 / Units.Lengths.MetresPer(unit),
        "m" => 1 / Units.Lengths.MetresPer(unit),
        "ft" or "'" => Units.Lengths.FromInches(12, unit),
        _ => Units.Lengths.FromInches(1, unit),
    };

    private const string NumberForm = @"(?:\d+[ -]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?|\.\d+)", UnitForm = @"(?:inches|inch|in|mm|cm|ft|m|""|')(?![A-Za-z])";

    [GeneratedRegex($@"(?<![\w#./])(?:(?<part>{NumberForm} ?(?:{UnitForm})?)\s*x\s*)*(?<part>{NumberForm} ?(?<unit>{UnitForm}))", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Chain();

    [GeneratedRegex($@"^(?<number>{NumberForm}) ?(?<unit>{UnitForm})?", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Part();

    [GeneratedRegex(@"#\s?(\d+)", RegexOptions.CultureInvariant)]
    private static partial Regex BarNumber();
}
