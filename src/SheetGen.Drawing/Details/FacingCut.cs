using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>An upright cut through what is built on a wall's face: the face of the shotcrete is at x = 0, the soil on the right.</summary>
internal sealed class FacingCut(DrawingContext context, DetailData data, Wall wall)
{
    private const double Left = Math.PI;

    /// <summary>Sizes in inches that stand in for those that the project does not give; what has them is dashed.</summary>
    private const double AssumedShotcrete = 4, AssumedFacing = 6, AssumedGap = 6, StripThickness = 0.4;

    public Wall Wall => wall;

    private Facing? Facing => wall.Facing;

    private double In(double inches) => Lengths.FromInches(inches, data.Print.Unit);

    public bool HasFacing => Facing is { Kind: not FacingKind.None };

    /// <summary>True for a facing that is cast or shot against the temporary shotcrete; panels and others stand before it on a leveling pad.</summary>
    public bool IsOnFace => Facing?.Kind is FacingKind.CastInPlace or FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete;

    public bool IsShot => Facing?.Kind is FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete;

    /// <summary>Back of the shotcrete.</summary>
    public double Back => Facing?.Shotcrete ?? In(AssumedShotcrete);

    public double Thick => HasFacing ? Facing!.Thickness ?? In(AssumedFacing) : 0;

    private double Gap => HasFacing && !IsOnFace ? Facing!.Gap ?? In(AssumedGap) : 0;

    /// <summary>Front of all.</summary>
    public double Front => -Gap - Thick;

    private bool IsFacingGiven => Facing?.Thickness is not null && (IsOnFace || Facing.Gap is not null);

    /// <summary>The kind of facing in words, the wall's name where it has none.</summary>
    public string Name => HasFacing ? context.Say(SectionLabels.FacingWords(Facing!.Kind), "").TrimEnd() : wall.Name.ToUpperInvariant();

    /// <summary>Shotcrete, drainage strip and facing between two heights.</summary>
    public void Draw(DetailPen pen, double low, double high)
    {
        pen.Hatch(2.5, 45, (0, low), (Back, low), (Back, high), (0, high));
        pen.Shape(Facing?.Shotcrete is not null, (0, low), (Back, low), (Back, high), (0, high));
        if (wall.Drainage is not null)
            pen.Line(Back + In(StripThickness), low, Back + In(StripThickness), high, LayerRole.Drainage);
        if (HasFacing)
            pen.Rectangle(IsFacingGiven, Front, low, -Gap, high);
    }

    /// <summary>The thicknesses, below a cut where it has room, else above it.</summary>
    public void Thicknesses(DetailPen pen, double low, double high)
    {
        if (Facing?.Shotcrete is not null)
            pen.Small((0, low), (Back, low), -1, context.Say(Phrase.ShotcreteThickness, "<>"));
        else
            pen.Note(Back / 2, low + (high - low) * 0.1, 0, context.Say(Phrase.ShotcreteThickness, data.Blank));
        if (!HasFacing)
            return;
        if (Facing!.Thickness is not null)
            pen.Small((Front, low), (-Gap, low), -1);
        if (IsOnFace)
            return;
        if (Facing.Gap is not null)
            pen.Small((-Gap, low), (0, low), -1, context.Say(Phrase.GapIs, "<>"));
        else
            pen.Note(-Gap / 2, low + (high - low) * 0.15, Left, context.Say(Phrase.GapIs, data.Blank));
    }

    /// <summary>The reinforcement of the facing at its cover, in the middle and dashed where none is given; named at a height.</summary>
    public void Steel(DetailPen pen, double at)
    {
        if (!HasFacing)
            return;
        double? cover = data.Size("facing_cover") is double given && given < Thick ? given : null;
        double x = Front + (cover ?? Thick / 2);
        pen.Line(x, -Math.Abs(at) * 1.2, x, Math.Abs(at) * 1.2, cover is null ? LayerRole.DetailHidden : LayerRole.Detail);
        if (cover is double c)
            pen.Small((Front, at), (Front + c, at), -1, context.Say(Phrase.CoverIs, "<>"));
        else
            pen.Note(x, at, Left, context.Say(Phrase.CoverIs, data.Fact("facing_cover")));
        pen.Note(x, at * 0.5, Left, context.Say(Phrase.ReinforcementIs, data.Fact("facing_bars")));
    }
}
