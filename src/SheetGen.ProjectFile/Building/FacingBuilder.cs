using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Facing, drainage and lifts of a wall.</summary>
internal static class FacingBuilder
{
    public static Facing? Facing(MapItem? map) => map is null ? null : new Facing
    {
        Shotcrete = map.Number("shotcrete"),
        Kind = map.Text("kind") switch
        {
            "precast panels" => FacingKind.PrecastPanels,
            "cast in place" => FacingKind.CastInPlace,
            "permanent shotcrete" => FacingKind.PermanentShotcrete,
            "sculpted shotcrete" => FacingKind.SculptedShotcrete,
            "other" => FacingKind.Other,
            _ => FacingKind.None,
        },
        IsKindStated = map.Gives("kind"),
        Thickness = map.Number("thickness"),
        Gap = map.Number("gap"),
        Coping = map.Text("coping") is { } coping && !coping.Equals("none", StringComparison.OrdinalIgnoreCase) ? coping : null,
    };

    public static Drainage? Drainage(MapItem? map, LengthUnit unit, ProblemList problems)
    {
        if (map is null)
            return null;
        double usual = Lengths.IsFoot(unit) ? 10 : 3;
        if (map.Number("strip_width") is { } width && width >= (map.Number("max_spacing") ?? usual) && !map.IsFaulty("max_spacing"))
        {
            problems.Add(ProblemCodes.OutOfRange, map.SpotOf("strip_width"),
                FormattableString.Invariant($"\"strip_width\" cannot be {width:0.###} {Lengths.Symbol(unit)}: strips at no more than {map.Number("max_spacing") ?? usual:0.###} {Lengths.Symbol(unit)} would touch each other"),
                Lengths.IsFoot(unit) ? "a strip is narrower than their spacing: is it in inches, as 12 in?" : "a strip is narrower than their spacing: is it in millimetres, as 300 mm?");
        }
        return new Drainage(map.Number("strip_width"), map.Number("max_spacing"));
    }

    public static Lifts? Lifts(MapItem? map) =>
        map is null ? null : new Lifts(map.Number("below_row"), map.Number("max_exposed"), map.Number("max_hours"));
}
