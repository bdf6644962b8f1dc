using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Neighbours;

/// <summary>A finished set of a corridor as its neighbours see it.</summary>
/// <param name="Name">Its name in the corridor.</param>
/// <param name="System">Name of its coordinate system: only sets of one system are checked against each other.</param>
/// <param name="Holes">Its holes, in its own unit and in the coordinates of its project file.</param>
/// <param name="Reach">Box in plan around all that its project file holds, in the same coordinates; elevations do not count.</param>
/// <param name="Project">The project, read when something comes near; null where it cannot be read any more.</param>
public sealed record NeighbourSet(
    string Name, string System, LengthUnit Unit, IReadOnlyList<NeighbourHole> Holes, Bounds Reach, Lazy<WallProject?> Project);

/// <param name="Hole">In the unit and the coordinates of its project file.</param>
public sealed record NeighbourHole(string Mark, Hole Hole);
