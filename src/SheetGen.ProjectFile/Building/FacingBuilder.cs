using SheetGen.Model;
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

    public static Drainage? Drainage(MapItem? map) =>
        map is null ? null : new Drainage(map.Number("strip_width"), map.Number("max_spacing"));

    public static Lifts? Lifts(MapItem? map) =>
        map is null ? null : new Lifts(map.Number("below_row"), map.Number("max_exposed"), map.Number("max_hours"));
}
