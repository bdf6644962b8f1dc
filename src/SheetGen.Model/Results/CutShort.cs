namespace SheetGen.Model.Results;

/// <summary>A part of a wall whose search ended at its greatest count of trials or directions while it was still finding better layouts.</summary>
/// <param name="Wall">The wall.</param>
/// <param name="Station">Where the part starts, a station of the wall in project units.</param>
/// <param name="ToStation">Where it ends.</param>
/// <param name="Message">That, in words, with wall and stations.</param>
public sealed record CutShort(Wall Wall, double Station, double ToStation, string Message);
