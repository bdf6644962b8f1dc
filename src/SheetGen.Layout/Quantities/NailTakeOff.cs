using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>What each nail takes.</summary>
internal static class NailTakeOff
{
    public static NailQuantity Measure(WallProject project, Nail nail, double? area)
    {
        double along = (nail.Wall.Facing?.Shotcrete ?? 0) / Math.Max(0.1, ThroughFace(nail));
        double projection = project.Rules.BarProjection;
        return new NailQuantity(
            nail, along, project.PayLengthFrom == PayLengthFrom.Face ? nail.Length : nail.Length - along, projection,
            nail.Length + projection, nail.Bar.HasWeight ? UnitWeight(nail.Bar, project.Unit) : null, BarArea(nail.Bar, project.Unit), area,
            project.Rates.CentralizerSpacing is { } spacing ? Centralizers(nail.Length, spacing, project.Rates.CentralizerEnd ?? DefaultCentralizerEnd(project.Unit)) : null);
    }

    /// <summary>Distance of the outer centralizers from the ends where the project file gives none: 2 ft or 0.6 m (common practice, no source).</summary>
    public static double DefaultCentralizerEnd(LengthUnit unit) => Lengths.IsFoot(unit) ? 2 : 0.6;

    /// <summary>Centralizers in a hole: one at a distance from each end, and as many between as the greatest spacing asks; one in the middle of a hole too short for two.</summary>
    public static int Centralizers(double length, double spacing, double end) =>
        length - 2 * end <= Tolerance.Rounding ? 1 : CeilingOf((length - 2 * end) / spacing) + 1;

    /// <summary>Published nominal weight: lb per project foot, or kg/m.</summary>
    public static double UnitWeight(Bar bar, LengthUnit unit) => unit switch
    {
        LengthUnit.Foot => bar.PoundsPerFoot,
        LengthUnit.SurveyFoot => bar.PoundsPerFoot * Lengths.MetresPerSurveyFoot / Lengths.MetresPerFoot,
        _ => bar.KilogramsPerMetre,
    };

    /// <summary>Published nominal cross section in square project units.</summary>
    public static double BarArea(Bar bar, LengthUnit unit) =>
        Lengths.IsFoot(unit) ? bar.AreaSquareInches / 144 : bar.AreaSquareMillimetres / 1e6;

    /// <summary>The least whole number not under the value; rounding does not buy one more.</summary>
    public static int CeilingOf(double value) => Math.Max(1, (int)Math.Ceiling(value - Tolerance.Rounding));

    /// <summary>Cosine of the angle between the hole and the normal of the face, batter included.</summary>
    private static double ThroughFace(Nail nail)
    {
        double batter = nail.Wall.Batter is { } lean ? Angles.ToRadians(lean.Angle) : 0;
        double splay = Angles.ToRadians(nail.Splay), down = Angles.ToRadians(nail.Inclination);
        var direction = new Vector2D(Math.Cos(down) * Math.Cos(splay), -Math.Sin(down));
        return direction.Dot(new Vector2D(Math.Cos(batter), -Math.Sin(batter)));
    }
}
