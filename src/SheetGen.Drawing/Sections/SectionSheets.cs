using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sections;

/// <summary>The cross sections as parts of sheets: each with a view into model space, its title and its words.</summary>
/// <param name="origin">Upper left corner of the sections in model space.</param>
public sealed class SectionSheets(DrawingContext context, Point2 origin)
{
    /// <summary>Rows nearer together than so many letters leave no room for the words of a nail.</summary>
    private const double RowPitch = 4;

    /// <summary>Upper left corner of the sections in model space.</summary>
    public Point2 Origin => origin;

    private double Label => context.StyleOf(TextRole.Label).Height;

    private double BubbleRadius => 3.4 * Label;

    /// <summary>Room for the title below a view, mm.</summary>
    private double Band => 2 * BubbleRadius + 4 * Label * TextMeasure.LinePitch;

    /// <summary>Room in front of the wall that its words and two chains of dimensions need beyond the view's own, mm.</summary>
    private double LeftRoom(SectionCut cut, double units) =>
        Math.Max(8, SectionDimensions.RowsAt(context) + 4 + 10.5 * Label + (ViewOf(cut).Extent.Left - SectionView.FrontOf(context.Print.Unit)) / units);

    /// <summary>Room that the words at the nails' tips need beyond the view's own, mm.</summary>
    private double RightRoom(SectionCut cut, double units)
    {
        SectionView view = ViewOf(cut);
        return view.Nails.Select(n => (view.TipOf(n).X - view.Extent.Right) / units + WidthAtTip(view, n) + 2 * Label).Append(6).Max();
    }

    private double WidthAtTip(SectionView view, Nail nail)
    {
        TextStyle style = context.StyleOf(view.IsStopped(nail) ? TextRole.Callout : TextRole.Label);
        (string name, string data) = SectionLabels.WordsOf(context, view, nail);
        return Math.Max(TextMeasure.Measure(name, style.Height, style), TextMeasure.Measure(data, style.Height, style));
    }

    private readonly Dictionary<SectionCut, SectionView> _views = [];

    /// <summary>A section by itself, at the origin.</summary>
    private SectionView ViewOf(SectionCut cut)
    {
        if (!_views.TryGetValue(cut, out SectionView? view))
            _views[cut] = view = new SectionView(context, cut, default);
        return view;
    }

    private static IReadOnlyList<SheetScale> Scales(DrawingContext context) => SheetScale.OfSections(context.Templates, context.Project.Unit);

    /// <summary>Room of a section with its title, and of the plans below it, mm.</summary>
    private (double Width, double Height, double Below) SizeOf(SectionCut cut, SectionForm form)
    {
        Box extent = ViewOf(cut).Extent;
        double units = form.Scale.UnitsPerMillimetre;
        double wide = Math.Max(extent.Width / units + LeftRoom(cut, units) + RightRoom(cut, units), TitleWidth(cut)), plans = PlansWidth(cut, form);
        return (form.PlansBelow ? Math.Max(wide, plans) + 6 : wide + 6 + plans, extent.Height / units + Band, PlansHeight(cut, form));
    }

    private bool Fits(SectionCut cut, SectionForm form, Box room) => SizeOf(cut, form) is var (width, height, below) && width <= room.Width && height + below <= room.Height;

    /// <summary>Width of the bubble and the title below a section, of the longer of its two titles, mm.</summary>
    private double TitleWidth(SectionCut cut)
    {
        TextStyle head = context.StyleOf(TextRole.Heading);
        return 2 * BubbleRadius + 4 + new[] { false, true }.Max(t => TextMeasure.Measure(TitleOf(cut, t), head.Height, head));
    }

    private string TitleOf(SectionCut cut, bool isTypical) => context.Say(
        isTypical ? Phrase.TypicalSectionTitle : Phrase.SectionTitle, cut.Number.ToString(CultureInfo.InvariantCulture), cut.Wall.Name.ToUpperInvariant());

    private readonly Dictionary<SectionCut, IReadOnlyList<PassingPlan>> _plans = [];

    private IReadOnlyList<PassingPlan> PlansOf(SectionCut cut)
    {
        if (!_plans.TryGetValue(cut, out IReadOnlyList<PassingPlan>? plans))
            _plans[cut] = plans = PassingPlan.All(context, ViewOf(cut));
        return plans;
    }

    /// <summary>Room of a plan with a section, mm, and its scale: the largest customary one at which it is no higher than the section and takes no more than a share of a sheet.</summary>
    private (double Width, SheetScale Scale) RoomOf(PassingPlan plan, SectionCut cut, SectionForm form)
    {
        SheetScale ofSection = form.Scale;
        double high = ViewOf(cut).Extent.Height / ofSection.UnitsPerMillimetre - 2 * PlanMargin * Label;
        SheetScale scale = Scales(context).Where(s => s.Value <= ofSection.Value).FirstOrDefault(
            s => plan.Extent.Height / s.UnitsPerMillimetre <= high && plan.Extent.Width / s.UnitsPerMillimetre <= PlanWidest * Label, ofSection);
        double wide = plan.Extent.Width / scale.UnitsPerMillimetre + 2 * PlanMargin * Label;
        TextStyle style = context.StyleOf(TextRole.Label);
        // Below a section there is room for its title in one line.
        return (form.PlansBelow ? Math.Max(wide, TextMeasure.Measure(plan.Title, style.Height, style) + 2 * Label + 6) : wide, scale);
    }

    /// <summary>Room for words about a plan, the greatest width of its lines and the room for words below it, in heights of a letter.</summary>
    private const double PlanMargin = 5, PlanWidest = 16, PlanWords = 7;

    /// <summary>Room of all plans of a section in a row, mm.</summary>
    private double PlansWidth(SectionCut cut, SectionForm form) => PlansOf(cut).Sum(p => RoomOf(p, cut, form).Width);

    /// <summary>Room of the plans below a section, mm; none where they stand beside it.</summary>
    private double PlansHeight(SectionCut cut, SectionForm form) => form.PlansBelow
        ? PlansOf(cut).Select(p => HeightOf(p, RoomOf(p, cut, form).Scale) + PlanWords * Label).DefaultIfEmpty(0).Max()
        : 0;

    private double HeightOf(PassingPlan plan, SheetScale scale) => plan.Extent.Height / scale.UnitsPerMillimetre + PlanMargin * Label;

    /// <summary>
    /// The sections on as few sheets of an area as they take: in order, as many on each as on the others where that can be, and each sheet at
    /// the largest customary scale at which its sections fit. Their plans stand below them where that saves a sheet, else beside them.
    /// </summary>
    public IReadOnlyList<SectionGroup> Groups(IReadOnlyList<SectionCut> cuts, Box area, SheetScale ofElevation) =>
        cuts.Count == 0 ? [] : new[] { false, true }.Select(below => Groups(cuts, area, ofElevation, below)).MinBy(groups => groups.Length)!;

    private SectionGroup[] Groups(IReadOnlyList<SectionCut> cuts, Box area, SheetScale ofElevation, bool plansBelow)
    {
        SectionForm common = new(ScaleFor(cuts, area, ofElevation, plansBelow), plansBelow);
        int[] counts = [.. SheetPacker.Pack([Outlines(cuts, common)], area).Select(s => s.Parts.Count)];
        int[] even = [.. Enumerable.Range(0, counts.Length).Select(i => (cuts.Count + counts.Length - 1 - i) / counts.Length)];
        SectionCut[][] Cut(int[] sizes) => [.. sizes.Select((n, i) => cuts.Skip(sizes.Take(i).Sum()).Take(n).ToArray())];
        SectionCut[][] groups = Cut(even).All(g => SheetsAt(g, area, common) == 1) ? Cut(even) : Cut(counts);
        return [.. groups.Select(g => new SectionGroup(
            g, Scales(context).Where(s => s.Value < common.Scale.Value).Select(s => common with { Scale = s }).Where(f => SheetsAt(g, area, f) == 1).Append(common).First()))];
    }

    /// <summary>Sections of one height, so that they stand in rows with their titles in line.</summary>
    private SheetPart[] Outlines(IReadOnlyList<SectionCut> cuts, SectionForm form)
    {
        (double Width, double Height, double Below)[] sizes = [.. cuts.Select(c => SizeOf(c, form))];
        double high = sizes.Max(s => s.Height) + sizes.Max(s => s.Below);
        return [.. sizes.Select(s => new SheetPart(PartKind.Section, s.Width, high, (_, _) => SheetContent.Empty))];
    }

    /// <summary>How many sheets sections take in a form; null where they do not fit or their words have no room.</summary>
    private int? SheetsAt(IReadOnlyList<SectionCut> cuts, Box area, SectionForm form)
    {
        SheetPart[] parts = Outlines(cuts, form);
        bool isTooLarge = parts.Any(p => p.Width > area.Width || p.Height > area.Height);
        bool isTooSmall = cuts.Any(c => c.Section.VerticalSpacing / form.Scale.UnitsPerMillimetre < RowPitch * Label);
        return isTooLarge || isTooSmall ? null : SheetPacker.Pack([parts], area).Count;
    }

    /// <summary>True where the two lines at every nail's tip have room between rows.</summary>
    private bool HoldsWords(SectionCut cut, SheetScale scale) =>
        cut.Section.VerticalSpacing / scale.UnitsPerMillimetre > Label * (1 + TextMeasure.LinePitch + TextMeasure.Descent) + 2 * LabelPlacer.Margin;

    /// <summary>The scale of sections on sheets of an area: the largest customary one at which they take no more sheets than at a coarse scale.</summary>
    private SheetScale ScaleFor(IReadOnlyList<SectionCut> cuts, Box area, SheetScale ofElevation, bool plansBelow)
    {
        double usual = context.Project.Unit == LengthUnit.Metre ? 100 : 10;
        SheetScale coarse = ofElevation.Value > usual ? ofElevation : ofElevation with { Value = usual };
        IReadOnlyList<SheetScale> scales = [.. Scales(context).Where(s => s.Value <= coarse.Value).Append(coarse).Distinct()];
        (SheetScale Scale, int Sheets)[] possible = [.. scales.Select(s => (s, SheetsAt(cuts, area, new(s, plansBelow)))).Where(p => p.Item2 is not null).Select(p => (p.s, p.Item2!.Value))];
        if (possible.Length == 0)
            return Scales(context).Cast<SheetScale?>().FirstOrDefault(s => cuts.All(c => Fits(c, new(s!.Value, plansBelow), area))) ?? Scales(context)[^1];
        int fewest = possible.Min(p => p.Sheets);
        return possible.First(p => p.Sheets == fewest).Scale;
    }

    /// <summary>The forms in which a section fits a room and its words have room, with the room that it takes, mm; the largest scale first.</summary>
    public IEnumerable<(SectionForm Form, double Width, double Height)> FormsIn(SectionCut cut, Box room) => Scales(context).Where(s => HoldsWords(cut, s))
        .SelectMany(s => new SectionForm[] { new(s, false), new(s, true) }).Where(f => Fits(cut, f, room))
        .Select(f => (f, SizeOf(cut, f).Width, SizeOf(cut, f).Height + SizeOf(cut, f).Below));

    /// <summary>Groups of sections as parts of sheets, those of a group of one height so that they stand in rows.</summary>
    /// <returns>The parts, and where the next may begin in model space.</returns>
    public (SheetPart[] Parts, double End) PartsOf(IReadOnlyList<SectionGroup> groups)
    {
        var parts = new List<SheetPart>();
        double end = origin.X;
        foreach (SectionGroup group in groups)
        {
            double high = group.Cuts.Max(c => SizeOf(c, group.Form).Height), below = group.Cuts.Max(c => SizeOf(c, group.Form).Below);
            foreach (SectionCut cut in group.Cuts)
            {
                (SheetPart part, end) = PartOf(cut, group.Form, false, end, below);
                parts.Add(part with { Height = high + below, Draw = (at, refs) => part.Draw(at - new Point2(0, high + below - part.Height), refs) });
            }
        }
        return ([.. parts], end);
    }

    /// <summary>A section as a part of a sheet.</summary>
    /// <param name="isTypical">True where it stands for the whole wall.</param>
    /// <param name="left">Where it begins in model space.</param>
    /// <param name="below">Room of the plans below the sections of its sheet, mm, so that their titles stand in line; 0 for those of its own alone.</param>
    /// <returns>The part, and where the next may begin in model space.</returns>
    public (SheetPart Part, double End) PartOf(SectionCut cut, SectionForm form, bool isTypical, double left, double below = 0)
    {
        SheetScale scale = form.Scale;
        (double width, double height, double own) = SizeOf(cut, form);
        below = Math.Max(below, own);
        double beside = form.PlansBelow ? 0 : PlansWidth(cut, form), units = scale.UnitsPerMillimetre, next = left + (width - beside + 100) * units;
        var plans = new List<(PassingPlan Plan, double Width, SheetScale Scale, Point2 Place)>();
        foreach (PassingPlan plan in PlansOf(cut))
        {
            (double wide, SheetScale planScale) = RoomOf(plan, cut, form);
            plans.Add((plan, wide, planScale, new(next, origin.Y - 100 * planScale.UnitsPerMillimetre)));
            next += (wide + 100) * planScale.UnitsPerMillimetre;
        }
        return (new SheetPart(PartKind.Section, width, height + below, (at, refs) =>
        {
            string sheet = refs.Sheet;
            var frame = new Box(at.X, at.Y - height + Band, at.X + width - beside - 6, at.Y);
            Box extent = ViewOf(cut).Extent;
            var place = new Point2(left + LeftRoom(cut, units) * units - extent.Left, origin.Y - extent.Top);
            var view = new SectionView(context, cut, place);
            var viewport = new Viewport(frame, place + new Point2(extent.Left + (frame.Width / 2 - LeftRoom(cut, units)) * units, extent.Center.Y), units);
            var labels = new ViewLabels(context, viewport, frame, sheet, cut.Wall);
            new SectionLabels(context, view, labels, scale.DimensionStyle).Write();
            IReadOnlyList<DetailPlace> pointedAt = SectionCallouts.Write(context, view, labels, refs);
            string details = SectionCallouts.Words(context, SectionCallouts.Of(view, refs).Except(pointedAt));
            var section = new SheetContent
            {
                Viewports = [viewport],
                Model = [.. view.Draw(), .. labels.InModel()],
                Findings = labels.Findings,
                Paper = [.. Title(cut, view, scale, sheet, frame, details, [.. labels.Notes.Select((n, i) => FormattableString.Invariant($"({i + 1}) {n}")), .. labels.Told], isTypical)],
            };
            double first = form.PlansBelow ? frame.Left : frame.Right + 6;
            double[] lefts = [.. plans.Select((_, i) => first + plans.Take(i).Sum(p => p.Width))];
            double foot = form.PlansBelow ? at.Y - height - below + PlanWords * Label : frame.Bottom;
            return SheetContent.Together([section, .. plans.Zip(lefts, (p, x) => DrawPlan(p.Plan, p.Scale, p.Place, new(x, foot, x + p.Width - 6, Math.Min(at.Y, foot + HeightOf(p.Plan, p.Scale))), sheet))]);
        })
        { Scale = scale }, next);
    }

    /// <summary>The plan of a nail that passes a shaft, with its title below.</summary>
    private SheetContent DrawPlan(PassingPlan plan, SheetScale scale, Point2 place, Box frame, string sheet)
    {
        var labels = new ViewLabels(context, new Viewport(frame, place + plan.Extent.Center, scale.UnitsPerMillimetre), frame, sheet, plan.Nail.Wall);
        plan.Write(labels, place, scale.DimensionStyle);
        TextStyle style = context.StyleOf(TextRole.Label);
        string[] words = [plan.Title, context.Say(Phrase.ScaleIs, scale.Words(context)), .. labels.Notes.Select((n, i) => FormattableString.Invariant($"({i + 1}) {n}"))];
        return new SheetContent
        {
            Viewports = [labels.Viewport],
            Model = [.. plan.Draw(place), .. labels.InModel()],
            Findings = labels.Findings,
            Paper = [.. words.SelectMany(w => TextMeasure.Wrap(w, frame.Width, style.Height, style)).Select((l, i) =>
                context.Write(LayerRole.Title, TextRole.Label, new(frame.Left, frame.Bottom - 2 - style.Height - i * style.Height * TextMeasure.LinePitch), l))],
        };
    }

    private IEnumerable<Primitive> Title(
        SectionCut cut, SectionView view, SheetScale scale, string sheet, Box frame, string details, IReadOnlyList<string> notes, bool isTypical)
    {
        string number = cut.Number.ToString(CultureInfo.InvariantCulture);
        Point2 middle = new(frame.Left + BubbleRadius + 1, frame.Bottom - BubbleRadius - 1);
        foreach (Primitive p in Bubble.Draw(context, middle, BubbleRadius, number, sheet))
            yield return p;
        string title = TitleOf(cut, isTypical);
        TextStyle head = context.StyleOf(TextRole.Heading), style = context.StyleOf(TextRole.Label);
        Point2 at = new(middle.X + BubbleRadius + 3, frame.Bottom - 2 - head.Height);
        double right = Math.Min(frame.Right, at.X + TextMeasure.Measure(title, head.Height, head));
        yield return context.Write(LayerRole.Title, TextRole.Heading, at, title);
        yield return new Line(LayerRole.Title, at - new Point2(0, 1.2), new(right, at.Y - 1.2));
        string[] words =
        [
            context.Say(Phrase.SectionPlace, context.Say(Phrase.Station, context.Print.Station(cut.Wall, cut.Along)), cut.Why, scale.Words(context))
                + ". " + context.Say(Phrase.SectionNails, context.Print.Short(view.Near)),
            details,
            string.Join("  ", notes),
        ];
        IEnumerable<string> lines = words.Where(w => w.Length > 0).SelectMany(w => TextMeasure.Wrap(w, frame.Right - at.X, style.Height, style));
        foreach ((string line, int i) in lines.Select((l, i) => (l, i)))
            yield return context.Write(LayerRole.Title, TextRole.Label, at - new Point2(0, 2.4 + style.Height + i * style.Height * TextMeasure.LinePitch), line);
    }
}

/// <summary>How a section stands on a sheet: its scale, and whether the plans of nails that pass shafts stand below it or beside it.</summary>
public readonly record struct SectionForm(SheetScale Scale, bool PlansBelow);

/// <summary>Sections that stand on one sheet, in one form.</summary>
public sealed record SectionGroup(IReadOnlyList<SectionCut> Cuts, SectionForm Form);
