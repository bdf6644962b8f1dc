using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The grid stations of a bay: n = ceil(width / spacing) columns, all gaps the grid's spacing, the rest shared by the two ends;
/// where an end falls under what it must keep clear, it stands there and the outer gap is shortened.
/// </summary>
public sealed class GridStations
{
    private readonly Bay _bay;
    private readonly BayMeasure _measure;
    private readonly double _insetStart;
    private readonly double _insetEnd;

    public GridStations(Bay bay)
    {
        _bay = bay;
        _measure = new BayMeasure(bay);
        _insetStart = _measure.Of(bay.Start + GridInset(bay.StartEnd));
        _insetEnd = _measure.Total - _measure.Of(bay.End - GridInset(bay.EndEnd));
        double[] columns = Columns();
        Square = Round(columns);
        Staggered = bay.Section.Pattern == Pattern.Staggered ? Round(BetweenColumns(columns)) : Square;
    }

    /// <summary>Places of the columns, by distance along the layout line.</summary>
    public IReadOnlyList<double> Square { get; }

    /// <summary>Places of the rows that are moved by half the spacing; the same as <see cref="Square"/> in a square pattern.</summary>
    public IReadOnlyList<double> Staggered { get; }

    /// <summary>The places of a grid row, counted from 1: every second row is moved.</summary>
    public IReadOnlyList<double> OfRow(int row) => row % 2 == 0 ? Staggered : Square;

    private double GridInset(BayEnd end) =>
        Math.Max(0, end.GreatestCut + Math.Max(end.Clear, _bay.Rules.EdgeMin));

    private double[] Columns()
    {
        double width = _measure.Total, spacing = _bay.Section.HorizontalSpacing, least = _bay.Rules.MinGap;
        for (int n = Math.Max(1, (int)Math.Ceiling(width / spacing - 1e-9)); n > 1; n--)
        {
            double rest = (width - (n - 1) * spacing) / 2;
            double first = Math.Max(rest, _insetStart), last = width - Math.Max(rest, _insetEnd);
            double equal = (last - first) / (n - 1);
            if (equal < least - 1e-9)
                continue;
            var places = new double[n];
            for (int i = 0; i < n; i++)
                places[i] = rest + i * spacing;
            places[0] = first;
            places[^1] = last;
            if (places[1] - places[0] < least - 1e-9 || places[^1] - places[^2] < least - 1e-9)
            {
                for (int i = 0; i < n; i++)
                    places[i] = first + i * equal;
            }
            return places;
        }
        return [OneNail(width)];
    }

    private double OneNail(double width)
    {
        double low = _insetStart, high = width - _insetEnd;
        return low > high ? width / 2 : Math.Clamp(width / 2, low, high);
    }

    /// <summary>
    /// Places half a spacing beside the columns, and a nail at each end (else the ends lie further from a nail than half the
    /// spacing), pulled in as far as the end's clear distance and min_gap ask.
    /// </summary>
    private double[] BetweenColumns(double[] columns)
    {
        double width = _measure.Total, spacing = _bay.Section.HorizontalSpacing, least = _bay.Rules.MinGap;
        var places = new List<double>();
        for (int i = 0; i + 1 < columns.Length; i++)
            places.Add((columns[i] + columns[i + 1]) / 2);
        if (places.Count == 0 || places[0] > spacing / 2 + 1e-9)
            places.Insert(0, _insetStart);
        if (width - places[^1] > spacing / 2 + 1e-9)
            places.Add(width - _insetEnd);
        if (places[^1] - places[0] < (places.Count - 1) * least - 1e-9)
            return columns;
        for (int i = 1; i < places.Count; i++)
            places[i] = Math.Max(places[i], places[i - 1] + least);
        places[^1] = Math.Min(places[^1], width - _insetEnd);
        for (int i = places.Count - 2; i >= 0; i--)
            places[i] = Math.Min(places[i], places[i + 1] - least);
        return [.. places];
    }

    private List<double> Round(double[] measures)
    {
        LayoutLine line = _bay.Wall.LayoutLine;
        return [.. measures.Select(m => Rounded(line, _measure.AlongAt(m), _bay.Unit))];
    }

    /// <summary>The place whose printed station is rounded to the quantum.</summary>
    public static double Rounded(LayoutLine line, double along, LengthUnit unit) =>
        line.AlongOf(Lengths.RoundToQuantum(line.StationOf(along), unit));
}
