using SheetGen.Model.Problems;
using SheetGen.Model.Units;

namespace SheetGen.Model;

/// <summary>A soil nail wall on a layout line. Lengths in project units; places are distances along the layout line.</summary>
public sealed record Wall
{
    public required string Name { get; init; }

    public required LayoutLine LayoutLine { get; init; }

    /// <summary>The side of the layout line where the soil is, looking up-station.</summary>
    public required Turn RetainedSide { get; init; }

    public required double Start { get; init; }

    public required double End { get; init; }

    /// <summary>Layout line to face, positive into the retained side.</summary>
    public double FaceOffset { get; init; }

    public Batter? Batter { get; init; }

    /// <summary>Top of the temporary shotcrete.</summary>
    public required Profile Top { get; init; }

    /// <summary>Bottom of wall: level steps (a profile of vertical steps).</summary>
    public required Profile Bottom { get; init; }

    /// <summary>The steps that make the bottom: from this place on, up to the next.</summary>
    public required IReadOnlyList<ProfilePoint> BottomSteps { get; init; }

    public Profile? ExistingGround { get; init; }

    public Profile? FinishedGrade { get; init; }

    /// <summary>True where no head may stand below the finished grade.</summary>
    public bool HeadsAboveGrade { get; init; }

    public Panels? Panels { get; init; }

    /// <summary>Panel breaks inside the wall, by distance along the layout line; they restart at corners.</summary>
    public IReadOnlyList<double> PanelBreaks { get; init; } = [];

    /// <summary>True where the facing is of precast panels: their size is given, and the facing's kind is theirs or left out.</summary>
    public bool HasPanels => Panels is not null && (Facing is null or { IsKindStated: false } or { Kind: FacingKind.PrecastPanels });

    public Facing? Facing { get; init; }

    public Drainage? Drainage { get; init; }

    public Lifts? Lifts { get; init; }

    /// <summary>Cross sections of the ground in front, in order of station; empty where not given.</summary>
    public IReadOnlyList<CrossSection> CrossSections { get; init; } = [];

    public required IReadOnlyList<Section> Sections { get; init; }

    public IReadOnlyList<Opening> Openings { get; init; } = [];

    public IReadOnlyList<ClosedStretch> ClosedStretches { get; init; } = [];

    public SourceSpot Spot { get; init; }

    /// <summary>+1 where the soil is to the right looking up-station, -1 where it is to the left.</summary>
    public int Side => RetainedSide == Turn.Right ? 1 : -1;

    /// <summary>The internal station of a place.</summary>
    public double StationOf(double along) => LayoutLine.StationOf(along);

    /// <summary>The printed station of a place.</summary>
    public string StationText(double along, LengthUnit unit) => LayoutLine.StationText(along, unit);

    /// <summary>The printed station of an internal station.</summary>
    public string TextOf(double station, LengthUnit unit) => StationText(LayoutLine.AlongOf(station), unit);
}
