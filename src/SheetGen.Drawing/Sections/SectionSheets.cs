using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Sections;

/// <summary>Lays the cross sections out in cells, sheet by sheet.</summary>
public sealed class SectionSheets(DrawingContext context, Box area, SheetScale widest)
{
    private const double Band = 22;

    /// <summary>Room for words in front of the wall, mm.</summary>
    private const double LeftRoom = 14;

    /// <summary>Room that the words at the nails' tips need beyond the view's own, mm.</summary>
    private double RightRoom(double units) => Math.Max(6, 22 * context.StyleOf(TextRole.Label).Height - SectionView.BeyondTips(context.Print.Unit) / units);

    private readonly List<Primitive> _model = [];
    private readonly List<Finding> _findings = [];

    public IReadOnlyList<Primitive> Model => _model;

    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>The scale of all sections: the largest customary one at which four fit on a sheet.</summary>
    public SheetScale ScaleFor(IReadOnlyList<SectionCut> cuts)
    {
        Box[] extents = [.. cuts.Select(c => new SectionView(context, c, default).Extent)];
        double width = extents.Max(e => e.Width), height = extents.Max(e => e.Height);
        IReadOnlyList<SheetScale> scales = SheetScale.Customary(context.Templates, context.Project.Unit);
        foreach (SheetScale scale in scales)
        {
            if (width / scale.UnitsPerMillimetre + LeftRoom + RightRoom(scale.UnitsPerMillimetre) <= area.Width / 2 && height / scale.UnitsPerMillimetre + Band <= area.Height / 2)
                return scale;
        }
        return scales[^1].Value > widest.Value ? scales[^1] : widest;
    }

    /// <summary>Where each section stands: its page, counted from 0, and its frame on the paper.</summary>
    public IReadOnlyList<(SectionCut Cut, int Page, Box Frame)> Places(IReadOnlyList<SectionCut> cuts, SheetScale scale)
    {
        double units = scale.UnitsPerMillimetre;
        var places = new List<(SectionCut, int, Box)>();
        int page = 0;
        double x = area.Left, y = area.Top, rowHeight = 0;
        foreach (SectionCut cut in cuts)
        {
            Box extent = new SectionView(context, cut, default).Extent;
            double width = extent.Width / units + LeftRoom + RightRoom(units), height = extent.Height / units + 6;
            if (x + width > area.Right && x > area.Left)
            {
                x = area.Left;
                y -= rowHeight + Band;
                rowHeight = 0;
            }
            if (y - height - Band < area.Bottom && y < area.Top)
            {
                page++;
                (x, y, rowHeight) = (area.Left, area.Top, 0);
            }
            places.Add((cut, page, new Box(x, y - height, x + width - 4, y)));
            x += width;
            rowHeight = Math.Max(rowHeight, height);
        }
        return places;
    }

    /// <summary>The sheets: viewports and what stands on the paper.</summary>
    /// <param name="origin">Upper left corner of the sections in model space.</param>
    /// <param name="firstSheet">Name of a sheet by its place in the result, for problems.</param>
    public IReadOnlyList<(IReadOnlyList<Viewport> Viewports, IReadOnlyList<Primitive> Paper)> Compose(
        IReadOnlyList<(SectionCut Cut, int Page, Box Frame)> places, SheetScale scale, Point2 origin, Func<int, string> firstSheet)
    {
        double units = scale.UnitsPerMillimetre, modelX = origin.X;
        var pages = new List<(List<Viewport> Viewports, List<Primitive> Paper)>();
        foreach ((SectionCut cut, int page, Box frame) in places)
        {
            while (pages.Count <= page)
                pages.Add(([], []));
            Box extent = new SectionView(context, cut, default).Extent;
            var at = new Point2(modelX - extent.Left, origin.Y - extent.Top);
            var view = new SectionView(context, cut, at);
            var viewport = new Viewport(frame, at + new Point2(extent.Left + (frame.Width / 2 - LeftRoom) * units, extent.Center.Y), units);
            var labels = new ViewLabels(context, viewport, frame, firstSheet(page), cut.Wall);
            _model.AddRange(view.Draw());
            view.Label(labels, scale.DimensionStyle);
            _model.AddRange(labels.InModel());
            _findings.AddRange(labels.Findings);
            pages[page].Viewports.Add(viewport);
            pages[page].Paper.AddRange(Title(cut, scale, new(frame.Left + 2, frame.Bottom - 6)));
            pages[page].Paper.AddRange(labels.Notes.Select((n, i) =>
                context.Write(LayerRole.Note, TextRole.Label, new(frame.Left + 2 + i * 60, frame.Bottom - 16), FormattableString.Invariant($"({i + 1}) {n}"))));
            modelX += (frame.Width + 24) * units;
        }
        return [.. pages.Select(p => ((IReadOnlyList<Viewport>)p.Viewports, (IReadOnlyList<Primitive>)p.Paper))];
    }

    private IEnumerable<Primitive> Title(SectionCut cut, SheetScale scale, Point2 at)
    {
        yield return context.Write(LayerRole.Title, TextRole.Heading, at, FormattableString.Invariant($"SECTION CUT {cut.Number}, {cut.Wall.Name.ToUpperInvariant()}"));
        yield return new Line(LayerRole.Title, at - new Point2(0, 1.2), at + new Point2(70, -1.2));
        yield return context.Write(LayerRole.Title, TextRole.Label, at - new Point2(0, 2.4 + context.StyleOf(TextRole.Label).Height),
            $"STA {context.Print.Station(cut.Wall.StationOf(cut.Along))}, {cut.Why}. SCALE {scale.Words}");
    }
}
