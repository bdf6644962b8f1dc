using System.Globalization;
using SheetGen.Drawing.Details;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Elevation;

/// <summary>
/// The dimensions from which a wall is set out: at its ends the height and the rows from top to bottom, the rows again at both sides of a
/// section's limit, wall end to first column, the typical spacing once for each run, panel width, embedment and greatest height.
/// </summary>
public sealed class WallDimensions(ElevationView view, string style)
{
    private readonly DrawingContext _context = view.Context;
    private readonly DimensionPlacer _placer = new(view.Context, view.Labels, style);
    private readonly Wall _wall = view.Wall;
    private readonly SheetWindow _window = view.Window;
    private readonly Face _face = new(view.Wall);

    private double Quantum => Lengths.Quantum(_context.Print.Unit);

    private string Say(Phrase phrase, params ReadOnlySpan<string> values) => _context.Say(phrase, values);

    /// <summary>Distances from a wall's end of the chain of its rows and of its height, mm; words stand to the left of their line.</summary>
    private static (double Rows, double Height) Chains(DrawingContext context, bool atLeft)
    {
        double letters = context.StyleOf(TextRole.Dimension).Height, rows = atLeft ? 3 : 3.5 + 1.3 * letters;
        return (rows, rows + 3 + 1.2 * letters);
    }

    /// <summary>Room that the chains need beyond a wall's end, mm.</summary>
    public static double Beyond(DrawingContext context) => 8 + 2.5 * context.StyleOf(TextRole.Dimension).Height;

    /// <summary>Heights and rows beyond the ends of the wall that the window shows.</summary>
    public void Ends()
    {
        foreach (bool atStart in Shown())
        {
            double along = atStart ? _wall.Start : _wall.End, edge = view.At(along, 0).X;
            int away = atStart == view.Sign > 0 ? -1 : 1;
            (double rowsAt, double heightAt) = Chains(_context, away < 0);
            (double top, double bottom) = Limits(along, !atStart);
            bool isGreatest = top - bottom > Highest?.GreatestHeight - Quantum;
            string words = Say(isGreatest ? Phrase.DimGreatest : Phrase.DimHeight, DimensionPlacer.Measured);
            _placer.TryUp(view.At(along, bottom), view.At(along, top), top - bottom, words, [edge + away * heightAt], 1);
            foreach (UpPlace place in Chain(atStart ? _wall.Sections[0] : _wall.Sections[^1], along, !atStart, edge + away * rowsAt))
                _placer.Keep(place);
        }
    }

    /// <summary>What stands within the wall's outline.</summary>
    public void Inside()
    {
        foreach (bool atStart in Shown())
            EndDistances(atStart);
        foreach (var run in NailLabels.RowGroups(view.Nails.Where(n => !n.Row.IsPart), _face).GroupBy(r => (r[0].Section, _face.LegAt(r[0].Along).Index)))
            Typical([.. run]);
        Embedment();
        GreatestHeight();
        SectionLimits();
        PanelWidth();
    }

    /// <summary>The wall's ends that the window shows: true for its start.</summary>
    private IEnumerable<bool> Shown() => new[] { true, false }.Where(s => s ? !_window.Before : !_window.After);

    private (double Top, double Bottom) Limits(double along, bool before) =>
        before ? (_wall.Top.Before(along), _wall.Bottom.Before(along)) : (_wall.Top.At(along), _wall.Bottom.At(along));

    /// <summary>Top, rows and bottom at a place, one dimension from each to the next; those that have room with their line at x.</summary>
    private UpPlace[] Chain(Section section, double along, bool before, double x)
    {
        (double top, double bottom) = Limits(along, before);
        int leg = _face.LegAt(before ? along - Quantum : along + Quantum).Index;
        double[] rows = [.. _context.Layout.Rows
            .Where(r => r.Wall == _wall && r.Section == section && r.Leg == leg && r.GridStations.Count > 0 && Reaches(r, along))
            .Select(r => Lengths.RoundToQuantum(r.IsLevel ? r.Level : top - r.Level, _context.Print.Unit))
            .Where(z => z < top - Quantum && z > bottom + Quantum).Distinct().OrderDescending()];
        if (rows.Length == 0)
            return [];
        (double High, double Low, string? Words)[] spans = [(top, rows[0], null), .. Gaps(rows), (rows[^1], bottom, null)];
        return [.. spans.Select((s, i) => _placer.FindUp(
            view.At(along, s.Low), view.At(along, s.High), s.High - s.Low, s.Words, x, i == 0 ? 1 : i == spans.Length - 1 ? -1 : 0)).OfType<UpPlace>()];
    }

    private static bool Reaches(NailRow row, double along)
    {
        double room = 0.75 * row.Section.HorizontalSpacing + 1e-6;
        return row.GridStations[0] - room <= along && row.GridStations[^1] + room >= along;
    }

    /// <summary>Row to row; where a gap is too small for its words, equal gaps together.</summary>
    private IEnumerable<(double High, double Low, string? Words)> Gaps(double[] rows)
    {
        double units = view.Viewport.UnitsPerMillimetre;
        bool fit = Enumerable.Range(1, rows.Length - 1).All(i => (rows[i - 1] - rows[i]) / units > _placer.WidthOf(DimensionPlacer.Measured, rows[i - 1] - rows[i]) + 0.8);
        for (int i = 0; i + 1 < rows.Length;)
        {
            double gap = rows[i] - rows[i + 1];
            int last = i + 1;
            while (!fit && last + 1 < rows.Length && Math.Abs(rows[last] - rows[last + 1] - gap) < Quantum / 2)
                last++;
            yield return (rows[i], rows[last], last - i > 1 ? Spaces(last - i, gap) : null);
            i = last;
        }
    }

    private string Spaces(int count, double gap) => Say(Phrase.DimSpaces, count.ToString(CultureInfo.InvariantCulture), _placer.Written(gap), DimensionPlacer.Measured);

    /// <summary>The rows on both sides of the limit of two sections, where most of them have room.</summary>
    private void SectionLimits()
    {
        for (int i = 1; i < _wall.Sections.Count; i++)
        {
            double limit = _wall.Sections[i].Start;
            foreach ((Section of, int side) in new[] { (_wall.Sections[i - 1], -1), (_wall.Sections[i], 1) })
            {
                double step = view.Viewport.UnitsPerMillimetre, first = 1.5 * _placer.Height * step;
                UpPlace[] best = [];
                for (double away = first; away < Math.Min(2.5 * of.HorizontalSpacing, of.End - of.Start); away += step)
                {
                    double along = limit + side * away;
                    if (!_window.Has(along))
                        break;
                    UpPlace[] places = Chain(of, along, false, view.At(along, 0).X);
                    if (places.Length > best.Length)
                        best = places;
                }
                foreach (UpPlace place in best)
                    _placer.Keep(place);
            }
        }
    }

    /// <summary>From the wall's end to the first column: once for rows that begin alike.</summary>
    private void EndDistances(bool atStart)
    {
        double along = atStart ? _wall.Start : _wall.End;
        Section section = atStart ? _wall.Sections[0] : _wall.Sections[^1];
        int leg = atStart ? _face.Legs[0].Index : _face.Legs[^1].Index;
        var first = NailLabels.RowGroups(view.Nails.Where(n => n.Section == section && _face.LegAt(n.Along).Index == leg), _face)
            .Select(r => atStart ? r[0] : r[^1]).Where(n => Math.Abs(n.Along - along) <= section.HorizontalSpacing)
            .Select(n => (Nail: n, Distance: Lengths.RoundToQuantum(_face.Distance(Math.Min(along, n.Along), Math.Max(along, n.Along), n.Elevation), _context.Print.Unit)));
        foreach (var alike in first.GroupBy(f => f.Distance).OrderByDescending(g => g.Count()).ThenBy(g => g.Key))
        {
            string? words = alike.Count() > 1 ? Say(Phrase.DimTypical, DimensionPlacer.Measured) : null;
            if (!alike.Any(f => _placer.TryAlong(view.At(along, f.Nail.Elevation), view.At(f.Nail.Along, f.Nail.Elevation), f.Distance, words, null)))
                view.Labels.Note(Say(Phrase.DimEndNote, alike.First().Nail.Mark, _placer.Written(alike.Key)));
        }
    }

    /// <summary>The typical spacing of a run of rows, once: over as many equal gaps as there is room for, else over one.</summary>
    private void Typical(Nail[][] rows)
    {
        var stretches = rows.SelectMany(Stretches).OrderByDescending(s => s.Nails.Length).ThenBy(s => s.Nails[0].Elevation).ToArray();
        foreach ((Nail[] nails, double gap) in stretches.Where(s => s.Nails.Length > 2))
        {
            double length = _face.Distance(nails[0].Along, nails[^1].Along, nails[0].Elevation), each = Lengths.RoundToQuantum(gap, _context.Print.Unit);
            if (Math.Abs(each * (nails.Length - 1) - length) < Quantum / 2 && Try(nails[0], nails[^1], length, Spaces(nails.Length - 1, each)))
                return;
        }
        foreach ((Nail[] nails, double gap) in stretches)
        {
            for (int i = 0; i + 1 < nails.Length; i++)
            {
                if (Try(nails[i], nails[i + 1], gap, Say(Phrase.DimTypical, DimensionPlacer.Measured)))
                    return;
            }
        }
    }

    private bool Try(Nail a, Nail b, double length, string words) =>
        _placer.TryAlong(view.At(a.Along, a.Elevation), view.At(b.Along, b.Elevation), length, words, null);

    /// <summary>Neighbours in a row whose gaps are the typical one and equal.</summary>
    private IEnumerable<(Nail[] Nails, double Gap)> Stretches(Nail[] row)
    {
        double Gap(int i) => _face.Distance(row[i].Along, row[i + 1].Along, row[i].Elevation);
        for (int i = 0; i + 1 < row.Length;)
        {
            double gap = Gap(i);
            int last = i + 1;
            while (last + 1 < row.Length && Math.Abs(Gap(last) - gap) < Quantum / 2)
                last++;
            if (Math.Abs(gap - row[i].Section.HorizontalSpacing) <= NailLabels.TypicalWithin(_context.Print.Unit) + 1e-9)
                yield return (row[i..(last + 1)], gap);
            i = last;
        }
    }

    /// <summary>How high the wall is at most, by the take-off, and the design section in which it is.</summary>
    private SectionQuantities? Highest => _context.Quantities.Sections.Where(s => s.Wall == _wall).MaxBy(s => s.GreatestHeight);

    private void GreatestHeight()
    {
        if (Highest is not SectionQuantities highest)
            return;
        double along = SectionCut.Highest(_context.Quantities, _wall, highest.Section, highest.Section.Start, highest.Section.End);
        bool isEnd = along <= _wall.Start + Quantum || along >= _wall.End - Quantum;
        if (isEnd || !_window.Has(along))
            return;
        (double top, double bottom) = Limits(along, false);
        string words = Say(Phrase.DimGreatest, DimensionPlacer.Measured);
        if (!_placer.TryUp(view.At(along, bottom), view.At(along, top), top - bottom, words, Beside(along, 36), 1))
            InWords(words, top - bottom, along, top, Math.PI / 2);
    }

    /// <summary>A length in words where there is no room for its dimension.</summary>
    private void InWords(string words, double length, double along, double elevation, double toward)
    {
        string written = words.Replace(DimensionPlacer.Measured, _placer.Written(length), StringComparison.Ordinal);
        view.Labels.Label(new LabelRequest([[written]], TextRole.Dimension, view.At(along, elevation), 0.4)
        {
            Layer = LayerRole.Dimension,
            Toward = toward,
            LeaderFrom = 1,
            Note = written + ", " + Say(Phrase.Station, _context.Print.Station(_wall, along)),
        });
    }

    /// <summary>The least embedment below finished grade that the window shows.</summary>
    private void Embedment()
    {
        if (WallDepth.LeastBetween(_wall, _window.Start, _window.End) is not var (along, high, low))
            return;
        if (high - low <= Quantum)
            return;
        string words = Say(Phrase.DimEmbedment, DimensionPlacer.Measured);
        if (!_placer.TryUp(view.At(along, low), view.At(along, high), high - low, words, Beside(along, 20), -1))
            InWords(words, high - low, along, low, -Math.PI / 2);
    }

    /// <summary>Places of a dimension line beside a place of the wall, the nearest first, within the window.</summary>
    private IEnumerable<double> Beside(double along, int most)
    {
        double at = view.At(along, 0).X;
        return new[] { view.Sign, -view.Sign }.SelectMany(s => Enumerable.Range(0, most).Select(i => at + s * (3 + i))).Where(x => x > view.LeftEdge + 1 && x < view.RightEdge - 1);
    }

    private void PanelWidth()
    {
        string words = Say(Phrase.DimPanel, DimensionPlacer.Measured);
        foreach (Panel panel in _context.Quantities.PanelPieces.Where(p => p.Wall == _wall && p.Size == PanelSize.Full && p.Start >= _window.Start && p.End <= _window.End)
            .GroupBy(p => p.Start).Select(g => g.MinBy(p => p.Course)!).OrderBy(p => p.Start))
        {
            double low = Math.Min(_wall.Bottom.At(panel.Start), _wall.Bottom.Before(panel.End));
            if (_placer.TryAlong(view.At(panel.Start, low), new(view.At(panel.End - Quantum / 100, low).X, view.At(panel.Start, low).Y), panel.Width, words, null, 5))
                return;
        }
        if (_context.Quantities.PanelPieces.Any(p => p.Wall == _wall && p.Size == PanelSize.Full))
            view.Labels.Note(words.Replace(DimensionPlacer.Measured, _placer.Written(_wall.Panels!.Width), StringComparison.Ordinal));
    }
}
