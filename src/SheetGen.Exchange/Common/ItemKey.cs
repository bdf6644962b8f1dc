using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Common;

/// <summary>Keys of the things that have an id of their own.</summary>
internal static class ItemKey
{
    public static string Nail(string mark) => "nail|" + mark;

    public static string Bar(string mark) => "bar|" + mark;

    public static string Hole(string mark) => "hole|" + mark;

    public static string Obstruction(string name) => "obstruction|" + name;

    public static string Shotcrete(Wall wall, Section section) => $"shotcrete|{wall.Name}|{section.Name}";

    public static string Facing(Wall wall, Section section) => $"facing|{wall.Name}|{section.Name}";

    public static string Panel(Panel panel) => $"panel|{panel.Wall.Name}|{panel.Section.Name}|{panel.Leg}|{panel.Column}|{panel.Course}";
}
