using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sections;

/// <summary>What is built on the face at a cut: shotcrete, drainage strip, permanent facing with coping and leveling pad.</summary>
public sealed class SectionFacing(SectionView view, DrawingContext context)
{
    private Facing? Facing => view.Wall.Facing;

    private double Shotcrete => Facing?.Shotcrete ?? Lengths.FromInches(4, context.Print.Unit);

    /// <summary>True for a facing that is cast or shot against the shotcrete and leans with it; others stand upright before it.</summary>
    public bool LeansWithFace => Facing?.Kind is FacingKind.CastInPlace or FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete;

    public bool HasFacing => Facing is { Kind: not FacingKind.None, Thickness: > 0 };

    /// <summary>Back of the shotcrete at an elevation.</summary>
    public double Back(double elevation) => view.Face.OffsetAt(elevation) + Shotcrete;

    /// <summary>Foremost offset of the facing, of the shotcrete where there is none.</summary>
    public double Front => Math.Min(FrontAt(view.Bottom), FrontAt(view.Top));

    /// <summary>Front of the permanent facing at an elevation.</summary>
    public double FrontAt(double elevation)
    {
        double face = view.Face.OffsetAt(elevation);
        if (!HasFacing)
            return face;
        return LeansWithFace ? face - Facing!.Thickness!.Value : Upright - Facing!.Thickness!.Value;
    }

    /// <summary>Back of an upright facing.</summary>
    private double Upright => Math.Min(view.Face.OffsetAt(view.Bottom), view.Face.OffsetAt(view.Top)) - (Facing?.Gap ?? 0);

    /// <summary>Top of the leveling pad at the cut, as the take-off has it; null where there is none.</summary>
    public double? Pad => context.Quantities.Pad
        .Where(p => p.Wall == view.Wall && p.Start <= view.Cut.Along + 1e-6 && p.End >= view.Cut.Along - 1e-6).Select(p => (double?)p.Elevation).LastOrDefault();

    public Point2 CopingAt => view.At(FrontAt(view.Top), view.Top + 0.5 * view.Unit);

    public IEnumerable<Primitive> Draw()
    {
        double bottom = view.Bottom, top = view.Top, a = view.Face.OffsetAt(bottom), b = view.Face.OffsetAt(top), unit = view.Unit;
        Point2[] shotcrete = [view.At(a, bottom), view.At(Back(bottom), bottom), view.At(Back(top), top), view.At(b, top)];
        yield return Fill.Of(LayerRole.Fill, shotcrete) with { Spacing = 0.3 * unit, Angle = 45 };
        yield return Polyline.Of(LayerRole.Detail, shotcrete, true);
        if (view.Wall.Drainage is not null)
        {
            double inset = 0.12 * unit;
            yield return new Line(LayerRole.Drainage, view.At(Back(bottom) + inset, bottom), view.At(Back(top) + inset, top));
        }
        if (!HasFacing)
            yield break;
        double back = LeansWithFace ? double.NaN : Upright, thick = Facing!.Thickness!.Value;
        Point2[] facing = LeansWithFace
            ? [view.At(a - thick, bottom), view.At(a, bottom), view.At(b, top), view.At(b - thick, top)]
            : [view.At(back - thick, bottom), view.At(back, bottom), view.At(back, top), view.At(back - thick, top)];
        yield return Polyline.Of(LayerRole.Detail, facing, true);
        if (Facing.Kind == FacingKind.PrecastPanels && view.Wall.Panels is { Height: > 0 } panels)
        {
            for (double z = bottom + panels.Height; z < top - 1e-6; z += panels.Height)
                yield return new Line(LayerRole.Panel, view.At(back - thick, z), view.At(back, z));
        }
        if (Pad is double pad)
        {
            double middle = LeansWithFace ? a - thick / 2 : back - thick / 2;
            yield return Polyline.Of(LayerRole.Detail, Corners(middle - 0.6 * unit, pad - 0.5 * unit, middle + 0.6 * unit, pad), true);
        }
        if (Facing.Coping is not null)
            yield return Polyline.Of(LayerRole.Detail, Corners(FrontAt(top) - 0.25 * unit, top, Back(top) + 0.25 * unit, top + unit), true);
    }

    private Point2[] Corners(double left, double low, double right, double high) =>
        [view.At(left, low), view.At(right, low), view.At(right, high), view.At(left, high)];
}
