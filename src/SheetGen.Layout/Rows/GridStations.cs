using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The grid stations of a row's run: n = ceil(width / spacing) columns, all gaps the grid's spacing, the rest shared by the two ends;
/// where an end falls under what it must keep clear, it stands there and the outer gap is shortened. None where the run has no room.
/// Where the section gives its first column, the columns are counted from there, and the last stands within half a spacing of the run's end.
/// </summary>
internal sealed class GridStations
{
    private readonly RowRun _run;
    private readonly double _insetStart;
    private readonly double _insetEnd;
    private readonly double _leastGap;

    public GridStations(RowRun run)
    {
        _run = run;
        Bay bay = run.Bay;
        Square = Staggered = [];
        Along first = run.FirstPlace(bay.Rules.EdgeMin), last = run.LastPlace(bay.Rules.EdgeMin);
        if (first > last)
            (first, last) = (run.FirstPlace(0), run.LastPlace(0));
        if (!bay.HasRoom || run.Width <= 0 || first > last + Tolerance.Rounding)
            return;
        _insetStart = run.Of(first);
        _insetEnd = run.Width - run.Of(last);
        _leastGap = bay.Rules.MinGap / run.Shrink;
        double[] columns = Columns();
        Square = Round(columns);
        Staggered = bay.Section.Pattern == Pattern.Staggered ? Round(BetweenColumns(columns)) : Square;
    }

    /// <summary>The grid stations of a bay's level row at an elevation.</summary>
    public static GridStations At(Bay bay, Elevation elevation) => new(new RowRun(bay, _ => elevation));

    /// <summary>Places of the columns, by distance along the layout line.</summary>
    public IReadOnlyList<Along> Square { get; }

    /// <summary>Places of the rows that are moved by half the spacing; the same as <see cref="Square"/> in a square pattern.</summary>
    public IReadOnlyList<Along> Staggered { get; }

    /// <summary>The places of a grid row, counted from 1: every second row is moved.</summary>
    public IReadOnlyList<Along> OfRow(int row) => row % 2 == 0 ? Staggered : Square;

    private double Spacing => _run.Bay.Section.HorizontalSpacing;

    private double[] Columns()
    {
        double width = _run.Width;
        if (_run.Bay.Section.FirstColumn is { } given && FromFirst(given) is { } counted)
            return counted;
        for (int n = Math.Max(1, (int)Math.Ceiling(width / Spacing - Tolerance.Rounding)); n > 1; n--)
        {
            double rest = (width - (n - 1) * Spacing) / 2;
            double first = Math.Max(rest, _insetStart), last = width - Math.Max(rest, _insetEnd);
            double equal = (last - first) / (n - 1);
            if (equal < _leastGap - Tolerance.Rounding)
                continue;
            var places = new double[n];
            for (int i = 0; i < n; i++)
                places[i] = rest + i * Spacing;
            places[0] = first;
            places[^1] = last;
            if (places[1] - places[0] < _leastGap - Tolerance.Rounding || places[^1] - places[^2] < _leastGap - Tolerance.Rounding)
            {
                for (int i = 0; i < n; i++)
                    places[i] = first + i * equal;
            }
            return places;
        }
        return [Math.Clamp(width / 2, _insetStart, Math.Max(_insetStart, width - _insetEnd))];
    }

    /// <summary>
    /// Columns from a first one on. One further in than half a spacing has a nail at the end before it. Where a gap at an end would be under the
    /// least, the two places beside it share, or all do. Null where even that is too narrow.
    /// </summary>
    private double[]? FromFirst(double given)
    {
        double from = given > Spacing / 2 + Tolerance.Rounding ? given - Spacing : given;
        double first = Math.Max(from, _insetStart), last = _run.Width - _insetEnd;
        int gaps = Math.Max(0, (int)Math.Ceiling((_run.Width - from - Spacing / 2) / Spacing - Tolerance.Rounding));
        if (first > last)
            return null;
        if (gaps == 0)
            return [first];
        double[] places = [.. Enumerable.Range(0, gaps + 1).Select(i => from + i * Spacing)];
        places[0] = first;
        places[^1] = Math.Min(places[^1], last);
        if (places.Length > 2 && places[1] - places[0] < _leastGap - Tolerance.Rounding)
            places[1] = (places[0] + places[2]) / 2;
        if (places.Length > 2 && places[^1] - places[^2] < _leastGap - Tolerance.Rounding)
            places[^2] = (places[^3] + places[^1]) / 2;
        if (!HasRoom(places))
            places = [.. Enumerable.Range(0, gaps + 1).Select(i => first + (last - first) * i / gaps)];
        return HasRoom(places) ? places : null;
    }

    private bool HasRoom(double[] places) => places.Zip(places.Skip(1), (a, b) => b - a).All(gap => gap >= _leastGap - Tolerance.Rounding);

    /// <summary>
    /// Places half way between the columns, and a nail at each end, half way between the run's end and the first column, pulled in as far
    /// as the end's clear distance asks. Where that leaves less than min_gap, the end nail is left out and the next place moves out, if it
    /// then still covers the end; else the places beside the end nail move in.
    /// </summary>
    private double[] BetweenColumns(double[] columns)
    {
        double width = _run.Width;
        List<double> places = [];
        for (int i = 0; i + 1 < columns.Length; i++)
            places.Add((columns[i] + columns[i + 1]) / 2);
        AddEnd(places, Math.Max(_insetStart, columns[0] / 2), _insetStart);
        // The run's other end is its first end seen from there.
        List<double> mirrored = [.. places.Select(p => width - p).Reverse()];
        AddEnd(mirrored, Math.Max(_insetEnd, (width - columns[^1]) / 2), _insetEnd);
        places = [.. mirrored.Select(p => width - p).Reverse()];
        if (places[^1] - places[0] < (places.Count - 1) * _leastGap - Tolerance.Rounding)
            return columns;
        for (int i = 1; i < places.Count; i++)
            places[i] = Math.Max(places[i], places[i - 1] + _leastGap);
        places[^1] = Math.Min(places[^1], width - _insetEnd);
        for (int i = places.Count - 2; i >= 0; i--)
            places[i] = Math.Min(places[i], places[i + 1] - _leastGap);
        return [.. places];
    }

    private void AddEnd(List<double> places, double end, double inset)
    {
        if (places.Count > 0 && places[0] <= Spacing / 2 + Tolerance.Rounding)
            return;
        if (places.Count > 1 && places[0] - end < _leastGap - Tolerance.Rounding)
        {
            double moved = Math.Max(inset, places[1] - Spacing);
            if (moved <= Spacing / 2 + Tolerance.Rounding)
            {
                places[0] = Math.Min(places[0], moved);
                return;
            }
        }
        places.Insert(0, end);
    }

    private List<Along> Round(double[] measures) => [.. measures.Select(m => _run.Bay.Rounded(_run.AlongAt(m)))];
}
