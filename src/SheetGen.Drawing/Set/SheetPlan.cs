using System.Globalization;
using SheetGen.Drawing.Details;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Tables;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>
/// The sheets of a set, planned when what stands on them is known by its size: which there are, in which order, with their names and titles, and where the parts of the
/// packed ones stand. Order: notes and index, plans and elevations wall by wall, sections, details and tables.
/// </summary>
public sealed class SheetPlan
{
    private readonly DrawingContext _context;

    private SheetPlan(DrawingContext context) => _context = context;

    public required FrontSheets Front { get; init; }

    /// <summary>Plan and elevation sheets in order; a sheet of a plan alone has no strip of the elevation on it.</summary>
    public required IReadOnlyList<ViewSheet> Views { get; init; }

    /// <summary>The section that stands for the whole, on the last front sheet; null where it has no room there.</summary>
    public required TypicalSection? Typical { get; init; }

    /// <summary>Cuts that stand on the packed sheets.</summary>
    public required IReadOnlyList<SectionCut> Cuts { get; init; }

    /// <summary>Scales at which sections stand, for their dimensions.</summary>
    public IReadOnlyList<SheetScale> SectionScales => [.. SectionParts.Select(p => p.Scale).OfType<SheetScale>().Distinct()];

    public required IReadOnlyList<PackedSheet> Packed { get; init; }

    /// <summary>Room of the key plan on the last front sheet; null where there is none.</summary>
    public required Box? KeyPlan { get; init; }

    /// <summary>Tables on the last front sheet, by their upper left corners.</summary>
    public required IReadOnlyList<(SheetPart Part, Point2 At)> FrontTables { get; init; }

    public int Count => Front.Count + Views.Count + Packed.Count;

    /// <summary>What every name begins with.</summary>
    public const string Prefix = "SN-";

    /// <summary>Name of a sheet by its number.</summary>
    public static string NameOf(int number) => Prefix + number.ToString("00", CultureInfo.InvariantCulture);

    /// <summary>Name of a sheet by its place in this set, from 1.</summary>
    private string NameAt(int place) => NameOf(_context.Project.Sheets.FirstNumber + place - 1);

    public string NameOf(ViewSheet view) => NameAt(Front.Count + IndexOf(Views, view) + 1);

    public string NameOf(PackedSheet sheet) => NameAt(Front.Count + Views.Count + IndexOf(Packed, sheet) + 1);

    /// <summary>Name of the sheet on which the notes begin that a sheet has no room for.</summary>
    /// <param name="sheet">The sheet as its <see cref="NotesLeft"/> name it.</param>
    public string NotesSheetOf(string sheet) => NameOf(Packed.First(p => p.Parts.Any(part => part.Part.Of == sheet)));

    public string LastFront => NameAt(Front.Count);

    private static int IndexOf<T>(IReadOnlyList<T> list, T item)
        where T : class
    {
        int i = 0;
        while (!ReferenceEquals(list[i], item))
            i++;
        return i;
    }

    /// <summary>Name of the sheet on which a section stands.</summary>
    public string SheetOf(SectionCut cut) => cut == Typical?.Cut ? LastFront : SheetOf(SectionParts[IndexOf(Cuts, cut)]);

    /// <summary>Name of the sheet on which a detail stands.</summary>
    public string SheetOf(DetailView detail) => SheetOf(Details.First(d => d.Detail == detail).Part);

    private IReadOnlyList<SheetPart> SectionParts { get; init; } = [];

    /// <summary>Every detail with its number and the sheet on which it stands.</summary>
    public IReadOnlyList<DetailPlace> DetailPlaces => [.. Details.Select((d, i) => new DetailPlace(d.Detail, i + 1, SheetOf(d.Part)))];

    private IReadOnlyList<(DetailView Detail, SheetPart Part)> Details { get; init; } = [];

    private string SheetOf(SheetPart part) => NameOf(Packed.First(p => p.Parts.Any(placed => ReferenceEquals(placed.Part, part))));

    /// <summary>What the parts of a sheet may refer to.</summary>
    public SheetRefs RefsOf(string sheet) => new(sheet, DetailPlaces);

    /// <summary>Names and titles of all sheets.</summary>
    public IReadOnlyList<(string Name, string Title)> Index =>
    [
        .. Enumerable.Range(1, Front.Count).Select(i => (NameAt(i), _context.Say(Phrase.TitleFront) + (i == Front.Count && FrontTables.Count > 0 ? ", " + _context.Say(Phrase.TitleTables) : ""))),
        .. Views.Select(v => (NameOf(v), TitleOf(v))),
        .. Packed.Select(p => (NameOf(p), TitleOf(p))),
    ];

    public string TitleOf(ViewSheet view)
    {
        if (view.Window is not SheetWindow w)
            return _context.Say(Phrase.TitlePlan, view.Strip.Wall.Name.ToUpperInvariant());
        string range = _context.Say(
            Phrase.StationRange, _context.Print.ShortStation(w.Wall, w.Start), _context.Print.ShortStation(w.Wall, w.End));
        return _context.Say(view.Plan is not null ? Phrase.TitlePlanAndElevation : Phrase.TitleElevation, range);
    }

    public string TitleOf(PackedSheet sheet)
    {
        string[] titles = [.. sheet.Kinds.Select(k => _context.Say(k switch
        {
            PartKind.Section => Phrase.TitleSections,
            PartKind.Detail => Phrase.TitleDetails,
            PartKind.Notes => Phrase.TitleNotes,
            _ => Phrase.TitleTables,
        }))];
        return titles.Length == 1 ? titles[0] : _context.Say(Phrase.And, string.Join(", ", titles[..^1]), titles[^1]);
    }

    public string ScaleOf(PackedSheet sheet)
    {
        PartKind[] kinds = [.. sheet.Kinds];
        return kinds switch
        {
            [PartKind.Section] when sheet.Scale is SheetScale one => one.Words(_context),
            [PartKind.Table] or [PartKind.Notes] or [PartKind.Table, PartKind.Notes] => _context.Say(Phrase.ScaleNone),
            _ => _context.Say(Phrase.AsShown),
        };
    }

    /// <summary>Plans the set.</summary>
    /// <param name="scale">Of the elevations.</param>
    /// <param name="shown">The details in the order of their numbers.</param>
    /// <param name="notes">Notes that need a further sheet.</param>
    public static SheetPlan Make(
        DrawingContext context, Box area, SheetScale scale, IReadOnlyList<ViewSheet> views, SectionSheets sections, IReadOnlyList<SectionCut> cuts,
        IReadOnlyList<DetailView> shown, IReadOnlyList<NotesLeft> notes)
    {
        Point2 detailOrigin = sections.Origin - new Point2(200 * scale.UnitsPerMillimetre, 0);
        IReadOnlyList<DetailColumn> Columns(bool spreads, IReadOnlyList<DetailColumn>? before = null) => DetailSheets.Columns(context, shown, area, detailOrigin, spreads, before);
        IReadOnlyList<DetailColumn> filling = Columns(true), tight = Columns(false);
        IReadOnlyList<DetailColumn>[] each = [.. new[] { 1, 0.5, 0 }.Select(size => DetailSheets.Each(context, shown, area, detailOrigin, size))];
        IReadOnlyList<SheetPart> tables = new TableLayout(context).Parts(SheetTables.All(context, area.Width), area.Width);
        IReadOnlyList<SheetPart> noteParts = SheetNotes.Parts(context, notes, area.Width);
        SectionCut? highest = SectionCut.Highest(cuts);

        // The typical section takes the room that the front sheets leave; where that is too small it stands with the others.
        Packing all = Pack(highest, tables);
        FrontViews onFront = FrontViews.Plan(context, all.Front.Free(), area, sections, highest, tables);
        if (onFront.Typical is null && highest is not null)
        {
            all = Pack(null, tables);
            onFront = FrontViews.Plan(context, all.Front.Free(), area, sections, null, tables);
        }
        TypicalSection? typical = onFront.Typical is var (form, at) ? new(highest!, form.Scale, at, sections.PartOf(highest!, form, true, all.SectionsEnd).Part) : null;
        // Fewer tables need no more sheets: the front sheets stay as they are.
        Packing without = onFront.Tables.Count > 0 ? Pack(typical?.Cut, [.. tables.Except(onFront.Tables.Select(t => t.Part))]) with { Front = all.Front } : all;
        if (onFront.NeedsTables || without.Sheets.Count < all.Sheets.Count || without.Sheets[^1].Filled(area) > SheetPacker.Empty)
            all = without;
        else
            onFront = onFront with { Tables = [] };
        return new SheetPlan(context)
        {
            Front = all.Front,
            Views = views,
            Typical = typical,
            Cuts = [.. cuts.Where(c => c != typical?.Cut)],
            SectionParts = all.Sections,
            Details = [.. all.Details.SelectMany(c => c.Cells.Select(d => (d.Detail, c.Part)))],
            Packed = all.Sheets,
            KeyPlan = onFront.Key,
            FrontTables = onFront.Tables,
        };

        Packing Pack(SectionCut? without, IReadOnlyList<SheetPart> tables)
        {
            (SheetPart[] cutParts, double end) = sections.PartsOf(sections.Groups([.. cuts.Where(c => c != without)], area, scale));
            int sectionSheets = SheetPacker.Pack([cutParts], area).Count;
            IReadOnlyList<DetailColumn>[] first = [.. each.Select(WithSections).Where(f => f.Count > 0)];
            (IReadOnlyList<DetailColumn> details, IReadOnlyList<PackedSheet> sheets) = Best([filling, tight, .. first.SelectMany(f => new[] { Columns(true, f), Columns(false, f) })]);
            // Details one by one, which leave room below them, only save sheets.
            (IReadOnlyList<DetailColumn> Details, IReadOnlyList<PackedSheet> Sheets) single = Best(each);
            if (single.Sheets.Count < sheets.Count)
                (details, sheets) = single;
            return new(FrontSheets.Plan(context, area, views.Count + sheets.Count, views.Count(v => v.Window is not null) > 1), sheets, cutParts, end, details);

            // As many details as the sections leave room for.
            IReadOnlyList<DetailColumn> WithSections(IReadOnlyList<DetailColumn> all)
            {
                int with = 0;
                while (with < all.Count && SheetPacker.Pack([cutParts, Parts(all.Take(with + 1))], area).Count <= sectionSheets)
                    with++;
                return [.. all.Take(with)];
            }

            (IReadOnlyList<DetailColumn>, IReadOnlyList<PackedSheet>) Best(IReadOnlyList<DetailColumn>[] ways)
            {
                (int choice, IReadOnlyList<PackedSheet> packed) = SheetPacker.Best([.. ways.Select(w => new[] { cutParts, Parts(w), tables, noteParts })], area);
                return (ways[choice], packed);
            }

            static SheetPart[] Parts(IEnumerable<DetailColumn> columns) => [.. columns.Select(c => c.Part)];
        }
    }

    /// <summary>One way to fill the sheets.</summary>
    /// <param name="Sections">Parts with the cuts, in their order.</param>
    /// <param name="SectionsEnd">Where the next section would stand in model space.</param>
    private sealed record Packing(FrontSheets Front, IReadOnlyList<PackedSheet> Sheets, SheetPart[] Sections, double SectionsEnd, IReadOnlyList<DetailColumn> Details);
}

/// <summary>A sheet with a stretch of a wall's elevation, or with a plan alone.</summary>
/// <param name="Planned">Null for a plan alone.</param>
/// <param name="Plan">Null where no plan stands on it.</param>
public sealed record ViewSheet(ElevationStrip Strip, PlannedWindow? Planned, PlannedPlan? Plan)
{
    public SheetWindow? Window => Planned?.Window;

    /// <summary>The stretch that it shows: the whole wall where it has a plan alone.</summary>
    public SheetWindow Shown => Window ?? new(Strip.Wall, Strip.Wall.Start, Strip.Wall.End, false, false);
}

/// <summary>The section on the front sheet.</summary>
/// <param name="At">Its upper left corner.</param>
public sealed record TypicalSection(SectionCut Cut, SheetScale Scale, Point2 At, SheetPart Part);
