using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sections;

/// <summary>What is built on the face at a cut: shotcrete, drainage strip, permanent facing with coping and leveling pad.</summary>
public sealed class SectionFacing(SectionView view, DrawingContext context)
{
    private Facing? Facing => view.Wall.Facing;

    /// <summary>Level thickness of the shotcrete: its own is square to the face.</summary>
    private double Shotcrete => (Facing?.Shotcrete ?? Lengths.FromInches(4, context.Print.Unit)) / Lean;

    /// <summary>Cosine of the batter.</summary>
    private double Lean => Math.Cos(Angles.ToRadians(view.Wall.Batter?.Angle ?? 0));

    /// <summary>Level thickness of the permanent facing.</summary>
    private double Thick => Facing!.Thickness!.Value / (LeansWithFace ? Lean : 1);

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
        return LeansWithFace ? face - Thick : Upright - Thick;
    }

    /// <summary>Back of an upright facing.</summary>
    private double Upright => Math.Min(view.Face.OffsetAt(view.Bottom), view.Face.OffsetAt(view.Top)) - (Facing?.Gap ?? 0);

    /// <summary>Top of the leveling pad at the cut, as the take-off has it; null where there is none.</summary>
    public double? Pad => context.Quantities.Pad
        .Where(p => p.Wall == view.Wall && p.Start <= view.Cut.Along + 1e-6 && p.End >= view.Cut.Along - 1e-6).Select(p => (double?)p.Elevation).LastOrDefault();

    /// <summary>Outline of a leveling pad with its top at an elevation: offsets and elevations.</summary>
    public Box PadBox(double top)
    {
        double middle = FrontAt(view.Bottom) + Thick / 2;
        return new(middle - 0.6 * view.Unit, top - 0.5 * view.Unit, middle + 0.6 * view.Unit, top);
    }

    /// <summary>Elevations between two rows at which the face is built: every layer of it has room there on both sides. Middles first, the one nearest to mid height before the others.</summary>
    public IEnumerable<double> BetweenRows()
    {
        double[] levels = [view.Top, .. view.Nails.Select(n => n.Elevation), view.Bottom];
        double[] between = [.. new[] { 0.5, 0.3, 0.7 }.SelectMany(share => levels.Zip(levels.Skip(1), (a, b) => b + share * (a - b)).OrderBy(z => Math.Abs(z - (view.Top + view.Bottom) / 2)))];
        double[] built = [.. between.Where(z => Built().Any(b => b.Low < z && z < b.High))];
        return built.Length == 0 ? between : built;
    }

    public Point2 CopingAt => view.At(FrontAt(view.Top), view.Top + 0.5 * view.Unit);

    /// <summary>Heights at the cut over which the face is built, from the bottom up: all of it but the openings.</summary>
    public IEnumerable<(double Low, double High)> Built()
    {
        double from = view.Bottom;
        foreach (Opening opening in view.Openings)
        {
            if (opening.Bottom > from + 1e-6)
                yield return (from, opening.Bottom);
            from = Math.Max(from, opening.Top);
        }
        if (view.Top > from + 1e-6)
            yield return (from, view.Top);
    }

    public IEnumerable<Primitive> Draw()
    {
        foreach ((double low, double high) in Built())
        {
            foreach (Primitive p in Wall(low, high))
                yield return p;
        }
        if (!HasFacing)
            yield break;
        double unit = view.Unit;
        if (Pad is double pad && PadBox(pad) is var box)
            yield return Polyline.Of(LayerRole.Detail, Corners(box.Left, box.Bottom, box.Right, box.Top), true);
        if (Facing!.Coping is not null)
            yield return Polyline.Of(LayerRole.Detail, Corners(FrontAt(view.Top) - 0.25 * unit, view.Top, Back(view.Top) + 0.25 * unit, view.Top + unit), true);
    }

    /// <summary>Shotcrete, drainage strip and facing between two elevations.</summary>
    private IEnumerable<Primitive> Wall(double low, double high)
    {
        double unit = view.Unit, a = view.Face.OffsetAt(low), b = view.Face.OffsetAt(high), inset = 0.12 * unit;
        Point2[] shotcrete = [view.At(a, low), view.At(Back(low), low), view.At(Back(high), high), view.At(b, high)];
        yield return Fill.Of(LayerRole.Fill, shotcrete) with { Spacing = 0.3 * unit, Angle = 45 };
        yield return Polyline.Of(LayerRole.Detail, shotcrete, true);
        if (view.Wall.Drainage is not null)
            yield return new Line(LayerRole.Drainage, view.At(Back(low) + inset, low), view.At(Back(high) + inset, high));
        if (!HasFacing)
            yield break;
        double thick = Thick, front = FrontAt(low), topFront = FrontAt(high);
        yield return Polyline.Of(LayerRole.Detail, [view.At(front, low), view.At(front + thick, low), view.At(topFront + thick, high), view.At(topFront, high)], true);
        if (Facing!.Kind != FacingKind.PrecastPanels || view.Wall.Panels is not { Height: > 0 } panels)
            yield break;
        for (double z = view.Bottom + panels.Height; z < high - 1e-6; z += panels.Height)
        {
            if (z > low + 1e-6)
                yield return new Line(LayerRole.Panel, view.At(front, z), view.At(front + thick, z));
        }
    }

    private Point2[] Corners(double left, double low, double right, double high) =>
        [view.At(left, low), view.At(right, low), view.At(right, high), view.At(left, high)];
}
