using NetTopologySuite.Features;
using NetTopologySuite.Geometries;
using SheetGen.Exchange.Common;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.GeoJson;

/// <summary>Heads as points and holes as lines, x easting, y northing, z elevation, each with the nail's figures.</summary>
internal static class NailFeatures
{
    /// <summary>The figures of a nail, with names short enough for a dBASE table (10 signs).</summary>
    public static IReadOnlyList<NailField> Fields { get; } =
    [
        new("mark", true, (_, n) => n.Mark),
        new("wall", true, (_, n) => n.Wall.Name),
        new("section", true, (_, n) => n.Section.Name),
        new("row", true, (_, n) => n.Row.Name),
        new("kind", true, (_, n) => ResultWords.Of(n.Kind)),
        new("status", true, (_, n) => ResultWords.Of(n.Status)),
        new("station", false, (_, n) => NailFigures.Station(n)),
        new("sta_text", true, (i, n) => NailFigures.StationText(n, i.Project.Unit)),
        new("elevation", false, (_, n) => n.Elevation),
        new("azimuth", false, (_, n) => NailFigures.Azimuth(n)),
        new("dip", false, (_, n) => n.Inclination),
        new("splay", false, (_, n) => n.Splay),
        new("length", false, (_, n) => n.Length),
        new("bar", true, (_, n) => n.Bar.ToString()),
        new("hole_diam", false, (_, n) => n.HoleDiameter),
        new("nearest", true, (i, n) => i.Report.Nails.GetValueOrDefault(n.Mark)?.Nearest ?? ""),
        new("clear", false, (i, n) => FiniteNumber.OrNone(i.Report.Nails.GetValueOrDefault(n.Mark)?.LeastClear)),
        new("remark", true, (_, n) => NailFigures.Remark(n)),
    ];

    public static IEnumerable<Feature> Heads(ExchangeInput input, GeometryFactory factory) =>
        NailFigures.InStationOrder(input).Select(n => new Feature(factory.CreatePoint(At(input, n.Hole.Head)), Attributes(input, n)));

    public static IEnumerable<Feature> Traces(ExchangeInput input, GeometryFactory factory) => NailFigures.InStationOrder(input)
        .Select(n => new Feature(factory.CreateLineString([At(input, n.Hole.Head), At(input, n.Hole.Tip)]), Attributes(input, n)));

    private static AttributesTable Attributes(ExchangeInput input, Nail nail)
    {
        var table = new AttributesTable();
        foreach (NailField field in Fields)
            table.Add(field.Name, field.Of(input, nail) is double number ? Math.Round(FiniteNumber.Of(number), 6) : field.Of(input, nail));
        return table;
    }

    private static CoordinateZ At(ExchangeInput input, Vector3D point)
    {
        Vector3D at = NailFigures.Absolute(input, point);
        return new CoordinateZ(Rounded(at.E), Rounded(at.N), Rounded(at.Z));
    }

    private static double Rounded(double value) => Math.Round(FiniteNumber.Of(value), 6, MidpointRounding.AwayFromZero) + 0.0;
}

/// <summary>A figure of a nail.</summary>
/// <param name="IsText">False for a number.</param>
/// <param name="Of">Its value: a text, a number, or null where there is none.</param>
internal sealed record NailField(string Name, bool IsText, Func<ExchangeInput, Nail, object?> Of);
