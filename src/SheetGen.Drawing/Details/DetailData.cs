using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The project's own figures for the details; what it does not give is a blank to be filled by the engineer.</summary>
public sealed class DetailData(DrawingContext context)
{
    public Printed Print => context.Print;

    public WallProject Project => context.Project;

    /// <summary>Stands in place of what the project does not give.</summary>
    public string Blank => context.Say(Phrase.ByEngineer);

    public DesignFacts Facts { get; } = new(context, context.Say(Phrase.ByEngineer));

    public IReadOnlyList<(Wall Wall, Section Section)> Sections => Facts.Sections;

    /// <summary>A fact of the design for all design sections, or a blank.</summary>
    public string Fact(string key) => Facts.Of(key) ?? Blank;

    /// <summary>A fact of the design for some design sections, or a blank.</summary>
    public string Fact(string key, IReadOnlyList<(Wall Wall, Section Section)> sections) => Facts.Of(key, sections) ?? Blank;

    /// <summary>The first length that the words of a fact state; null where they state none.</summary>
    public double? Size(string key) => Facts.StatedSizes(key) is [> 0 and double first, ..] ? first : null;

    public string Small(double? length) => length is double l ? Print.Small(l) : Blank;

    /// <summary>A rule's value; one that the project leaves to its default says so.</summary>
    public string Rule(string key, string value) => Project.Rules.Defaulted.Contains(key) ? context.Say(Phrase.Default, value) : value;

    public double DiameterOf(Bar bar) => Print.Unit == LengthUnit.Metre ? bar.DiameterMillimetres / 1000 : Lengths.FromInches(bar.DiameterInches, Print.Unit);

    /// <summary>The bars of design sections: one where it is the same in all, else each with the names of its sections.</summary>
    public string BarsOf(IReadOnlyList<(Wall Wall, Section Section)> sections)
    {
        var bars = sections.GroupBy(s => s.Section.Bar.ToString().ToUpperInvariant()).ToList();
        return bars.Count == 1 ? bars[0].Key : string.Join("; ", bars.Select(b => Facts.Names(b) + ": " + b.Key));
    }

    /// <summary>The kinds of nail heads: one for each inclination, batter, hole, plate, studs, place of the mesh and shotcrete.</summary>
    public IReadOnlyList<HeadKind> Heads =>
    [
        .. Sections.GroupBy(s => (s.Section.Inclination, Batter: s.Wall.Batter?.Angle ?? 0, s.Section.HoleDiameter, Plate: PlateOf(s.Section), Studs: StudsOf(s.Section), Mesh: MeshDepthOf(s.Section), s.Wall.Facing?.Shotcrete))
            .Select(g => new HeadKind([.. g], g.Key.Inclination, g.Key.Batter, g.Key.Plate,
                g.SelectMany(s => context.NailsOf(s.Wall).Where(n => n.Section == s.Section && (n.Splay != 0 || n.Inclination != g.Key.Inclination)))
                    .Select(n => HeadKind.BevelOf(n.Inclination, n.Splay, g.Key.Batter)).DefaultIfEmpty(0).Max())),
    ];

    /// <summary>The bearing plate: the engineer's figures of a section, else those that the fact states.</summary>
    public PlateSize PlateOf(Section section)
    {
        IReadOnlyList<double> stated = Facts.StatedSizes("plate");
        return new(section.Design?.PlateWidth ?? (stated.Count == 3 ? stated[0] : null), section.Design?.PlateThickness ?? (stated.Count == 3 ? stated[2] : null));
    }

    /// <summary>Distance from the face of the shotcrete to its mesh: the engineer's figure of a section, else the one that the fact states; null where not given.</summary>
    public double? MeshDepthOf(Section section) => section.Design?.Facing.SteelDepth ?? Size("mesh_cover");

    /// <summary>Diameter of the waler bars: those that the fact names by number, else the engineer's of a section; null where not given.</summary>
    public double? WalerOf(Section section) => Facts.Stated("waler_bars") is string words
        ? SizeText.BarDiameter(words, Print.Unit)
        : section.Design?.Facing.Walers is { } walers ? DiameterOf(walers.Bar) : null;

    /// <summary>The plate of the first design section of a wall.</summary>
    public PlateSize PlateOf(Wall wall) => PlateOf(wall.Sections[0]);

    /// <summary>Headed studs: the engineer's figures of a section, else those that the fact states.</summary>
    public StudSize? StudsOf(Section section)
    {
        if (section.Design?.Studs is { Length: double length } given)
            return new(given.Diameter, length, given.HeadDiameter, given.HeadThickness, given.Spacing);
        return Facts.StatedSizes("studs") is [double d, double l] ? new(d, l, null, null, null) : null;
    }
}

/// <summary>Width and thickness of a bearing plate, project units; null where not given.</summary>
public sealed record PlateSize(double? Width, double? Thickness)
{
    public bool IsGiven => Width is not null && Thickness is not null;
}

/// <summary>Size of a headed stud, project units; null where not given.</summary>
public sealed record StudSize(double Diameter, double Length, double? Head, double? HeadThickness, double? Spacing);

/// <summary>Nail heads of one inclination, batter, hole, plate and shotcrete; angles in degrees.</summary>
/// <param name="GreatestTurned">Greatest bevel of a nail that is turned; 0 where none is.</param>
public sealed record HeadKind(
    IReadOnlyList<(Wall Wall, Section Section)> Sections, double Inclination, double Batter, PlateSize Plate, double GreatestTurned)
{
    public Section First => Sections[0].Section;

    public double? Shotcrete => Sections[0].Wall.Facing?.Shotcrete;

    /// <summary>Angle between the bar and the square to the face, in the plane square to the wall; negative where the bar points above it.</summary>
    public double Bevel => Inclination - Batter;

    /// <summary>Angle between a bar and the square to the face: cos = cos b cos i cos a + sin b sin i, with batter b, inclination i and splay a.</summary>
    public static double BevelOf(double inclination, double splay, double batter)
    {
        (double i, double a, double b) = (Angles.ToRadians(inclination), Angles.ToRadians(splay), Angles.ToRadians(batter));
        return Angles.ToDegrees(Math.Acos(Math.Clamp(Math.Cos(b) * Math.Cos(i) * Math.Cos(a) + Math.Sin(b) * Math.Sin(i), -1, 1)));
    }
}
