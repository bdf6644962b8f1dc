using SheetGen.Drawing.Set;
using SheetGen.Model;

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

    /// <summary>Inclination at which the details are drawn: the first design section's.</summary>
    public double Inclination => Sections[0].Section.Inclination;
}
