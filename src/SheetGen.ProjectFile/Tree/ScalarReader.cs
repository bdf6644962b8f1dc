using System.Globalization;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Tree;

/// <summary>Turns single values into numbers in project units, words and texts.</summary>
internal sealed class ScalarReader(LengthUnit unit, ProblemList problems)
{
    /// <summary>Most characters of a text, and of a name: a mark made of the names of wall and section has to fit the 255 that the DXF format keeps of one beside an entity.</summary>
    private const int LongestText = 400, LongestName = 100;

    public Item? Read(ScalarNode node, Key key) => key.Kind switch
    {
        ValueKind.Text => ReadText(node, key),
        ValueKind.Flag => ReadFlag(node, key),
        ValueKind.Choice => ReadChoice(node, key),
        _ when key.ChoiceOf(node.Text) is { } word => new TextItem(word, node.Spot),
        _ => ReadNumber(node, key),
    };

    private TextItem? ReadText(ScalarNode node, Key key)
    {
        string text = node.Text.Trim();
        if (text.Length == 0)
        {
            problems.Add(ProblemCodes.EmptyValue, node.Spot, $"\"{key.Name}\" is blank", "give a value");
            return null;
        }
        int most = key.Name is "name" or "stage" ? LongestName : LongestText;
        if (text.Length > most || text.Any(c => char.IsControl(c) || c is '\u2028' or '\u2029'))
        {
            problems.Add(ProblemCodes.WrongType, node.Spot, FormattableString.Invariant($"\"{key.Name}\" takes one line of text, at most {most} characters"));
            return null;
        }
        if (key.Name is "name" or "stage" or "number" && "=+-@".Contains(text[0], StringComparison.Ordinal))
        {
            problems.Add(ProblemCodes.WrongType, node.Spot, $"\"{key.Name}\" cannot start with {text[0]}: a spreadsheet that reads the tables would take it for a formula", "start it with a letter or a digit");
            return null;
        }
        return new TextItem(text, node.Spot);
    }

    private FlagItem? ReadFlag(ScalarNode node, Key key)
    {
        switch (Spelling.Bare(node.Text))
        {
            case "true" or "yes" or "on":
                return new FlagItem(true, node.Spot);
            case "false" or "no" or "off":
                return new FlagItem(false, node.Spot);
        }
        problems.Add(ProblemCodes.WrongType, node.Spot, $"\"{key.Name}\" takes true or false, found \"{Shown.Short(node.Text)}\"");
        return null;
    }

    private TextItem? ReadChoice(ScalarNode node, Key key)
    {
        if (key.ChoiceOf(node.Text) is { } choice)
            return new TextItem(choice, node.Spot);
        string hint = Suggestion.Nearest(node.Text, key.Choices) is { } near
            ? $"did you mean \"{near}\"?"
            : "one of " + string.Join(", ", key.Choices);
        problems.Add(ProblemCodes.UnknownChoice, node.Spot, $"\"{key.Name}\" cannot be \"{Shown.Short(node.Text)}\"", hint);
        return null;
    }

    private NumberItem? ReadNumber(ScalarNode node, Key key)
    {
        (string text, StationMark mark) = key.Kind == ValueKind.Station ? OtherValues.MarkOf(node.Text.Trim()) : (node.Text.Trim(), StationMark.None);
        Amount amount = Parse(text, key);
        string found = Shown.Short(node.Text);
        if (!amount.IsGood)
        {
            string hint = amount.Why.Length > 0 ? amount.Why : key.Example.Length > 0 ? $"for example {key.Name}: {key.Example}" : "";
            string message = amount.Fault == ProblemCodes.OutOfRange
                ? $"\"{key.Name}\" cannot be {found}"
                : $"\"{key.Name}\" is not {Kind(key)}{string.Concat(key.Choices.Select(c => ", nor " + c))}: \"{found}\"";
            problems.Add(amount.Fault!, node.Spot, message, hint);
            return null;
        }
        if (key.RangeFor(unit) is { } range && !range.Has(amount.Value))
        {
            problems.Add(ProblemCodes.OutOfRange, node.Spot, $"\"{key.Name}\" cannot be {found}", $"it takes {range.InWordsFor(amount.Value, UnitOf(key))}{Meant(node, key, amount.Value, range)}");
            return null;
        }
        if (key.UsualFor(unit) is { } usual && !usual.Has(amount.Value))
            problems.Add(ProblemCodes.Unusual, node.Spot, $"\"{key.Name}\" of {found} is not usual", $"usual: {usual.InWords(UnitOf(key))}{Meant(node, key, amount.Value, usual)}");
        return new NumberItem(amount.Value, amount.Exact, node.Spot, mark);
    }

    /// <summary>The same number in another unit, where that would be usual.</summary>
    private string Meant(ScalarNode node, Key key, double value, ValueRange range)
    {
        bool Fits(double v) => range.Has(v) && key.UsualFor(unit)?.Has(v) != false;
        string? meant = key.Kind switch
        {
            ValueKind.Length => LengthValues.Meant(node.Text, value, unit, v => v != 0 && Fits(v)),
            ValueKind.Share or ValueKind.Slope when value >= 1 && Fits(value / 100) && Numbers.Parse(Spelling.Plain(node.Text)).IsGood => node.Text.Trim() + " %",
            _ => null,
        };
        return meant is null ? "" : $"; did you mean {meant}?";
    }

    private Amount Parse(string text, Key key) => key.Kind switch
    {
        ValueKind.Length => LengthValues.Parse(text, unit),
        ValueKind.Station => OtherValues.Station(text, unit),
        ValueKind.Angle => AngleValues.Angle(text, key.Surveyed),
        ValueKind.Azimuth => AngleValues.Azimuth(text),
        ValueKind.Lean => AngleValues.Lean(text),
        ValueKind.Slope => OtherValues.Slope(text),
        ValueKind.Grade => OtherValues.Grade(text),
        ValueKind.Share => OtherValues.Share(text),
        ValueKind.Measure => MeasureValues.Parse(text, key.Measure!, unit),
        ValueKind.Scale => OtherValues.Scale(text, unit),
        ValueKind.Integer => Whole(text),
        _ => Numbers.Parse(Spelling.Plain(text)),
    };

    private static Amount Whole(string text)
    {
        if (!int.TryParse(Spelling.Plain(text), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value))
            return Amount.Bad(ProblemCodes.WrongType, "");
        return Amount.Of(value, value);
    }

    private string UnitOf(Key key) => key.Kind switch
    {
        ValueKind.Measure => key.Measure!.UnitFor(unit),
        ValueKind.Length => Lengths.Symbol(unit),
        ValueKind.Angle or ValueKind.Azimuth or ValueKind.Lean => "deg",
        ValueKind.Grade => "ksi",
        _ => "",
    };

    private static string Kind(Key key) => key.Kind switch
    {
        ValueKind.Measure => key.Measure!.Name,
        ValueKind.Length => "a length",
        ValueKind.Station => "a station",
        ValueKind.Angle or ValueKind.Lean => "an angle",
        ValueKind.Azimuth => "an azimuth or bearing",
        ValueKind.Slope => "a slope",
        ValueKind.Grade => "a grade",
        ValueKind.Share => "a share",
        ValueKind.Scale => "a scale",
        ValueKind.Integer => "a whole number",
        _ => "a number",
    };
}
