using SheetGen.Model;

namespace SheetGen.Layout.Quantities;

/// <summary>Area of a part of a cross section in front of a face, and its first moments.</summary>
/// <param name="ByDistance">Area x mean distance in front of the face.</param>
/// <param name="ByElevation">Area x mean elevation.</param>
internal readonly record struct SoilArea(double Area, double ByDistance, double ByElevation)
{
    public static SoilArea operator +(SoilArea a, SoilArea b) => new(a.Area + b.Area, a.ByDistance + b.ByDistance, a.ByElevation + b.ByElevation);

    public static SoilArea operator -(SoilArea a, SoilArea b) => a + b * -1;

    public static SoilArea operator *(SoilArea a, double factor) => new(a.Area * factor, a.ByDistance * factor, a.ByElevation * factor);
}

/// <summary>The ground in front of a face by its cross sections: straight between two of them, level on beyond the first and the last.</summary>
internal static class FrontSoil
{
    /// <summary>The ground at a place between two elevations.</summary>
    public static SoilArea At(IReadOnlyList<CrossSection> sections, double along, double low, double high)
    {
        CrossSection before = sections.LastOrDefault(c => c.Along <= along) ?? sections[0];
        CrossSection after = sections.FirstOrDefault(c => c.Along > along) ?? sections[^1];
        double share = after.Along > before.Along ? (along - before.Along) / (after.Along - before.Along) : 0;
        return Between(before, low, high) * (1 - share) + Between(after, low, high) * share;
    }

    /// <summary>The ground of a cross section between two elevations, from the face to the last point.</summary>
    public static SoilArea Between(CrossSection section, double low, double high)
    {
        SoilArea sum = default;
        for (int i = 0; i + 1 < section.Ground.Count; i++)
            sum += Above(section.Ground[i], section.Ground[i + 1], low) - Above(section.Ground[i], section.Ground[i + 1], high);
        return sum;
    }

    /// <summary>Area between a straight ground line and a level, only where the ground is above it: a trapezoid or a triangle.</summary>
    private static SoilArea Above(CrossSectionPoint a, CrossSectionPoint b, double level)
    {
        double ha = a.Elevation - level, hb = b.Elevation - level;
        if (ha <= 0 && hb <= 0)
            return default;
        double from = a.InFront, to = b.InFront;
        if (ha < 0)
            (from, ha) = (from + (to - from) * ha / (ha - hb), 0);
        else if (hb < 0)
            (to, hb) = (from + (to - from) * ha / (ha - hb), 0);
        double width = to - from, area = width * (ha + hb) / 2;
        return new SoilArea(area, from * area + width * width * (ha + 2 * hb) / 6, level * area + width * (ha * ha + ha * hb + hb * hb) / 6);
    }
}
