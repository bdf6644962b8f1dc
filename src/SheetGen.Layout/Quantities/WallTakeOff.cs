using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>The lists measured on a whole wall, which its sections share.</summary>
internal sealed record WallTakeOff(
    FaceRegions Regions, FaceRegions? FacingFront, FaceRegions? FacingMiddle, FaceRegions? GapMiddle, IReadOnlyList<NailQuantity> Nails, IReadOnlyList<Panel> Panels,
    IReadOnlyList<PadRun> Pad, IReadOnlyList<DrainStrip> Strips, IReadOnlyList<ExcavationLift> Lifts)
{
    public Wall Wall => Regions.Face.Wall;

    public static WallTakeOff Measure(WallProject project, Wall wall, IReadOnlyList<Nail> nails, NailLayout layout)
    {
        var face = new Face(wall);
        var regions = new FaceRegions(face);
        Dictionary<string, double> cells = HeadCells.Areas(regions, nails);
        FaceRegions? front = wall.Facing is { Kind: not FacingKind.None, Thickness: { } thickness } facing
            ? new FaceRegions(face, -(facing.Gap ?? 0) - thickness)
            : null;
        return new WallTakeOff(
            regions,
            front,
            wall.Facing is { Kind: not FacingKind.None, Thickness: { } thick } own ? new FaceRegions(face, -(own.Gap ?? 0) - thick / 2) : null,
            wall.Facing is { Kind: not FacingKind.None, Gap: { } gap } ? new FaceRegions(face, -gap / 2) : null,
            [.. nails.Select(n => NailTakeOff.Measure(project, n, cells.TryGetValue(n.Mark, out double area) ? area : null))],
            wall.HasPanels ? PanelTakeOff.Panels(wall, project.Unit) : [],
            wall.HasPanels ? PanelTakeOff.Pad(face) : [],
            wall.Drainage is null ? [] : StripTakeOff.Measure(regions, nails, project.Unit),
            LiftTakeOff.Measure(regions, layout.Rows, project.Unit));
    }
}
