using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Details;

/// <summary>The project's own figures for the details; what it does not give is a blank to be filled by hand.</summary>
public sealed class DetailData(DrawingContext context)
{
    public const string Blank = "________";

    public Printed Print => context.Print;

    public WallProject Project => context.Project;

    public IReadOnlyList<(Wall Wall, Section Section)> Sections { get; } =
        [.. context.Project.Walls.SelectMany(w => w.Sections.Select(s => (w, s)))];

    public string Fact(string key) =>
        Project.Info.Facts.TryGetValue(key, out string? v) && v.Length > 0 ? v.ToUpperInvariant() : Blank;

    public bool Has(string key) => Project.Info.Facts.TryGetValue(key, out string? v) && v.Length > 0;

    public string Small(double? length) => length is double l ? Print.Small(l) : Blank;

    public string Short(double? length) => length is double l ? Print.Short(l) : Blank;

    /// <summary>A value of every design section: one where it is the same in all, else each with the names of its sections.</summary>
    public string ByZone(Func<Section, string> value)
    {
        var groups = Sections.GroupBy(s => value(s.Section)).ToList();
        return groups.Count == 1
            ? groups[0].Key
            : string.Join(", ", groups.Select(g => string.Join(" ", g.Select(s => NameOf(s.Wall, s.Section)).Distinct()) + ": " + g.Key));
    }

    private string NameOf(Wall wall, Section section) => Project.Walls.Count == 1 ? section.Name.ToUpperInvariant() : $"{wall.Name} {section.Name}".ToUpperInvariant();

    /// <summary>A value of every wall: one where it is the same in all, else each with the walls' names.</summary>
    public string ByWall(Func<Wall, string> value)
    {
        var groups = Project.Walls.GroupBy(value).ToList();
        return groups.Count == 1
            ? groups[0].Key
            : string.Join(", ", groups.Select(g => string.Join(" ", g.Select(w => w.Name.ToUpperInvariant())) + ": " + g.Key));
    }

    public string Shotcrete => ByWall(w => Small(w.Facing?.Shotcrete));

    private const int MostHeads = 6;

    /// <summary>The kinds of nail heads by inclination and batter, each with its design sections; beyond a few the last stands for the others too.</summary>
    public IReadOnlyList<HeadKind> Heads =>
    [
        .. Sections.GroupBy(s => (s.Section.Inclination, Batter: s.Wall.Batter?.Angle ?? 0)).Take(MostHeads).Select(g => new HeadKind(
            string.Join(", ", g.Select(s => NameOf(s.Wall, s.Section)).Distinct()), g.Key.Inclination, g.Key.Batter,
            g.SelectMany(s => context.NailsOf(s.Wall).Where(n => n.Section == s.Section && (n.Splay != 0 || n.Inclination != g.Key.Inclination)))
                .Select(n => HeadKind.BevelOf(n.Inclination, n.Splay, g.Key.Batter)).DefaultIfEmpty(0).Max())),
    ];

    /// <summary>The least depth of a wall below its finished grade, in words; a blank where none is given.</summary>
    public string Embedment(Wall wall)
    {
        if (wall.FinishedGrade is not Profile grade)
            return context.Say(Phrase.EmbedmentIs, Blank);
        IEnumerable<double> places = grade.Points.Concat(wall.Bottom.Points).Select(p => p.Along).Append(wall.Start).Where(a => a >= wall.Start && a < wall.End);
        double least = places.Min(a => Math.Min(grade.At(a) - wall.Bottom.At(a), a > wall.Start ? grade.Before(a) - wall.Bottom.Before(a) : double.PositiveInfinity));
        return context.Say(Phrase.DimEmbedment, Print.Distance(Math.Min(least, grade.Before(wall.End) - wall.Bottom.Before(wall.End))));
    }

    /// <summary>Inclination at which the details are drawn: the first design section's.</summary>
    public double Inclination => Sections[0].Section.Inclination;
}

/// <summary>Nail heads of one inclination and batter, degrees.</summary>
/// <param name="Zones">Names of their design sections.</param>
/// <param name="GreatestTurned">Greatest bevel of a nail that is turned; 0 where none is.</param>
public sealed record HeadKind(string Zones, double Inclination, double Batter, double GreatestTurned)
{
    /// <summary>Angle between the bar and the square to the face, in the plane square to the wall; negative where the bar points above it.</summary>
    public double Bevel => Inclination - Batter;

    /// <summary>Angle between a bar and the square to the face: cos = cos b cos i cos a + sin b sin i, with batter b, inclination i and splay a.</summary>
    public static double BevelOf(double inclination, double splay, double batter)
    {
        (double i, double a, double b) = (Angles.ToRadians(inclination), Angles.ToRadians(splay), Angles.ToRadians(batter));
        return Angles.ToDegrees(Math.Acos(Math.Clamp(Math.Cos(b) * Math.Cos(i) * Math.Cos(a) + Math.Sin(b) * Math.Sin(i), -1, 1)));
    }
}
