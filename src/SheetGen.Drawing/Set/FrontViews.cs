using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;

namespace SheetGen.Drawing.Set;

/// <summary>What stands on the last front sheet in the room that its words leave: the key plan, the typical section, and tables where much is left.</summary>
/// <param name="Key">Room of the key plan; null where there is none.</param>
/// <param name="Typical">Form and upper left corner of the typical section; null where it has no room.</param>
/// <param name="Tables">Tables with their upper left corners.</param>
internal sealed record FrontViews(Box? Key, (SectionForm Form, Point2 At)? Typical, IReadOnlyList<(SheetPart Part, Point2 At)> Tables)
{
    /// <summary>True where the sheet would be too empty without tables.</summary>
    public bool NeedsTables { get; private init; }

    /// <summary>Least side of a key plan that can be read, mm.</summary>
    private const double LeastKey = 75;

    /// <summary>Most that a key plan takes of the width and of the height of a sheet.</summary>
    private const double MostKey = 0.4;

    /// <summary>Shares of a sheet that may stay free at a stretch: beyond the first tables take it where that saves a sheet or leaves the last one full, beyond the second in any case.</summary>
    private const double MostFree = 0.15, TooFree = 0.25;

    /// <summary>The largest section with which the key plan has room; the key plan alone where none has.</summary>
    /// <param name="section">The section that stands for the whole; null for none.</param>
    /// <param name="tables">All tables of the set, in their order.</param>
    public static FrontViews Plan(DrawingContext context, FreeRoom free, Box area, SectionSheets sections, SectionCut? section, IReadOnlyList<SheetPart> tables)
    {
        FreeRoom left = free;
        Box? key = null;
        (SectionForm Form, Point2 At)? typical = null;
        IEnumerable<(SectionForm Form, double Width, double Height, Box Room)> ways = section is null ? []
            : free.Largest.SelectMany(r => sections.FormsIn(section, r).Select(f => (f.Form, f.Width, f.Height, r))).OrderBy(w => w.Form.Scale.Value);
        foreach ((SectionForm form, double width, double height, Box room) in ways)
        {
            left = free.Copy();
            left.Take(new Box(room.Right - width, room.Top - height, room.Right, room.Top));
            key = KeyIn(context, left, area);
            if (key is null)
                continue;
            typical = (form, new(room.Right - width, room.Top));
            break;
        }
        if (typical is null)
            (left, key) = (free.Copy(), KeyIn(context, free, area));
        if (key is Box taken)
            left.Take(taken.Grown(context.StyleOf(TextRole.Label).Height));
        var placed = new List<(SheetPart, Point2)>();
        double most = left.Largest.Select(r => r.Width * r.Height / (area.Width * area.Height)).FirstOrDefault();
        foreach (SheetPart table in most > MostFree ? tables : [])
        {
            if (left.Find(table.Width, table.Height, PlaceRule.Highest) is not Point2 at)
                continue;
            left.Take(table, at);
            placed.Add((table, at));
        }
        return new(key, typical, placed) { NeedsTables = most > TooFree };
    }

    /// <summary>The room of a key plan, at the foot of the largest that is free; null where none is large enough.</summary>
    public static Box? KeyIn(DrawingContext context, FreeRoom free, Box area)
    {
        double least = LeastKey * context.StyleOf(TextRole.Label).Height / 2.4;
        return free.Largest.Where(r => r.Width >= least && r.Height >= least).Select(r => (Box?)new Box(
            r.Left, r.Bottom, Math.Min(r.Right, r.Left + Math.Max(least, MostKey * area.Width)), Math.Min(r.Top, r.Bottom + Math.Max(least, MostKey * area.Height)))).FirstOrDefault();
    }
}
