using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Details;

/// <summary>The details as parts of sheets: columns of one width, rows as high as their highest picture, each with a view into model space at a customary scale.</summary>
public static class DetailSheets
{
    /// <summary>Width of a cell in which every word finds room, in heights of a letter.</summary>
    private const double FullWidth = 97;

    /// <summary>Share of its full width below which a cell is not taken.</summary>
    private const double SmallestShare = 0.6;

    /// <summary>Least height of a picture with its words where the sheet has room, in heights of a letter.</summary>
    private const double LeastHeight = 47;

    /// <summary>Most columns, and most rows of a sheet that are tried.</summary>
    private const int MostCells = 6;

    /// <summary>How many times smaller a picture may be than the width of its cell allows, so that rows save sheets.</summary>
    private const double MostReduced = 2.5;

    /// <summary>Lines of words below a title for which room is kept.</summary>
    private const int Lines = 4;

    /// <summary>A part for each detail, in their order.</summary>
    /// <param name="origin">Upper right corner of the details in model space.</param>
    public static IEnumerable<SheetPart> Parts(DrawingContext context, IReadOnlyList<DetailView> details, Box area, Point2 origin)
    {
        if (details.Count == 0)
            yield break;
        DetailGrid grid = Grid(context, area, details);
        double width = area.Width / grid.Columns, right = origin.X;
        for (int i = 0; i < details.Count; i++)
        {
            (DetailView detail, int number, double height) = (details[i], i + 1, grid.Heights[i / grid.Columns]);
            DetailScale scale = grid.Scales[i];
            Box cell = Cell(context, default, width, height);
            var place = new Point2(right - cell.Width * scale.UnitsPerMillimetre, origin.Y - cell.Height * scale.UnitsPerMillimetre);
            right = place.X - 1.5 * cell.Width * scale.UnitsPerMillimetre;
            yield return new SheetPart(PartKind.Detail, width, height, (at, refs) => Draw(context, detail, number, Cell(context, at, width, height), scale, place, refs.Sheet));
        }
    }

    /// <summary>Room for a title of two lines and what stands below it, mm.</summary>
    private static double Band(DrawingContext context) =>
        8 + context.StyleOf(TextRole.Heading).Height * (1 + TextMeasure.LinePitch) + Lines * context.StyleOf(TextRole.Label).Height * TextMeasure.LinePitch;

    private static Box Cell(DrawingContext context, Point2 at, double width, double height) => new(at.X + 2, at.Y - height + Band(context), at.X + width - 4, at.Y - 2);

    /// <summary>The largest customary scale at which a detail leaves room for its words.</summary>
    private static DetailScale ScaleFor(DrawingContext context, DetailView detail, Box cell)
    {
        double letter = context.StyleOf(TextRole.Label).Height, wide = cell.Width - 2 * detail.Beside * letter, high = Math.Min(cell.Height - 2 * detail.Above * letter, detail.Highest * letter);
        IReadOnlyList<DetailScale> scales = DetailScale.All(context.Templates, context.Project.Unit);
        return scales.Where(s => detail.Extent.Width <= wide * s.UnitsPerMillimetre && detail.Extent.Height <= high * s.UnitsPerMillimetre)
            .Append(scales[^1]).First();
    }

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

    /// <summary>Scales of the details, and the heights of the rows that they stand in.</summary>
    private sealed record DetailGrid(int Columns, IReadOnlyList<DetailScale> Scales, IReadOnlyList<double> Heights);

    /// <summary>A row of details at the largest scales that a limit of its height allows.</summary>
    private sealed record DetailRow(IReadOnlyList<DetailScale> Scales, double Height);

    /// <summary>Of all numbers of columns: the fewest sheets, then the largest pictures.</summary>
    private static DetailGrid Grid(DrawingContext context, Box area, IReadOnlyList<DetailView> details)
    {
        TextStyle head = context.StyleOf(TextRole.Heading), label = context.StyleOf(TextRole.Label);
        double title = details.Select((d, i) => TextMeasure.Measure(TitleOf(context, d, i + 1), head.Height, head)).Max();
        double least = Math.Max(0.6 * title + 8, SmallestShare * FullWidth * label.Height);
        return Enumerable.Range(1, MostCells).Where(c => c == 1 || area.Width / c >= least)
            .Select(c => Grid(c, [.. details.Chunk(c).Select(row => Heights(context, row, area.Width / c, area.Height))], area.Height))
            .OrderBy(g => Sheets(g.Heights, area.Height)).ThenBy(g => g.Scales.Sum(s => Math.Log(s.UnitsPerMillimetre))).First();
    }

    /// <summary>Rows begin at their least height, and grow in turn while that takes no further sheet.</summary>
    private static DetailGrid Grid(int columns, DetailRow[][] rows, double room)
    {
        int[] taken = new int[rows.Length];
        double[] HeightsWith(int grown) => [.. rows.Select((r, i) => r[taken[i] + (i == grown ? 1 : 0)].Height)];
        int sheets = Sheets(HeightsWith(-1), room);
        for (bool grew = true; grew;)
        {
            grew = false;
            for (int i = 0; i < rows.Length; i++)
            {
                if (taken[i] + 1 >= rows[i].Length || Sheets(HeightsWith(i), room) > sheets)
                    continue;
                taken[i]++;
                grew = true;
            }
        }
        return new(columns, [.. rows.SelectMany((r, i) => r[taken[i]].Scales)], HeightsWith(-1));
    }

    /// <summary>What a row may look like, lowest first: no picture smaller than a share of what the width of its cell allows.</summary>
    private static DetailRow[] Heights(DrawingContext context, IReadOnlyList<DetailView> details, double width, double most)
    {
        DetailRow[] all = [.. Enumerable.Range(1, MostCells).Select(r => Row(context, details, width, most / r)).Reverse()];
        return [.. all.Where(row => row.Scales.Zip(all[^1].Scales).All(s => s.First.UnitsPerMillimetre <= MostReduced * s.Second.UnitsPerMillimetre)).DistinctBy(row => row.Height).OrderBy(row => row.Height)];
    }

    /// <summary>As high as its pictures with their words need.</summary>
    private static DetailRow Row(DrawingContext context, IReadOnlyList<DetailView> details, double width, double most)
    {
        double letter = context.StyleOf(TextRole.Label).Height;
        Box cell = Cell(context, default, width, most);
        DetailScale[] scales = [.. details.Select(d => ScaleFor(context, d, cell))];
        double band = most - cell.Height, needed = details.Select((d, i) => d.Extent.Height / scales[i].UnitsPerMillimetre + 2 * d.Above * letter).Max();
        return new(scales, Math.Min(most, Math.Max(needed, LeastHeight * letter) + band));
    }

    private static int Sheets(IReadOnlyList<double> heights, double room)
    {
        (int sheets, double left) = (0, 0.0);
        foreach (double height in heights)
        {
            if (height > left + 1e-6)
                (sheets, left) = (sheets + 1, room);
            left -= height;
        }
        return sheets;
    }
}
