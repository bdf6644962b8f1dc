using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Details;

/// <summary>
/// The details as parts of sheets: columns of one width, which are read downwards, each detail as high as its picture with its words needs at a
/// customary scale.
/// </summary>
public static class DetailSheets
{
    /// <summary>Width of a cell in which every word finds room, in heights of a letter.</summary>
    private const double FullWidth = 97;

    /// <summary>Share of its full width below which a cell is not taken.</summary>
    private const double SmallestShare = 0.6;

    /// <summary>Least height of a picture with its words, and the height that it takes where the sheet has room, in heights of a letter.</summary>
    private const double LeastHeight = 34, UsualHeight = 47;

    /// <summary>Most columns of a sheet that are tried.</summary>
    private const int MostColumns = 6;

    /// <summary>How many times smaller a picture may be than its cell allows, so that columns save sheets.</summary>
    private const double MostReduced = 2.5;

    /// <summary>How many times higher than it needs a picture may be where nothing else takes the room.</summary>
    private const double MostGrown = 1.6;

    /// <summary>Share of a sheet that details which stand apart must take; else they stand closer, and leave the rest to others.</summary>
    private const double LeastFilled = 0.7;

    /// <summary>Lines of words below a title for which room is kept.</summary>
    private const int Lines = 4;

    /// <summary>The columns of all details in their order, as high as the sheet but for the last.</summary>
    /// <param name="origin">Upper right corner of the details in model space.</param>
    /// <param name="spreads">True where they may fill sheets of their own; false for as few columns as they need, so that others may stand beside them.</param>
    /// <param name="before">Columns of the first details, which stand otherwise; the others follow them.</param>
    public static IReadOnlyList<DetailColumn> Columns(
        DrawingContext context, IReadOnlyList<DetailView> details, Box area, Point2 origin, bool spreads, IReadOnlyList<DetailColumn>? before = null)
    {
        DetailCell[] stand = [.. (before ?? []).SelectMany(c => c.Cells)];
        DetailView[] others = [.. details.Skip(stand.Length)];
        if (others.Length == 0)
            return before ?? [];
        DetailGrid grid = GridOf(context, area, others, (possible, columns) => GridOf(possible, columns, area.Height, spreads));
        double width = area.Width / grid.Columns;
        DetailCell[] cells = [.. Cells(context, others, grid.Sizes, width, stand.Length, stand.Length == 0 ? origin : new(stand[^1].End, origin.Y))];
        return [.. before ?? [], .. grid.Places.Select((n, i) => Column([.. cells.Skip(grid.Places.Take(i).Sum()).Take(n)], width, i + 1 < grid.Places.Count ? area.Height : null))];
    }

    /// <summary>Each detail as a column of its own, so that they may stand below others.</summary>
    /// <param name="origin">Upper right corner of the details in model space.</param>
    /// <param name="size">From 0 for the least size of each to 1 for the largest.</param>
    public static IReadOnlyList<DetailColumn> Each(DrawingContext context, IReadOnlyList<DetailView> details, Box area, Point2 origin, double size)
    {
        if (details.Count == 0)
            return [];
        DetailGrid grid = GridOf(context, area, details, (possible, columns) =>
            new(columns, [.. possible.Select(p => p[(int)Math.Round(size * (p.Count - 1))])], [.. possible.Select(_ => 1)]));
        double width = area.Width / grid.Columns;
        return [.. Cells(context, details, grid.Sizes, width, 0, origin).Select(c => Column([c], width, null))];
    }

    /// <param name="before">How many details have numbers before these.</param>
    private static IEnumerable<DetailCell> Cells(DrawingContext context, IReadOnlyList<DetailView> details, IReadOnlyList<DetailSize> sizes, double width, int before, Point2 origin)
    {
        double right = origin.X;
        for (int i = 0; i < details.Count; i++)
        {
            (DetailView detail, DetailSize size, int number) = (details[i], sizes[i], before + i + 1);
            Box cell = Cell(context, default, width, size.Height);
            var place = new Point2(right - cell.Width * size.Scale.UnitsPerMillimetre, origin.Y - cell.Height * size.Scale.UnitsPerMillimetre);
            right = place.X - 1.5 * cell.Width * size.Scale.UnitsPerMillimetre;
            yield return new(detail, size.Height, right, (at, refs) => Draw(context, detail, number, Cell(context, at, width, size.Height), size.Scale, place, refs.Sheet));
        }
    }

    /// <param name="height">Height over which the cells are set apart evenly; null for as high as they are.</param>
    private static DetailColumn Column(IReadOnlyList<DetailCell> cells, double width, double? height)
    {
        double high = cells.Sum(c => c.Height), between = Math.Max(0, ((height ?? high) - high) / cells.Count);
        double[] tops = [.. cells.Select((_, i) => cells.Take(i).Sum(c => c.Height + between))];
        return new(cells, new SheetPart(PartKind.Detail, width, height ?? high, (at, refs) =>
            SheetContent.Together([.. cells.Zip(tops, (c, top) => c.Draw(at - new Point2(0, top), refs))])));
    }

    /// <summary>Room for a title of two lines and what stands below it, mm.</summary>
    private static double Band(DrawingContext context) =>
        8 + context.StyleOf(TextRole.Heading).Height * (1 + TextMeasure.LinePitch) + Lines * context.StyleOf(TextRole.Label).Height * TextMeasure.LinePitch;

    private static Box Cell(DrawingContext context, Point2 at, double width, double height) => new(at.X + 2, at.Y - height + Band(context), at.X + width - 4, at.Y - 2);

    private static SheetContent Draw(DrawingContext context, DetailView detail, int number, Box cell, DetailScale scale, Point2 place, string sheet)
    {
        TextStyle style = context.StyleOf(TextRole.Label), head = context.StyleOf(TextRole.Heading);
        var pen = new DetailPen(context, detail, cell, scale, place, sheet);
        detail.Draw(pen);
        Point2 below = new(cell.Left + 2, cell.Bottom - 2 - head.Height);
        string[] title = [.. TextMeasure.Wrap(TitleOf(context, detail, number), cell.Width - 4, head.Height, head)];
        Point2 last = below - new Point2(0, (title.Length - 1) * head.Height * TextMeasure.LinePitch);
        string[] notes =
        [
            context.Say(Phrase.ScaleIs, scale.Words(context)),
            .. pen.HasUnsized ? [context.Say(Phrase.DashedUnsized)] : Array.Empty<string>(),
            .. pen.Remarks,
            .. pen.Notes.Select((n, k) => FormattableString.Invariant($"({k + 1}) {n}")),
        ];
        IEnumerable<string> lines = TextMeasure.Wrap(string.Join("  ", notes), cell.Width - 4, style.Height, style);
        return new SheetContent
        {
            Viewports = [pen.Viewport],
            Model = [.. pen.Model],
            Paper =
            [
                .. title.Select((l, k) => context.Write(LayerRole.Title, TextRole.Heading, below - new Point2(0, k * head.Height * TextMeasure.LinePitch), l)),
                new Line(LayerRole.Title, last - new Point2(0, 1.2), last + new Point2(TextMeasure.Measure(title[^1], head.Height, head), -1.2)),
                .. lines.Select((l, k) => context.Write(LayerRole.Note, TextRole.Label, last - new Point2(0, 2.4 + style.Height + k * style.Height * TextMeasure.LinePitch), l)),
            ],
        };
    }

    private static string TitleOf(DrawingContext context, DetailView detail, int number) =>
        context.Say(Phrase.DetailTitle, number.ToString(CultureInfo.InvariantCulture), detail.Title);

    /// <summary>A scale of a detail, and the height that it takes on the sheet, mm.</summary>
    private sealed record DetailSize(DetailScale Scale, double Height);

    /// <param name="Columns">Of a sheet.</param>
    /// <param name="Places">Details in each column that is taken.</param>
    private sealed record DetailGrid(int Columns, IReadOnlyList<DetailSize> Sizes, IReadOnlyList<int> Places)
    {
        public int Sheets => (Places.Count + Columns - 1) / Columns;

        /// <summary>The share of the height of its columns that the details of each sheet take.</summary>
        public IEnumerable<double> Filled(double room)
        {
            int[] ends = [.. Places.Select((_, i) => Places.Take(i + 1).Sum())];
            return Enumerable.Range(0, ends.Length).Chunk(Columns).Select(c =>
                Sizes.Take(ends[c[^1]]).Skip(ends[c[0]] - Places[c[0]]).Sum(s => s.Height) / (Columns * room));
        }
    }

    /// <summary>Of all numbers of columns: the fewest sheets, then the largest pictures.</summary>
    private static DetailGrid GridOf(DrawingContext context, Box area, IReadOnlyList<DetailView> details, Func<IReadOnlyList<DetailSize>[], int, DetailGrid> gridOf)
    {
        TextStyle head = context.StyleOf(TextRole.Heading), label = context.StyleOf(TextRole.Label);
        double title = details.Select((d, i) => TextMeasure.Measure(TitleOf(context, d, i + 1), head.Height, head)).Max();
        double least = Math.Max(0.6 * title + 8, SmallestShare * FullWidth * label.Height);
        return Enumerable.Range(1, MostColumns).Where(c => c == 1 || area.Width / c >= least)
            .Select(c => gridOf([.. details.Select(d => Sizes(context, d, area.Width / c, area.Height))], c))
            .OrderBy(g => g.Sheets).ThenBy(g => g.Sizes.Sum(s => Math.Log(s.Scale.UnitsPerMillimetre))).First();
    }

    /// <summary>Details at their least size share the columns evenly; then those of each column grow in turn while it has room.</summary>
    private static DetailGrid GridOf(IReadOnlyList<DetailSize>[] possible, int columns, double room, bool spreads)
    {
        double[] least = [.. possible.Select(p => p[0].Height)];
        int fewest = Fewest(least, room), full = (fewest + columns - 1) / columns * columns;
        DetailGrid Spread(int taken)
        {
            int[] places = Evenly(least, taken, room);
            var sizes = new List<DetailSize>();
            foreach (int count in places)
                sizes.AddRange(Grown([.. possible.Skip(sizes.Count).Take(count)], room));
            return new(columns, sizes, places);
        }
        DetailGrid tight = Spread(fewest), spread = Spread(Math.Min(full, least.Length));
        return !spreads || spread.Filled(room).Min() < LeastFilled ? tight : spread;
    }

    /// <summary>The fewest columns for parts of these heights, in order.</summary>
    private static int Fewest(IReadOnlyList<double> heights, double room)
    {
        (int columns, double left) = (0, 0.0);
        foreach (double height in heights)
        {
            if (columns == 0 || height > left + 1e-6)
                (columns, left) = (columns + 1, room);
            left -= height;
        }
        return columns;
    }

    /// <summary>How many parts stand in each of so many columns, in order, where these are filled as evenly as can be: the least sum of the squares of their heights.</summary>
    private static int[] Evenly(IReadOnlyList<double> heights, int columns, double room)
    {
        int n = heights.Count;
        // For so many columns and parts: the least sum, and how many parts stand in the last column then.
        (double Sum, int Last)[,] best = new (double, int)[columns + 1, n + 1];
        for (int c = 0; c <= columns; c++)
        {
            for (int k = 0; k <= n; k++)
            {
                best[c, k] = (c == 0 && k == 0 ? 0 : double.PositiveInfinity, 0);
                double high = 0;
                for (int last = 1; c > 0 && last <= k; last++)
                {
                    high += heights[k - last];
                    if (last > 1 && high > room + 1e-6)
                        break;
                    double sum = best[c - 1, k - last].Sum + high * high;
                    if (sum < best[c, k].Sum)
                        best[c, k] = (sum, last);
                }
            }
        }
        int[] counts = new int[columns];
        for (int c = columns, k = n; c > 0; k -= counts[c - 1], c--)
            counts[c - 1] = best[c, k].Last;
        return counts;
    }

    private static IEnumerable<DetailSize> Grown(IReadOnlyList<DetailSize>[] possible, double room)
    {
        int[] taken = new int[possible.Length];
        double Height(int grown) => possible.Select((p, i) => p[taken[i] + (i == grown ? 1 : 0)].Height).Sum();
        for (bool grew = true; grew;)
        {
            grew = false;
            for (int i = 0; i < possible.Length; i++)
            {
                if (taken[i] + 1 >= possible[i].Count || Height(i) > room + 1e-6)
                    continue;
                taken[i]++;
                grew = true;
            }
        }
        return possible.Select((p, i) => p[taken[i]]);
    }

    /// <summary>What a detail may look like, lowest first: no picture smaller than a share of the largest.</summary>
    private static IReadOnlyList<DetailSize> Sizes(DrawingContext context, DetailView detail, double width, double most)
    {
        double letter = context.StyleOf(TextRole.Label).Height;
        Box cell = Cell(context, default, width, most);
        double wide = cell.Width - 2 * detail.Beside * letter, high = cell.Height - 2 * detail.Above * letter, band = most - cell.Height, usual = detail.Highest * letter;
        IReadOnlyList<DetailScale> all = DetailScale.All(context.Templates, context.Project.Unit);
        bool Fits(DetailScale s, double height) => detail.Extent.Width <= wide * s.UnitsPerMillimetre && detail.Extent.Height <= Math.Min(high, height) * s.UnitsPerMillimetre;
        DetailScale largest = all.Where(s => Fits(s, usual)).Append(all[^1]).First();
        IEnumerable<DetailScale> scales = all.Where(s => s == largest || (Fits(s, MostGrown * usual) && s.UnitsPerMillimetre <= MostReduced * largest.UnitsPerMillimetre));
        DetailSize[] sizes = [.. scales.SelectMany(s => new[] { LeastHeight, UsualHeight }.Select(least =>
            new DetailSize(s, Math.Min(most, Math.Max(detail.Extent.Height / s.UnitsPerMillimetre + 2 * detail.Above * letter, least * letter) + band))))];
        // Of one height the largest picture.
        return [.. sizes.GroupBy(s => Math.Round(s.Height, 6)).Select(g => g.MinBy(s => s.Scale.UnitsPerMillimetre)!).OrderBy(s => s.Height)];
    }
}

/// <summary>A detail with the height that it takes in its column, mm; it is drawn with its upper left corner at a point.</summary>
/// <param name="End">Where the next one may begin in model space.</param>
public sealed record DetailCell(DetailView Detail, double Height, double End, Func<Point2, SheetRefs, SheetContent> Draw);

/// <summary>A column of details as a part of sheets.</summary>
public sealed record DetailColumn(IReadOnlyList<DetailCell> Cells, SheetPart Part);
