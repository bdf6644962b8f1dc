using System.Globalization;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs;

/// <summary>Nodes of the project file's tree that stand for what a file of another program holds.</summary>
internal static class Nodes
{
    public static ScalarNode Text(string text, SourceSpot spot) => new(text, true, spot);

    /// <summary>A length with its unit, so that the project file's own exact conversion is made of it.</summary>
    public static ScalarNode Length(string digits, FileUnit unit, SourceSpot spot) => new(digits + " " + unit.Symbol, false, spot);

    public static ScalarNode Length(double length, FileUnit unit, SourceSpot spot) => Length(Digits(length), unit, spot);

    /// <summary>A distance along the layout line, in project units.</summary>
    public static ScalarNode Along(double along, SourceSpot spot) => new("@" + Digits(along), false, spot);

    /// <summary>A number without a unit.</summary>
    public static ScalarNode Number(double number, SourceSpot spot) => new(Digits(number), false, spot);

    public static MapNode Map(SourceSpot spot, params (string Key, Node Value)[] entries) =>
        new([.. entries.Select(e => new KeyValuePair<ScalarNode, Node>(new ScalarNode(e.Key, false, spot), e.Value))], spot);

    public static ListNode List(SourceSpot spot, IEnumerable<Node> items) => new([.. items], spot);

    public static string Digits(double number)
    {
        string text = number.ToString("R", CultureInfo.InvariantCulture);
        // Figures of other programs can be of any size; one that no decimal holds is written out, and the reader says that it is too large.
        return !text.Contains('E', StringComparison.Ordinal) ? text
            : Math.Abs(number) < 1e28 ? ((decimal)number).ToString(CultureInfo.InvariantCulture) : number.ToString("F0", CultureInfo.InvariantCulture);
    }
}

/// <summary>The length unit of a file of another program.</summary>
/// <param name="Symbol">Name that the project file's lengths take.</param>
/// <param name="Metres">Metres in one of it.</param>
internal sealed record FileUnit(string Symbol, double Metres)
{
    public static FileUnit Foot { get; } = new("ft", Lengths.MetresPerFoot);

    public static FileUnit SurveyFoot { get; } = new("us-ft", Lengths.MetresPerSurveyFoot);

    public static FileUnit Inch { get; } = new("in", Lengths.MetresPerInch);

    public static FileUnit Metre { get; } = new("m", 1);

    public static FileUnit Centimetre { get; } = new("cm", 0.01);

    public static FileUnit Millimetre { get; } = new("mm", 0.001);

    public static IReadOnlyList<FileUnit> All { get; } = [Foot, SurveyFoot, Inch, Metre, Centimetre, Millimetre];

    public static FileUnit Of(LengthUnit unit) => unit switch
    {
        LengthUnit.Foot => Foot,
        LengthUnit.SurveyFoot => SurveyFoot,
        _ => Metre,
    };

    /// <summary>How many of the project's unit one of this is: exactly 1 where they are the same; an inch is a twelfth of either foot.</summary>
    public double In(LengthUnit project) =>
        Symbol == Lengths.Symbol(project) ? 1 : Symbol == "in" && Lengths.IsFoot(project) ? 1 / 12.0 : Metres / Lengths.MetresPer(project);
}
