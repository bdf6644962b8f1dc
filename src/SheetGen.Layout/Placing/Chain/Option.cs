using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>A direction of a nail at a place that nothing outside its row's stretch forbids.</summary>
/// <param name="Cost">What the nail costs, tolls included.</param>
internal sealed record Option(Turning Turning, bool IsUnresolved, Hole Hole, Cost Cost);
