using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>Something that stands still and that holes must keep clear of.</summary>
/// <param name="Name">Name of the obstruction, or of the wall whose face it is.</param>
/// <param name="Required">Clear distance to keep.</param>
/// <param name="Face">The wall's face that it belongs to; null for an obstruction.</param>
/// <param name="Leg">Leg of that face.</param>
public sealed record StillSolid(string Name, Solid Solid, double Required, Face? Face, int Leg);
