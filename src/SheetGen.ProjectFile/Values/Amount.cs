namespace SheetGen.ProjectFile.Values;

/// <summary>A number read from a text: exact in decimals, and the nearest double; or what is wrong with the text.</summary>
internal readonly record struct Amount(decimal Exact, double Value, ProblemCode? Fault, string Why)
{
    public static Amount Of(decimal exact, double value) => new(exact, value, null, "");

    /// <summary>The nearest double of a decimal: the digits are parsed, since a cast may be off by one unit in the last place.</summary>
    public static Amount Of(decimal exact) => new(exact, Numbers.Nearest(exact), null, "");

    public static Amount Bad(ProblemCode code, string why) => new(0, double.NaN, code, why);

    public bool IsGood => Fault is null;
}
