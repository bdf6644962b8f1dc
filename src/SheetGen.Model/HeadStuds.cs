namespace SheetGen.Model;

/// <summary>Headed studs on the bearing plate. Lengths in project units, area in in2 or mm2, yield strength in ksi or MPa.</summary>
/// <param name="Area">Cross section of one stud.</param>
/// <param name="Spacing">Distance between studs on the plate.</param>
public sealed record HeadStuds(
    int Count, double Diameter, double Area, double? Length, double? HeadDiameter, double? HeadThickness, double? Spacing, double? Yield);
