namespace SheetGen.Dxf;

/// <summary>Something wrong or left out, and where.</summary>
/// <param name="Line">Line of the file, from 1; 0 where there is no file or no one line.</param>
/// <param name="Message">What is wrong, in a sentence without the line number.</param>
public sealed record DxfProblem(int Line, string Message)
{
    /// <summary>How many times the same thing was met; <see cref="Line"/> is the first.</summary>
    public int Count { get; init; } = 1;

    /// <summary>What it is about.</summary>
    public DxfProblemKind Kind { get; init; }

    /// <inheritdoc/>
    public override string ToString() =>
        (Line > 0 ? $"line {Line}: " : "") + Message + (Count > 1 ? $" ({Count} times)" : "");
}
