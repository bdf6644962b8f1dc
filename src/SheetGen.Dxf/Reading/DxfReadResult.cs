using System.Diagnostics.CodeAnalysis;

namespace SheetGen.Dxf;

/// <summary>What came of reading a file: a document, or an error and no document.</summary>
public sealed record DxfReadResult
{
    /// <summary>The document; null if the file could not be read.</summary>
    public DxfDocument? Document { get; init; }

    /// <summary>Why the file could not be read, with the line; null if it could.</summary>
    public DxfProblem? Error { get; init; }

    /// <summary>What was left out or changed, by first line; the same thing is told once, with a count.</summary>
    public IReadOnlyList<DxfProblem> Warnings { get; init; } = [];

    /// <summary>Whether there is a document.</summary>
    [MemberNotNullWhen(true, nameof(Document))]
    [MemberNotNullWhen(false, nameof(Error))]
    public bool Succeeded => Document is not null;
}
