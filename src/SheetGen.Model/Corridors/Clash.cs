namespace SheetGen.Model.Corridors;

/// <summary>A nail of one project file that comes too near to something of another.</summary>
/// <param name="Code">Code of the finding that it would be in one file: nail-nail, nail-face, nail-obstruction or nail-boundary.</param>
/// <param name="Wall">Name of the nail's set in the corridor.</param>
/// <param name="OtherWall">Name of the other set.</param>
/// <param name="Other">Mark of the other nail, or name of the obstruction or face.</param>
/// <param name="Clear">Clear distance in the unit of the nail's project; negative where the two run into each other.</param>
/// <param name="Required">Clear distance that the stricter of both files asks for, in that unit.</param>
/// <param name="Northing">Of the nearest point on the nail's axis, in the coordinates of its project file; so are easting and elevation.</param>
/// <param name="Depth">Depth of that point along the hole.</param>
public sealed record Clash(
    string Code, string Wall, string Nail, string OtherWall, string Other, string Unit, double Clear, double Required,
    double Northing, double Easting, double Elevation, double Depth, string Message);
