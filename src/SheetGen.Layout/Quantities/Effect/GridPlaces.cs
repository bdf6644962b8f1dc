using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>A place of the grid, before anything was moved.</summary>
/// <param name="Key">Unique in its wall.</param>
/// <param name="Index">Place in its row, from 0.</param>
internal sealed record GridPlace(string Key, NailRow Row, int Index, Head At);

/// <summary>The grid of a wall, and which of its places each nail stands for.</summary>
internal sealed class GridPlaces
{
    private readonly Dictionary<string, GridPlace> _ofNail = [];

    public GridPlaces(Wall wall, NailLayout layout, IReadOnlyList<Nail> nails, LengthUnit unit)
    {
        var places = new List<GridPlace>();
        foreach (NailRow row in layout.Rows.Where(r => r.Wall == wall))
        {
            for (int i = 0; i < row.GridStations.Count; i++)
            {
                double along = row.GridStations[i];
                places.Add(new GridPlace(
                    FormattableString.Invariant($"grid {places.Count}"), row, i, new Head(new Along(along), new Elevation(row.ElevationAt(along)).Rounded(unit))));
            }
        }
        double slack = 2 * Lengths.Quantum(unit);
        var byRow = places.ToLookup(p => (p.Row.Section, p.Row.Number));
        var taken = new HashSet<string>();
        foreach (Nail nail in nails.Where(n => !n.IsAdded))
        {
            var head = Head.Of(nail);
            GridPlace? place = byRow[(nail.Section, nail.Row)]
                .Where(p => !taken.Contains(p.Key) && Math.Abs(wall.StationOf(p.At.Along) - new Station(nail.GridStation)) <= slack)
                .MinBy(p => Math.Abs(p.At.Along - head.Along));
            if (place is null)
                continue;
            taken.Add(place.Key);
            // What did not move keeps its own rounded figures, so that nothing is a change that is none.
            bool stands = Math.Abs(place.At.Along - head.Along) <= slack && Math.Abs(place.At.Elevation - head.Elevation) <= slack;
            _ofNail[nail.Mark] = stands ? place with { At = head } : place;
        }
        Dictionary<string, GridPlace> standing = _ofNail.Values.ToDictionary(p => p.Key);
        All = [.. places.Select(p => standing.GetValueOrDefault(p.Key, p))];
        Empty = [.. All.Where(p => !taken.Contains(p.Key))];
    }

    public IReadOnlyList<GridPlace> All { get; }

    /// <summary>Places for which no nail stands.</summary>
    public IReadOnlyList<GridPlace> Empty { get; }

    /// <summary>The place that a nail stands for; null for an added nail.</summary>
    public GridPlace? Of(Nail nail) => _ofNail.GetValueOrDefault(nail.Mark);

    /// <summary>
    /// Width of face that a head stands for in its row: half the distance between its neighbours, at least the grid's spacing. Where the
    /// row is interrupted, or ends, the grid's spacing counts.
    /// </summary>
    /// <param name="heads">The heads of the row on one leg, by place along the layout line.</param>
    public static double Width(Face face, IReadOnlyList<GridPlace> row, IReadOnlyList<Along> heads, int index, Elevation elevation)
    {
        double spacing = row[0].Row.Section.HorizontalSpacing;
        double Gap(int other)
        {
            if (other < 0 || other >= heads.Count)
                return spacing;
            Along from = Along.Min(heads[index], heads[other]), to = Along.Max(heads[index], heads[other]);
            return IsRun(row, from, to, spacing) ? face.Distance(from, to, elevation) : spacing;
        }
        return Math.Max(spacing, (Gap(index - 1) + Gap(index + 1)) / 2);
    }

    /// <summary>True where the grid has places all the way between two heads, no two of them much over a spacing apart.</summary>
    private static bool IsRun(IReadOnlyList<GridPlace> row, Along from, Along to, double spacing)
    {
        Along at = row[0].At.Along;
        foreach (GridPlace place in row)
        {
            if (place.At.Along > from && at < to && place.At.Along - at > Tolerance.BrokenRun * spacing)
                return false;
            at = place.At.Along;
        }
        return true;
    }
}
