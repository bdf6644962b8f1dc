using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>The engineer's values of a section put together, and the ratios that they give for a nail at a place. Nothing is assumed.</summary>
internal sealed class SectionStrength
{
    private static readonly DesignValues NoValues = new();
    private readonly bool _feet;
    private readonly double _barTension;

    public SectionStrength(Wall wall, Section section, double slope, IReadOnlyList<string> layers, LengthUnit unit)
    {
        (Wall, Section) = (wall, section);
        _feet = Lengths.IsFoot(unit);
        Design = section.Design ?? NoValues;
        DesignArea = section.HorizontalSpacing * section.VerticalSpacing * slope;
        _barTension = BarTension(section, _feet);
        Facing = HeadStrength.Of(Design.Facing, section, Plate(), _feet);
        PermanentFacing = HeadStrength.Of(Design.PermanentFacing, section, Cone(), _feet);
        Studs = Design.Studs is { Yield: { } yield } studs ? FacingStrength.Studs(studs.Count, studs.Area, yield) / (_feet ? 1 : 1000) : null;
        Service = Design.ServiceLoad is { } s
            ? NailStrength.ServiceHeadLoad(s.Factor, s.ActivePressure, s.UnitWeight / (_feet ? 1000 : 1), s.Height, section.HorizontalSpacing, section.VerticalSpacing)
            : null;
        PulloutByLayer = layers.Prepend("").Where(l => BondIn(l) is not null).ToDictionary(l => l, l => PulloutPerLength(BondIn(l)!.Value));
    }

    public Wall Wall { get; }

    public Section Section { get; }

    public DesignValues Design { get; }

    /// <summary>Horizontal times vertical spacing, up the slope of a batter.</summary>
    public double DesignArea { get; }

    public FacingEffect Facing { get; }

    public FacingEffect PermanentFacing { get; }

    public double? Studs { get; }

    public double? Service { get; }

    public IReadOnlyDictionary<string, double> PulloutByLayer { get; }

    public SectionEffect Effect => new()
    {
        Wall = Wall,
        Section = Section,
        DesignArea = DesignArea,
        HeadShare = HeadShare(0),
        ServiceHeadLoad = Service,
        BarTension = _barTension,
        PulloutByLayer = PulloutByLayer,
        Facing = Facing,
        PermanentFacing = PermanentFacing,
        Studs = Studs,
        Missing = Section.Design is null ? [] : [.. MissingValues.Of(this)],
    };

    /// <summary>Nominal pullout of a part of a hole; null where a layer of it has no bond given.</summary>
    public double? Pullout(IReadOnlyList<LayerStretch> layers, double from, double to)
    {
        if (layers.Count == 0)
            return PulloutByLayer.TryGetValue("", out double anywhere) ? anywhere * (to - from) : null;
        double sum = 0;
        foreach (LayerStretch layer in layers)
        {
            double length = Math.Min(to, layer.To) - Math.Max(from, layer.From);
            if (length <= 0)
                continue;
            if (!PulloutByLayer.TryGetValue(layer.Layer, out double pullout))
                return null;
            sum += pullout * length;
        }
        return sum;
    }

    /// <summary>The place with its loads and every limit state that can be compared.</summary>
    public PlaceEffect Compared(PlaceEffect place, int row)
    {
        double? tension = Design.MaximumLoadOf(row) * place.LoadShare;
        double? head = Design.HeadLoadOf(row) * place.LoadShare ?? tension * HeadShare(place.Width) ?? Service * place.LoadShare;
        var checks = new List<LimitCheck>();
        void Add(LimitState state, string? surface, double? resistance, double? load)
        {
            if (resistance is { } r && load is { } t && FactorOn(state) is { } factor)
                checks.Add(new LimitCheck(state, surface, r, t, NailStrength.Ratio(factor, r, LoadFactor, t)));
        }
        foreach (SurfaceCut cut in place.Cuts)
            Add(LimitState.Pullout, cut.Surface.Name, cut.Behind, tension);
        Add(LimitState.Bar, null, _barTension, tension);
        Add(LimitState.Flexure, null, Flexure(Design.Facing, Facing, place.Width), head);
        Add(LimitState.Punching, null, Facing.PunchingWithSoil, head);
        Add(LimitState.PermanentFlexure, null, Flexure(Design.PermanentFacing, PermanentFacing, place.Width), head);
        Add(LimitState.PermanentPunching, null, PermanentFacing.PunchingWithSoil, head);
        Add(LimitState.Studs, null, Studs, head);
        AddFront(checks, place, tension);
        return place with { MaximumLoad = tension, HeadLoad = head, Checks = checks };
    }

    /// <summary>Head and pullout in front together, each with its own factor, against the greatest tension.</summary>
    private void AddFront(List<LimitCheck> checks, PlaceEffect place, double? tension)
    {
        LimitCheck[] heads = [.. checks.Where(c => c.State is not (LimitState.Pullout or LimitState.Bar))];
        if (heads.Length == 0 || tension is not { } load || FactorOn(LimitState.Pullout) is not { } factor)
            return;
        double head = heads.Min(c => FactorOn(c.State)!.Value * c.Resistance);
        foreach (SurfaceCut cut in place.Cuts)
        {
            if (cut.Front is { } front)
                checks.Add(new LimitCheck(LimitState.Front, cut.Surface.Name, head + factor * front, load, NailStrength.Ratio(1, head + factor * front, LoadFactor, load)));
        }
    }

    /// <summary>What a resistance is multiplied by; null where the method's factor is not given.</summary>
    public double? FactorOn(LimitState state)
    {
        double? given = Design.Factors.TryGetValue(state, out double factor) ? factor : null;
        return Design.Method switch
        {
            DesignMethod.Lrfd => Design.LoadFactor is null ? null : given,
            DesignMethod.Asd => 1 / given,
            _ => 1,
        };
    }

    private double LoadFactor => Design.Method == DesignMethod.Lrfd ? Design.LoadFactor ?? 1 : 1;

    private double HeadShare(double width)
    {
        double spacing = Math.Max(Math.Max(Section.HorizontalSpacing, Section.VerticalSpacing), width);
        return _feet ? NailStrength.HeadShareFeet(spacing) : NailStrength.HeadShareMetres(spacing);
    }

    private double? BondIn(string layer) => layer.Length == 0 ? Design.Bond : Design.BondIn(layer);

    private double PulloutPerLength(double bond) => _feet
        ? NailStrength.PulloutPerFoot(bond, Section.HoleDiameter * 12)
        : NailStrength.PulloutPerMetre(bond, Section.HoleDiameter);

    private static double BarTension(Section section, bool feet) => feet
        ? NailStrength.BarTension(section.Bar.AreaSquareInches, BarYield(section, true))
        : NailStrength.BarTensionMetric(section.Bar.AreaSquareMillimetres, BarYield(section, false));

    /// <summary>Yield strength of a section's bars, ksi or MPa.</summary>
    public static double BarYield(Section section, bool feet)
    {
        const double MegapascalsPerKsi = 6.894757293168361;
        return section.Design?.BarYield ?? section.Bar.Grade * (feet ? 1 : MegapascalsPerKsi);
    }

    private (double, double)? Plate() => Design is { PlateWidth: { } width, Facing.Thickness: { } thickness } ? FacingStrength.PlateCone(width, thickness) : null;

    private (double, double)? Cone() => Design is { PlateThickness: { } plate, Studs: { Length: { } length, HeadThickness: { } head, Spacing: { } spacing } }
        ? FacingStrength.StudCone(length, head, plate, spacing)
        : null;

    /// <summary>The smaller of the two directions, with the width that the nail stands for.</summary>
    private double? Flexure(FacingDesign facing, FacingEffect strength, double width)
    {
        if (facing.PressureFactor is not { } factor || strength is not { VerticalMoments: { } vertical, HorizontalMoments: { } horizontal })
            return null;
        double height = Section.VerticalSpacing;
        return Math.Min(FacingStrength.Flexure(factor, vertical, width, height), FacingStrength.Flexure(factor, horizontal, height, width));
    }
}
