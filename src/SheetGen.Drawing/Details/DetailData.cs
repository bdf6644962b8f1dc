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

    public IReadOnlyList<(Wall Wall, Section Section)> Sections { get; } =
        [.. context.Project.Walls.SelectMany(w => w.Sections.Select(s => (w, s)))];

    public bool Has(string key) => Project.Info.Facts.TryGetValue(key, out string? v) && v.Length > 0;

    /// <summary>A fact of the design as the project words it.</summary>
    public string Fact(string key) => Has(key) ? Project.Info.Facts[key].ToUpperInvariant() : Blank;

    /// <summary>The lengths that a fact states, project units.</summary>
    public IReadOnlyList<double> Sizes(string key) => Has(key) ? SizeText.Lengths(Project.Info.Facts[key], Print.Unit) : [];

    /// <summary>The first length that a fact states; null where it states none.</summary>
    public double? Size(string key) => Sizes(key) is [> 0 and double first, ..] ? first : null;

    public int? Count(string key) => Has(key) ? SizeText.Count(Project.Info.Facts[key]) : null;

    /// <summary>Diameter of the bars that a fact names by number; null where it names none.</summary>
    public double? BarOf(string key) => Has(key) ? SizeText.BarDiameter(Project.Info.Facts[key], Print.Unit) : null;

    public string Small(double? length) => length is double l ? Print.Small(l) : Blank;

    public string Short(double? length) => length is double l ? Print.Short(l) : Blank;

    /// <summary>A rule's value; one that the project leaves to its default says so.</summary>
    public string Rule(string key, string value) => Project.Rules.Defaulted.Contains(key) ? context.Say(Phrase.Default, value) : value;

    public double DiameterOf(Bar bar) => Print.Unit == LengthUnit.Metre ? bar.DiameterMillimetres / 1000 : Lengths.FromInches(bar.DiameterInches, Print.Unit);

    /// <summary>Names of design sections, with their walls' where there are several walls.</summary>
    public string Names(IEnumerable<(Wall Wall, Section Section)> sections) => string.Join(", ",
        sections.Select(s => (Project.Walls.Count == 1 ? s.Section.Name : $"{s.Wall.Name} {s.Section.Name}").ToUpperInvariant()).Distinct());

    /// <summary>The bars of design sections: one where it is the same in all, else each with the names of its sections.</summary>
    public string BarsOf(IReadOnlyList<(Wall Wall, Section Section)> sections)
    {
        var bars = sections.GroupBy(s => s.Section.Bar.ToString().ToUpperInvariant()).ToList();
        return bars.Count == 1 ? bars[0].Key : string.Join("; ", bars.Select(b => Names(b) + ": " + b.Key));
    }

    /// <summary>The kinds of nail heads: one for each inclination, batter, hole, plate and shotcrete.</summary>
    public IReadOnlyList<HeadKind> Heads =>
    [
        .. Sections.GroupBy(s => (s.Section.Inclination, Batter: s.Wall.Batter?.Angle ?? 0, s.Section.HoleDiameter, Plate: PlateOf(s.Section), s.Wall.Facing?.Shotcrete))
            .Select(g => new HeadKind([.. g], g.Key.Inclination, g.Key.Batter, g.Key.Plate,
                g.SelectMany(s => context.NailsOf(s.Wall).Where(n => n.Section == s.Section && (n.Splay != 0 || n.Inclination != g.Key.Inclination)))
                    .Select(n => HeadKind.BevelOf(n.Inclination, n.Splay, g.Key.Batter)).DefaultIfEmpty(0).Max())),
    ];

    /// <summary>The bearing plate: the engineer's figures of a section, else those that the fact states.</summary>
    public PlateSize PlateOf(Section section)
    {
        IReadOnlyList<double> stated = Sizes("plate");
        return new(section.Design?.PlateWidth ?? (stated.Count == 3 ? stated[0] : null), section.Design?.PlateThickness ?? (stated.Count == 3 ? stated[2] : null));
    }

    /// <summary>Width and height of the leveling pad: the rates', else those that the fact states; null where not given.</summary>
    public (double? Width, double? Height) Pad => Sizes("leveling_pad") is [double width, double height]
        ? (Project.Rates.PadWidth ?? width, Project.Rates.PadHeight ?? height)
        : (Project.Rates.PadWidth, Project.Rates.PadHeight);

    /// <summary>The plate of the first design section of a wall.</summary>
    public PlateSize PlateOf(Wall wall) => PlateOf(wall.Sections[0]);

    /// <summary>Headed studs: the engineer's figures of a section, else those that the fact states.</summary>
    public StudSize? StudsOf(Section section)
    {
        if (section.Design?.Studs is { Length: double length } given)
            return new(given.Diameter, length, given.HeadDiameter, given.HeadThickness, given.Spacing);
        return Sizes("studs") is [double d, double l] ? new(d, l, null, null, null) : null;
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
