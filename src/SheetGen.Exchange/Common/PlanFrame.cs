using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Exchange.Common;

/// <summary>
/// Where x, y and z of the models lie: x east, y north, z up, from the project's origin (the start of the first layout line), so that no
/// program that reckons with single precision loses anything. Where the project names its coordinate zone, a map conversion tells where the
/// origin is; where it does not, the site's placement does, and world coordinates are the project's own.
/// </summary>
internal sealed partial class PlanFrame(WallProject project)
{
    /// <summary>Zone of the coordinates as the project file words it; null where it says nothing.</summary>
    public string? Zone { get; } = project.CoordinateZone;

    public string? HorizontalDatum { get; } = Fact(project, "horizontal_datum");

    public string? VerticalDatum { get; } = Fact(project, "vertical_datum");

    public double MetresPerUnit { get; } = Lengths.MetresPer(project.Unit);

    /// <summary>True where the zone is known, so that a map conversion can be given.</summary>
    public bool IsMapped => Zone is not null;

    /// <summary>Code such as EPSG:6514, where the zone, or a datum, gives one; else null.</summary>
    public string? Epsg => new[] { Zone, HorizontalDatum }.OfType<string>().Select(t => EpsgCode().Match(t)).Where(m => m.Success)
        .Select(m => "EPSG:" + m.Groups[1].Value).FirstOrDefault();

    /// <summary>Easting and northing that a model's own x and y are counted from: (0, 0) where they are the project's own.</summary>
    public Vector2D ModelShift => project.ModelShift;

    /// <summary>A point's x, y, z in the model's world, in metres.</summary>
    public (double X, double Y, double Z) WorldMetres(Vector3D point) => (
        (point.E + ModelShift.E) * MetresPerUnit, (point.N + ModelShift.N) * MetresPerUnit, point.Z * MetresPerUnit);

    /// <summary>Date of the sheets at midnight; 1970-01-01 where the project file gives none that can be read, since no clock is looked at.</summary>
    public DateTime Date { get; } =
        DateTime.TryParseExact(project.Sheets.Date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime date)
            ? date
            : DateTime.UnixEpoch.Date;

    private static string? Fact(WallProject project, string key) =>
        project.Info.Facts.TryGetValue(key, out string? text) && text.Trim().Length > 0 ? text.Trim() : null;

    [GeneratedRegex(@"EPSG\s*:?\s*(\d{4,6})", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex EpsgCode();
}
