using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>A slot's nail under rules that are relaxed for it alone: other directions, another length, less clearance, or another head.</summary>
/// <param name="Row">The slot's row as the relaxed nail sees it.</param>
/// <param name="Value">What the relaxed figure is.</param>
internal sealed record Relaxed(Slot Slot, RowTask Row, double Value)
{
    public HeadChoice Choice => Row.Choices[Slot.Ordinal][0];

    public static Relaxed Length(Slot slot, double length) => new(slot, Make(slot, length, 0, slot.Grid.Turnings), length);

    /// <summary>Less clearance to obstructions and nails: the same as a hole that is thinner by as much.</summary>
    public static Relaxed Clearance(Slot slot, double less) => new(slot, Make(slot, slot.Row.Length, less, slot.Grid.Turnings), less);

    public static Relaxed Maximum(Slot slot, double maximum)
    {
        Rules rules = slot.Row.Bay.Rules;
        return new(slot, Make(slot, slot.Row.Length, 0, new Turnings(slot.Row.Bay.Section, rules with { Redirect = rules.Redirect with { Maximum = maximum } })), maximum);
    }

    /// <summary>An inclination window wider by so much at both ends, within the horizontal and 45 degrees.</summary>
    public static Relaxed Inclination(Slot slot, double wider)
    {
        Rules rules = slot.Row.Bay.Rules;
        RedirectRules redirect = rules.Redirect with
        {
            LeastInclination = Math.Max(0, rules.Redirect.LeastInclination - wider),
            GreatestInclination = Math.Min(45, rules.Redirect.GreatestInclination + wider),
        };
        return new(slot, Make(slot, slot.Row.Length, 0, new Turnings(slot.Row.Bay.Section, rules with { Redirect = redirect })), wider);
    }

    /// <summary>The grid station left without its nail, and one added whose head stands elsewhere on the face.</summary>
    public static Relaxed Elsewhere(Slot slot, Head head) => new(slot, Make(slot, head, slot.Row.Length, 0, slot.Grid.Turnings), 0);

    /// <summary>The hole of a direction; null where it is not free: a boundary and a face keep their clearance whatever is relaxed.</summary>
    public Hole? HoleAt(int turning)
    {
        Hole hole = Row.HoleAt(Choice, turning);
        if (!Row.IsFree(Choice, turning))
            return null;
        if (Row.Radius == Slot.Row.Radius)
            return hole;
        Hole whole = hole with { Radius = Slot.Row.Radius };
        foreach (Obstacle still in Row.Near(Choice))
        {
            if (still.Solid.IsSurface && HoleDistance.CloserThan(whole, still.Solid, still.Required - Tolerance.Rounding))
                return null;
        }
        return hole;
    }

    /// <summary>The nail in a direction that is free.</summary>
    public Placed NailAt(int turning) => new(Row, Choice, Choice.Turnings[turning], false, Row.HoleAt(Choice, turning));

    private static RowTask Make(Slot slot, double length, double thinner, Turnings turnings) => Make(slot, slot.Grid.Head, length, thinner, turnings);

    private static RowTask Make(Slot slot, Head head, double length, double thinner, Turnings turnings)
    {
        RowTask row = slot.Row;
        var choice = new HeadChoice(row.Bay.Face, head, slot.Ordinal, 0, turnings, false, null);
        IReadOnlyList<HeadChoice>[] choices = [.. row.Choices];
        choices[slot.Ordinal] = [choice];
        return new RowTask(row.Index, row.Row, row.Number, row.Columns, length, choices, row.Ends, row.Site, thinner) { FirstSlot = row.FirstSlot };
    }
}
