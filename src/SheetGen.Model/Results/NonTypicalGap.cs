namespace SheetGen.Model.Results;

/// <summary>A gap between two neighbours of a row that is not the grid's, measured along the face.</summary>
public sealed record NonTypicalGap(string FirstMark, string SecondMark, double Gap);
