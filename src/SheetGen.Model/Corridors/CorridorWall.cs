using SheetGen.Model.Problems;

namespace SheetGen.Model.Corridors;

/// <summary>A project file of a corridor, with what the corridor says of it. A project file may hold several walls; the corridor builds it as one set.</summary>
/// <param name="Name">Unique in the corridor whatever its case; the name of its folder.</param>
/// <param name="File">Path of the project file, as it is opened.</param>
/// <param name="Shown">Path of the project file from the list's folder, with forward slashes: the same from wherever the program is run.</param>
/// <param name="Stage">Construction stage; empty where not given.</param>
/// <param name="Contract">Contract that it is let under; empty where not given.</param>
/// <param name="Coordinates">Name of the coordinate system; walls of different ones are not checked against each other.</param>
/// <param name="Prove">Tighten the proof of how good the layout is.</param>
/// <param name="Spot">Where the list names it.</param>
public sealed record CorridorWall(
    string Name, string File, string Shown, string Stage, string Contract, string Coordinates, bool Prove, SourceSpot Spot);

/// <summary>The walls that are built together, in the order in which the register lists them.</summary>
/// <param name="Title">Title of the register.</param>
/// <param name="Folder">Folder that the paths shown start from.</param>
/// <param name="Notes">What a person should know of the list, such as a file that was passed over.</param>
public sealed record Corridor(string Title, string Folder, IReadOnlyList<CorridorWall> Walls, IReadOnlyList<string> Notes);
