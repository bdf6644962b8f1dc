using SheetGen.Layout.Rows;

namespace SheetGen.Tests.Rows;

/// <summary>Plain numbers of tests as the places, elevations and heads that the layout tells apart.</summary>
internal static class Typed
{
    public static Along Place(double along) => new(along);

    public static Elevation Height(double elevation) => new(elevation);

    public static Head HeadAt(double along, double elevation) => new(new Along(along), new Elevation(elevation));

    public static IReadOnlyList<double> Numbers(this IEnumerable<Along> places) => [.. places.Select(p => p.Number)];
}
