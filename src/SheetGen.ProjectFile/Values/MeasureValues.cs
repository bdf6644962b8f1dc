using System.Text.RegularExpressions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Values;

/// <summary>Forces, strengths and steel with or without a unit of their own; a bare number is in the project's unit of its kind.</summary>
internal static partial class MeasureValues
{
    [GeneratedRegex(@"^(?<number>[+-]?[0-9.,_]+(?:[eE][+-]?[0-9]+)?)\s*(?<unit>\p{L}[\p{L}0-9/\^. \u00b2\u00b3]*)$")]
    private static partial Regex WithUnit();

    public static Amount Parse(string text, Measure measure, LengthUnit unit)
    {
        text = Spelling.Plain(text);
        Amount plain = Numbers.Parse(text);
        if (plain.IsGood || plain.Fault == ProblemCodes.OutOfRange)
            return plain;
        Match match = WithUnit().Match(text);
        if (!match.Success)
            return plain;
        Amount number = Numbers.Parse(match.Groups["number"].Value);
        if (!number.IsGood)
            return number.Why.Length > 0 ? number : plain;
        string name = match.Groups["unit"].Value;
        if (SizeOf(measure, name) is not { } given)
            return Amount.Bad(ProblemCodes.UnknownUnit, $"unknown unit \"{Shown.Short(name)}\"; {measure.Name} takes {measure.Foot} or {measure.Metre}");
        (decimal over, decimal under) = Ratio(given, measure, unit);
        return over == under ? number : Amount.Of(number.Exact * over / under);
    }

    /// <summary>A figure with its unit in the project's unit of its kind; null where the kind has no such unit.</summary>
    public static double? Of(double number, string name, Measure measure, LengthUnit unit)
    {
        if (SizeOf(measure, name) is not { } given)
            return null;
        (decimal over, decimal under) = Ratio(given, measure, unit);
        return number * (double)(over / under);
    }

    /// <summary>A unit's size in the project's unit of its kind.</summary>
    private static (decimal Over, decimal Under) Ratio((decimal Over, decimal Under) given, Measure measure, LengthUnit unit)
    {
        (decimal over, decimal under) = SizeOf(measure, measure.UnitFor(unit))!.Value;
        return (given.Over * under, given.Under * over);
    }

    private static (decimal Over, decimal Under)? SizeOf(Measure measure, string name)
    {
        string bare = new([.. name.ToLowerInvariant().Replace('\u00b2', '2').Replace('\u00b3', '3').Where(c => c is not (' ' or '^' or '.'))]);
        return measure.Sizes.TryGetValue(bare, out (decimal, decimal) size) ? size : null;
    }
}
