namespace SheetGen.Model;

/// <summary>Cost of one unit of a pay item by what it is spent on; parts that are not given are null.</summary>
public sealed record CostParts(double? Crew, double? Equipment, double? Material, double? Subcontract)
{
    public double Sum => (Crew ?? 0) + (Equipment ?? 0) + (Material ?? 0) + (Subcontract ?? 0);
}
