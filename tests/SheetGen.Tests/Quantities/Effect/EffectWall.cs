using SheetGen.Layout.Quantities.Effect;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Tests.Quantities.Effect;

/// <summary>Walls for the effect of a layout, and layouts changed by hand.</summary>
internal static class EffectWall
{
    /// <summary>100 ft long, 20 ft high, 5 ft both ways, rows at 2.5 to 17.5 ft: every cell is 25 ft2.</summary>
    public static TestWall Exact { get; } = new() { Depth = 2.5, Tests = TestNails.None };

    public static DesignValues Lrfd { get; } = new()
    {
        MaximumLoads = [20],
        Method = DesignMethod.Lrfd,
        LoadFactor = 1.35,
        Factors = new Dictionary<LimitState, double>
        {
            [LimitState.Pullout] = 0.65,
            [LimitState.Bar] = 0.75,
            [LimitState.Flexure] = 0.9,
            [LimitState.Punching] = 0.9,
            [LimitState.PermanentFlexure] = 0.9,
            [LimitState.PermanentPunching] = 0.9,
            [LimitState.Studs] = 0.7,
        },
        Bond = 15,
        Surfaces = [new SlipSurface("1", [], 60)],
        Facing = new FacingDesign
        {
            Thickness = 4.0 / 12,
            ConcreteStrength = 4000,
            SteelDepth = 2.0 / 12,
            Mesh = 0.058,
            MeshYield = 60,
            Walers = new(2, BarTable.Find("#3", 0)!, 0.22),
            BearingBars = new(2, BarTable.Find("#3", 0)!, 0.22),
            BarYield = 60,
            PressureFactor = 2.0,
        },
        PlateWidth = 8.0 / 12,
        PlateThickness = 0.75 / 12,
    };

    public static LayoutEffect Of(TestWall wall) => Of(wall.Make());

    public static LayoutEffect Of((WallProject Project, NailLayout Layout) made) => EffectTakeOff.Make(made.Project, made.Layout);

    /// <summary>The layout without a nail.</summary>
    public static (WallProject Project, NailLayout Layout) Without((WallProject Project, NailLayout Layout) made, string mark)
    {
        Nail gone = made.Layout.Nails.Single(n => n.Mark == mark);
        return (made.Project, made.Layout with
        {
            Nails = [.. made.Layout.Nails.Where(n => n != gone)],
            LeftOut = [.. made.Layout.LeftOut, new LeftOut(mark, gone.Wall, gone.Section, gone.Row, gone.Column, gone.Along, gone.Elevation, "a shaft")],
        });
    }

    /// <summary>The layout with one nail moved along, turned or lengthened.</summary>
    public static (WallProject Project, NailLayout Layout) With((WallProject Project, NailLayout Layout) made, string mark, double along = 0, double splay = 0, double? inclination = null, double? length = null) =>
        (made.Project, made.Layout with { Nails = [.. made.Layout.Nails.Select(n => n.Mark == mark ? Changed(n, along, splay, inclination ?? n.Inclination, length ?? n.Length) : n)] });

    private static Nail Changed(Nail n, double along, double splay, double inclination, double length) => n with
    {
        Along = n.Along + along,
        Station = n.Station + along * (n.Wall.StationOf(n.Along + along) >= n.Wall.StationOf(n.Along) == along >= 0 ? 1 : -1),
        IsMoved = along != 0,
        Splay = splay,
        Inclination = inclination,
        Length = length,
        Status = splay == 0 && inclination == n.Section.Inclination ? along == 0 ? NailStatus.Grid : NailStatus.Moved : NailStatus.Redirected,
        Hole = new Face(n.Wall).HoleAt(n.Along + along, n.Elevation, splay, inclination, length, n.HoleDiameter, 0),
    };
}
