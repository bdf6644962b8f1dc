using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>
/// A cut through what is built on a wall's face, square to it, at the true batter: the face of the shotcrete is at x = 0 where y = 0, the soil on the right.
/// </summary>
/// <param name="above">Height of y = 0 above the bottom of the wall: a facing that stands upright before a battered face is the farther off the higher up.</param>
internal sealed class FacingCut(DrawingContext context, DetailData data, Wall wall, double above)
{
    private const double Left = Math.PI;

    /// <summary>Sizes in inches that stand in for those that the project does not give; what has them is dashed.</summary>
    private const double AssumedShotcrete = 4, AssumedFacing = 6, AssumedGap = 6, StripThickness = 0.4;

    public Wall Wall => wall;

    /// <summary>The design sections for which the cut stands; those of its wall where nothing is said.</summary>
    public IReadOnlyList<(Wall Wall, Section Section)> Zones { get; init; } = [.. wall.Sections.Select(s => (wall, s))];

    private Facing? Facing => wall.Facing;

    private double In(double inches) => Lengths.FromInches(inches, data.Print.Unit);

    public bool HasFacing => Facing is { Kind: not FacingKind.None };

    /// <summary>True for a facing that is cast or shot against the temporary shotcrete; panels and others stand before it on a leveling pad.</summary>
    public bool IsOnFace => Facing?.Kind is FacingKind.CastInPlace or FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete;

    public bool IsShot => Facing?.Kind is FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete;

    public FaceFrame Face { get; } = FaceFrame.Of(wall);

    /// <summary>Thickness of the shotcrete.</summary>
    public double Back => Facing?.Shotcrete ?? In(AssumedShotcrete);

    /// <summary>Back of the shotcrete at a level.</summary>
    public double BackAt(double level) => Face.At(Back, level).X;

    /// <summary>Front of all at a level.</summary>
    public double FrontAt(double level) => IsOnFace || !HasFacing ? Face.At(-Thick, level).X : PanelBack - Thick;

    /// <summary>Back of a facing that stands before the face, as far from the foot of the face as its gap.</summary>
    private double PanelBack => -Gap - above * Math.Tan(Face.Radians);

    public double Thick => HasFacing ? Facing!.Thickness ?? In(AssumedFacing) : 0;

    private double Gap => HasFacing && !IsOnFace ? Facing!.Gap ?? In(AssumedGap) : 0;

    private bool IsFacingGiven => Facing?.Thickness is not null && (IsOnFace || Facing.Gap is not null);

    /// <summary>The kind of facing in words, the wall's name where it has none.</summary>
    public string Name => HasFacing ? context.Say(SectionLabels.FacingWords(Facing!.Kind), "").TrimEnd() : wall.Name.ToUpperInvariant();

    /// <summary>Shotcrete, drainage strip and facing between two levels.</summary>
    public void Draw(DetailPen pen, double low, double high)
    {
        (double X, double Y)[] shotcrete = Face.Band(0, Back, low, high);
        pen.Hatch(2.5, 45, shotcrete);
        pen.Shape(Facing?.Shotcrete is not null, shotcrete);
        if (wall.Drainage is not null)
            pen.Line(StripAt(low), low, StripAt(high), high, LayerRole.Drainage);
        if (HasFacing && IsOnFace)
            pen.Shape(IsFacingGiven, Face.Band(-Thick, 0, low, high));
        else if (HasFacing)
            pen.Rectangle(IsFacingGiven, FrontAt(low), low, PanelBack, high);
    }

    /// <summary>Back of the drainage strip at a level.</summary>
    public double StripAt(double level) => Face.At(Back + In(StripThickness), level).X;

    /// <summary>The thicknesses, square to what they measure, below a cut where it has room, else above it.</summary>
    public void Thicknesses(DetailPen pen, double low, double high)
    {
        // The lowest place, or the highest, where a line square to the face ends on both sides of what is drawn.
        double lean = Math.Sin(Face.Radians), along = (low < high ? low + Back * lean : low - (IsOnFace ? Thick : 0) * lean) / Math.Cos(Face.Radians);
        if (Facing?.Shotcrete is not null)
            pen.Small(Face.On(0, along), Face.On(Back, along), -1, context.Say(Phrase.ShotcreteThickness, "<>"));
        else
            pen.Note(Face.At(Back / 2, low + (high - low) * 0.1), 0, context.Say(Phrase.ShotcreteThickness, data.Blank));
        if (!HasFacing)
            return;
        if (Facing!.Thickness is not null && IsOnFace)
            pen.Small(Face.On(-Thick, along), Face.On(0, along), -1);
        else if (Facing.Thickness is not null)
            pen.Small((FrontAt(low), low), (PanelBack, low), -1);
        if (IsOnFace)
            return;
        if (Facing.Gap is not null)
            pen.Small((PanelBack, low), Face.At(0, low), -1, Face.Degrees == 0 ? context.Say(Phrase.GapIs, "<>") : context.Say(Phrase.GapVaries, "<>", data.Small(Facing.Gap)));
        else
            pen.Note((PanelBack / 2, low + (high - low) * 0.15), Left, context.Say(Phrase.GapIs, data.Blank));
    }

    /// <summary>The reinforcement of the facing at its cover, in the middle and dashed where none is given; named at a level.</summary>
    public void Steel(DetailPen pen, double at)
    {
        if (!HasFacing)
            return;
        double? cover = data.Size("facing_cover") is double given && given < Thick ? given : null;
        double behind = cover ?? Thick / 2;
        (double X, double Y) Bar(double level, double depth) => IsOnFace ? Face.At(depth - Thick, level) : (FrontAt(level) + depth, level);
        ((double x1, double y1), (double x2, double y2)) = (Bar(-Math.Abs(at) * 1.2, behind), Bar(Math.Abs(at) * 1.2, behind));
        pen.Line(x1, y1, x2, y2, cover is null ? LayerRole.DetailHidden : LayerRole.Detail);
        if (cover is double c && IsOnFace)
            pen.Small(Face.On(-Thick, at), Face.On(c - Thick, at), -1, context.Say(Phrase.CoverIs, "<>"));
        else if (cover is double before)
            pen.Small(Bar(at, 0), Bar(at, before), -1, context.Say(Phrase.CoverIs, "<>"));
        else
            pen.Note(Bar(at, behind), Left, context.Say(Phrase.CoverIs, data.Fact("facing_cover")));
        pen.Note(Bar(at * 0.5, behind), Left, context.Say(Phrase.ReinforcementIs, data.Fact("facing_bars", Zones)));
    }
}
