using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Exchange.Scene;

/// <summary>The finished layout as things with shapes, for the formats that show it in space.</summary>
internal static class SceneBuilder
{
    public static IReadOnlyList<SceneItem> Build(ExchangeInput input) =>
    [
        .. input.Quantities.Nails.SelectMany(n => NailParts(input, n)),
        .. input.Quantities.Sections.SelectMany(s => FacingParts(input, s)),
        .. input.Quantities.PanelPieces.Select(p => PanelPart(input, p)),
        .. input.Project.Obstructions.Select(o => new SceneItem.Obstacle(o, ObstructionBodies.Of(o, input.Project))),
    ];

    private static IEnumerable<SceneItem> NailParts(ExchangeInput input, NailQuantity amounts)
    {
        Nail nail = amounts.Nail;
        Hole hole = nail.Hole;
        double diameter = BarDiameter(nail.Bar, input.Project.Unit);
        yield return new SceneItem.Bar(nail, amounts, diameter, new Cylinder(hole.At(-amounts.Projection), hole.Tip, diameter / 2));
        yield return new SceneItem.Hole(nail, amounts, new Cylinder(hole.Head, hole.Tip, nail.HoleDiameter / 2));
    }

    /// <summary>Nominal diameter in project units.</summary>
    public static double BarDiameter(Bar bar, LengthUnit unit) =>
        Lengths.IsFoot(unit) ? Lengths.FromInches(bar.DiameterInches, unit) : bar.DiameterMillimetres / 1000;

    private static IEnumerable<SceneItem> FacingParts(ExchangeInput input, SectionQuantities section)
    {
        Wall wall = section.Wall;
        yield return new SceneItem.Shotcrete(section, FaceBodies.Of(input, section, 0, wall.Facing?.Shotcrete));
        if (wall.Facing is not { Kind: not FacingKind.None, Thickness: { } thickness } facing || wall.HasPanels)
            yield break;
        bool leans = facing.Kind is FacingKind.CastInPlace or FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete;
        yield return new SceneItem.PermanentFacing(section, leans
            ? FaceBodies.Of(input, section, -thickness, thickness)
            : FaceBodies.Upright(input, section, Upright(wall) - (facing.Gap ?? 0) - thickness, thickness));
    }

    private static SceneItem.FacingPanel PanelPart(ExchangeInput input, Panel panel)
    {
        Facing? facing = panel.Wall.Facing;
        double thickness = facing?.Thickness ?? 0, front = Upright(panel.Wall) - (facing?.Gap ?? 0) - thickness;
        return new SceneItem.FacingPanel(panel, FaceBodies.UprightOutline(input, panel.Wall, panel.Leg, panel.Outline, front, thickness));
    }

    /// <summary>Offset of the foremost place of the shotcrete, which an upright facing stands before.</summary>
    private static double Upright(Wall wall)
    {
        var face = new Face(wall);
        return Math.Min(face.OffsetAt(wall.Bottom.Points.Min(p => p.Elevation)), face.OffsetAt(wall.Top.Points.Max(p => p.Elevation)));
    }
}
