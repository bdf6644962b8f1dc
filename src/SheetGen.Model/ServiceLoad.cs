namespace SheetGen.Model;

/// <summary>What the service load of a head is made from (FHWA-SA-96-069R): F_F * K_A * unit weight * H * S_H * S_V.</summary>
/// <param name="Factor">F_F, by experience.</param>
/// <param name="ActivePressure">K_A.</param>
/// <param name="UnitWeight">Unit weight of the soil, lb/ft3 or kN/m3.</param>
/// <param name="Height">H.</param>
public sealed record ServiceLoad(double Factor, double ActivePressure, double UnitWeight, double Height);
