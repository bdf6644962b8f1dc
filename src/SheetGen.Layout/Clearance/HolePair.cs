namespace SheetGen.Layout.Clearance;

/// <summary>Two holes that come near each other, by their numbers in the set; the first is the smaller.</summary>
/// <param name="Clear">Their clear distance.</param>
internal readonly record struct HolePair(int First, int Second, double Clear);
