using SheetGen.Model.Problems;

namespace SheetGen.Model.Revisions;

/// <summary>A line of the as-built record. What is null was not measured: the planned figure is taken for it.</summary>
/// <param name="Station">Printed station of the head as drilled.</param>
/// <param name="Splay">Degrees, positive up-station.</param>
/// <param name="Inclination">Degrees below horizontal.</param>
/// <param name="Length">From the face to the back of the hole, project units.</param>
/// <param name="Grout">Volume of grout placed, ft3 or m3.</param>
/// <param name="Spot">Where it stands in the record.</param>
public sealed record AsBuiltNail(
    string Mark, double? Station, double? Elevation, double? Splay, double? Inclination, double? Length, double? Grout, string Date, string Remarks, SourceSpot Spot);
