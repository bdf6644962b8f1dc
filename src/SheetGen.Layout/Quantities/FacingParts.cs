using NetTopologySuite.Geometries;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>What is built or bought with the facing beyond its areas: volumes, laps, waler bars.</summary>
internal static class FacingParts
{
    public static void Add(Amounts amounts, WallProject project, WallTakeOff wall, Section section)
    {
        Rates rates = project.Rates;
        string[] where = [StationRange.Of(wall.Wall, section.Start, section.End, project.Unit)];
        double? Of(string name) => amounts.All[name].Amount;
        if (wall.Wall.Facing is null or { Kind: FacingKind.None })
        {
            amounts.NotAsked(QuantityName.FacingVolume, "permanent facing", "facing: kind");
            amounts.NotAsked(QuantityName.GapVolume, "permanent facing", "facing: kind");
        }
        else
        {
            amounts.SetOr(
                QuantityName.FacingVolume, Area(wall.FacingMiddle, section) * wall.Wall.Facing.Thickness, where,
                "thickness of the permanent facing", "facing: thickness", wall.Wall.Facing.Gap is null ? "no gap given: the facing stands against the shotcrete" : "");
            amounts.SetOr(QuantityName.GapVolume, Area(wall.GapMiddle, section) * wall.Wall.Facing.Gap, where, "gap behind the permanent facing", "facing: gap");
        }
        Lapped(QuantityName.MeshWithLaps, QuantityName.MeshArea, Laps(rates), "sheet of welded wire", "rates: mesh");
        Lapped(QuantityName.MeshSheets, QuantityName.MeshArea, Laps(rates) / (rates.MeshLength * rates.MeshWidth), "sheet of welded wire", "rates: mesh");
        amounts.SetOrProject(QuantityName.WalerBarLength, Of(QuantityName.WalerLength) * rates.WalerBars, where, "number of waler bars", "rates: waler_bars");
        Lapped(QuantityName.CopingVolume, QuantityName.CopingLength, rates.CopingWidth * rates.CopingHeight, "cross section of the coping", "rates: coping");
        Lapped(QuantityName.PadVolume, QuantityName.PadLength, rates.PadWidth * rates.PadHeight, "cross section of the leveling pad", "rates: pad");
        Lapped(QuantityName.StripSupplied, QuantityName.StripLength, 1 + rates.StripLap, "lap of the strips", "rates: strip_lap");

        // What the first quantity lacks, or is not asked for, holds for what is made from it.
        void Lapped(string name, string from, double? factor, string what, string key)
        {
            if (Of(from) is null)
                amounts.Like(name, from);
            else
                amounts.SetOrProject(name, Of(from) * factor, where, what, key);
        }
    }

    /// <summary>Area bought for one of neat area.</summary>
    private static double? Laps(Rates rates) =>
        rates is { MeshLength: { } length, MeshWidth: { } width, MeshLap: { } lap } && lap < length && lap < width
            ? length * width / ((length - lap) * (width - lap))
            : null;

    private static double? Area(FaceRegions? regions, Section section)
    {
        if (regions is null)
            return null;
        double sum = 0;
        foreach (Leg leg in regions.Face.Legs)
        {
            Geometry part = FaceRegions.Of(section, leg, regions.Net(leg));
            sum += regions.Area(leg, part);
        }
        return sum;
    }
}
