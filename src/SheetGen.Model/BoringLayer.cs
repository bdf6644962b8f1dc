namespace SheetGen.Model;

/// <summary>A soil layer of a boring, from the layer above (or the boring's top) down to an elevation.</summary>
public sealed record BoringLayer(double To, string Name, double? PlasticityIndex);
