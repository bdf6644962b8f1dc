using NetTopologySuite.Geometries;
using SheetGen.Model;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Soil in front of the face. Areas of the cross sections are straight between two of them (average end area). Each piece of area
/// counts with the length of its own path in plan, as by Pappus's second theorem (volume = area x path of its centroid): on an arc the
/// length at its distance from the centre, at a corner up to the bisector. Soil in front of an opening is
/// dug like any other; ground above the wall's top is none of the wall's.
/// </summary>
internal static class LiftVolume
{
    private const int Parts = 8;

    /// <summary>Nodes and weights of the three-point rule of Gauss on 0 to 1, exact for cubics.</summary>
    private static readonly (double At, double Weight)[] Gauss =
    [
        (0.5 - Math.Sqrt(0.15), 5.0 / 18), (0.5, 4.0 / 9), (0.5 + Math.Sqrt(0.15), 5.0 / 18),
    ];

    /// <param name="cut">What is cut, between top and bottom, going on beyond the leg's corners.</param>
    /// <returns>Null where no cross sections are given.</returns>
    public static double? Of(Face face, Section section, Leg leg, Geometry cut)
    {
        Wall wall = face.Wall;
        if (wall.CrossSections.Count == 0)
            return null;
        Envelope extent = cut.EnvelopeInternal;
        double from = Math.Max(extent.MinX, Math.Max(section.Start, leg.Start)), to = Math.Min(extent.MaxX, Math.Min(section.End, leg.End));
        if (to <= from)
            return 0;
        double[] ends =
        [
            from,
            .. cut.Coordinates.Select(c => c.X).Concat(wall.CrossSections.Select(c => c.Along)).Concat(wall.LayoutLine.Pieces.Select(p => p.Start))
                .Where(a => a > from && a < to).Distinct().Order(),
            to,
        ];
        double volume = 0;
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            double step = (ends[i + 1] - ends[i]) / Parts;
            for (int part = 0; part < Parts; part++)
            {
                foreach ((double at, double weight) in Gauss)
                {
                    double along = ends[i] + (part + at) * step;
                    volume += weight * step * Along(face, along, Soil(wall, along, Outlines.Crossings(cut, along, true)));
                }
            }
        }
        if (leg.StartCorner is { } opens && from == leg.Start)
            volume += Beyond(face, opens, Soil(wall, from, Outlines.Crossings(cut, from, true)));
        if (leg.EndCorner is { } closes && to == leg.End)
            volume += Beyond(face, closes, Soil(wall, to, Outlines.Crossings(cut, to, false)));
        return volume;
    }

    /// <summary>The soil in front of the stretches of a cut at a place.</summary>
    private static SoilArea Soil(Wall wall, double along, List<double> levels)
    {
        SoilArea sum = default;
        for (int i = 0; i + 1 < levels.Count; i += 2)
            sum += FrontSoil.At(wall.CrossSections, along, levels[i], levels[i + 1]);
        return sum;
    }

    /// <summary>Volume for one of length along the layout line.</summary>
    private static double Along(Face face, double along, SoilArea soil)
    {
        double bend = face.Wall.LayoutLine.PieceAt(along).CurvatureAt(along) * face.Wall.Side;
        return soil.Area - bend * ByOffset(face, soil);
    }

    /// <summary>Volume between the square through a corner's point and its bisector; negative where the bisector cuts it off.</summary>
    private static double Beyond(Face face, Corner corner, SoilArea soil) =>
        -Math.Tan(corner.Deflection * face.Wall.Side / 2) * ByOffset(face, soil);

    /// <summary>Area x mean offset from the layout line.</summary>
    private static double ByOffset(Face face, SoilArea soil)
    {
        double at0 = face.OffsetAt(0), slope = face.OffsetAt(1) - at0;
        return at0 * soil.Area + slope * soil.ByElevation - soil.ByDistance;
    }
}
