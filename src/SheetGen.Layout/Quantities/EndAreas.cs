using SheetGen.Model;

namespace SheetGen.Layout.Quantities;

/// <summary>Volumes by average end area.</summary>
public static class EndAreas
{
    /// <summary>
    /// Sum over the stretches of length x mean of the two areas; a stretch that runs out to nothing at one end is a pyramid, length x
    /// area / 3.
    /// </summary>
    /// <param name="sections">Station and area, in order of station.</param>
    public static double Volume(IReadOnlyList<(double Station, double Area)> sections)
    {
        double volume = 0;
        for (int i = 0; i + 1 < sections.Count; i++)
        {
            (double from, double a) = sections[i];
            (double to, double b) = sections[i + 1];
            volume += (to - from) * (a == 0 || b == 0 ? (a + b) / 3 : (a + b) / 2);
        }
        return volume;
    }

    /// <summary>Area of the ground of a cross section between two elevations, from the face to the last point.</summary>
    public static double Between(CrossSection section, double low, double high)
    {
        double area = 0;
        for (int i = 0; i + 1 < section.Ground.Count; i++)
        {
            CrossSectionPoint a = section.Ground[i], b = section.Ground[i + 1];
            area += Below(b.InFront - a.InFront, a.Elevation - low, b.Elevation - low)
                - Below(b.InFront - a.InFront, a.Elevation - high, b.Elevation - high);
        }
        return area;
    }

    /// <summary>Area between a straight ground line and level 0, only where the ground is above it.</summary>
    private static double Below(double width, double a, double b)
    {
        if (a <= 0 && b <= 0)
            return 0;
        if (a >= 0 && b >= 0)
            return width * (a + b) / 2;
        double above = Math.Max(a, b), share = above / (above - Math.Min(a, b));
        return width * share * above / 2;
    }
}
