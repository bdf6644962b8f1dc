using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Labels;

/// <summary>A label in its place.</summary>
/// <param name="Leader">From the anchor to the label; null where it stands close by.</param>
public sealed record PlacedLabel(IReadOnlyList<Text> Texts, Box Box, Leader? Leader);
