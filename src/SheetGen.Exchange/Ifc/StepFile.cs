using System.Globalization;
using System.Text;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Ifc;

/// <summary>A line of a STEP file that others refer to.</summary>
internal readonly record struct StepRef(int Number)
{
    public override string ToString() => "#" + Number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>An enumeration value, without its dots.</summary>
internal readonly record struct StepEnum(string Name);

/// <summary>A value with the name of its type, such as IFCLABEL('A').</summary>
internal readonly record struct StepTyped(string Type, object Value);

/// <summary>
/// The data section of a file in clear text encoding (ISO 10303-21), line by line. Arguments: null is $, <see cref="Derived"/> is *, texts,
/// numbers (a double always with a point), booleans, enumerations, typed values, references, and lists of all these.
/// </summary>
internal sealed class StepFile
{
    /// <summary>An attribute that a subtype derives.</summary>
    public static object Derived { get; } = new();

    private readonly StringBuilder _lines = new();
    private readonly Dictionary<string, StepRef> _values = [];
    private int _count;

    /// <summary>A new line of its own.</summary>
    public StepRef Add(string entity, params object?[] arguments) => Append(Text(entity, arguments));

    /// <summary>A line for something that is known by its value alone (point, direction, unit): an equal one is used again.</summary>
    public StepRef Value(string entity, params object?[] arguments)
    {
        string text = Text(entity, arguments);
        if (!_values.TryGetValue(text, out StepRef known))
            _values[text] = known = Append(text);
        return known;
    }

    public override string ToString() => _lines.ToString();

    /// <summary>A text as the encoding has it: printable ASCII, quotes and backslashes doubled, all else as \X2\ or \X4\.</summary>
    public static string Quote(string text)
    {
        var quoted = new StringBuilder("'");
        foreach (Rune sign in text.EnumerateRunes())
        {
            if (sign.Value is >= 32 and <= 126)
                quoted.Append(sign.Value is '\'' or '\\' ? new string((char)sign.Value, 2) : ((char)sign.Value).ToString());
            else if (sign.IsBmp)
                quoted.Append(CultureInfo.InvariantCulture, $"\\X2\\{sign.Value:X4}\\X0\\");
            else
                quoted.Append(CultureInfo.InvariantCulture, $"\\X4\\{sign.Value:X8}\\X0\\");
        }
        return quoted.Append('\'').ToString();
    }

    /// <summary>A real number in its shortest form that reads back the same, with a point.</summary>
    public static string Real(double value)
    {
        double number = FiniteNumber.Of(value);
        string text = (number == 0 ? 0 : number).ToString("R", CultureInfo.InvariantCulture);
        int exponent = text.IndexOf('E', StringComparison.Ordinal);
        string digits = exponent < 0 ? text : text[..exponent];
        return digits + (digits.Contains('.', StringComparison.Ordinal) ? "" : ".") + (exponent < 0 ? "" : text[exponent..]);
    }

    private StepRef Append(string text)
    {
        var line = new StepRef(++_count);
        _lines.Append(line).Append('=').Append(text).Append(";\n");
        return line;
    }

    private static string Text(string entity, object?[] arguments) => entity + "(" + string.Join(',', arguments.Select(Argument)) + ")";

    private static string Argument(object? value) => value switch
    {
        null => "$",
        string text => Quote(text),
        double number => Real(number),
        int whole => whole.ToString(CultureInfo.InvariantCulture),
        bool yes => yes ? ".T." : ".F.",
        StepRef line => line.ToString(),
        StepEnum name => $".{name.Name}.",
        StepTyped typed => $"{typed.Type}({Argument(typed.Value)})",
        System.Collections.IEnumerable list => "(" + string.Join(',', list.Cast<object?>().Select(Argument)) + ")",
        _ when ReferenceEquals(value, Derived) => "*",
        _ => throw new ArgumentException($"no STEP form of {value.GetType()}", nameof(value)),
    };
}
