namespace SheetGen.Drawing.Templating;

/// <summary>A headed list of notes; <c>{field}</c> is filled from the project.</summary>
public sealed record NoteBlock(string Heading, IReadOnlyList<string> Notes);
