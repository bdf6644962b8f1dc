using SheetGen.Model.Geometry;

namespace SheetGen.Model;

/// <summary>A boring log as far as the sheets need it.</summary>
public sealed record Boring(string Name, Vector2D At, double Top, double Bottom, double? Water, IReadOnlyList<BoringLayer> Layers);
