using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.ProjectFile.Inputs;

/// <summary>What is known of a wall before it is built.</summary>
/// <param name="Origin">What the line's points are relative to.</param>
/// <param name="Side">+1 where the soil is to the right looking up-station, -1 to the left.</param>
/// <param name="FaceOffset">Layout line to face, positive into the retained side.</param>
/// <param name="Start">Distance along the layout line of the wall's start; null where it is faulty.</param>
/// <param name="End">As of its end.</param>
internal sealed record WallPlace(LayoutLine Line, Vector2D Origin, int Side, double FaceOffset, double? Start, double? End);
