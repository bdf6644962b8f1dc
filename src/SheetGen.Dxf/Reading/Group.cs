namespace SheetGen.Dxf;

/// <summary>A code and a value as they stand in a file. A large file holds millions: codes, which are -5 to 1071, take two bytes.</summary>
internal readonly record struct Group
{
    private readonly short _code;

    internal Group(int code, string value, int line) => (_code, Value, Line) = ((short)code, value, line);

    /// <summary>Group code.</summary>
    internal int Code => _code;

    /// <summary>Value without line end, not decoded further than its characters.</summary>
    internal string Value { get; init; }

    /// <summary>Line of the value.</summary>
    internal int Line { get; }
}
