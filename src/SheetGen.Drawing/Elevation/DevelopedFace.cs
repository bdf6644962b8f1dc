using SheetGen.Model;

namespace SheetGen.Drawing.Elevation;

/// <summary>
/// Distances along a wall's face, on its bottom line where the face is battered: what a tape on the shotcrete measures. Equal to the
/// distance along the layout line, counted from the line's first station, where the wall begins. On an arc a foot of the line is more or
/// less than a foot of the face; at a corner the mitre takes from both legs or gives to them.
/// </summary>
public sealed class DevelopedFace
{
    private readonly double _firstStation;
    private readonly List<(double Along, double Developed)> _knots = [];
    private readonly List<LegSpan> _legs = [];

    public DevelopedFace(Wall wall)
    {
        _firstStation = wall.LayoutLine.StartStation;
        var face = new Face(wall);
        double at = wall.Start + _firstStation;
        foreach (Leg leg in face.Legs)
        {
            double from = leg.Start + Cut(face, leg.StartCorner), to = leg.End - Cut(face, leg.EndCorner);
            double first = Math.Max(from, leg.Start), last = Math.Max(first, Math.Min(to, leg.End));
            Add(leg.Start, at);
            double begin = at;
            // Where the legs reach beyond the corner's station, all that is beyond it stands at that station.
            at += Math.Max(0, leg.Start - from);
            Add(first, at);
            IEnumerable<double> bends = wall.LayoutLine.Pieces.Select(p => p.Start).Concat(wall.Batter is null ? [] : wall.BottomSteps.Select(s => s.Along));
            double[] places = [first, .. bends.Where(p => p > first && p < last).Distinct().Order(), last];
            for (int i = 0; i + 1 < places.Length; i++)
            {
                double middle = (places[i] + places[i + 1]) / 2;
                at += (places[i + 1] - places[i]) * face.Scale(middle, wall.Bottom.At(middle));
                Add(places[i + 1], at);
            }
            Add(leg.End, at);
            double regular = at;
            at += Math.Max(0, to - leg.End);
            Add(leg.End, at);
            _legs.Add(new(leg, begin, begin + Math.Max(0, leg.Start - from), regular, at));
        }
    }

    /// <summary>Places where a foot of the line becomes another length of the face, with both ends: distance along the line (from its first station), developed distance.</summary>
    public IEnumerable<(double Line, double Developed)> Pairs => _knots.Select(k => (k.Along + _firstStation, k.Developed));

    /// <summary>Places between two others where the developed distance bends or jumps.</summary>
    public IEnumerable<double> Bends(double start, double end) => _knots.Select(k => k.Along).Where(a => a > start && a < end).Distinct();

    /// <summary>Greatest developed length of a stretch of the line.</summary>
    public double Most => Enumerable.Range(1, _knots.Count - 1)
        .Where(i => _knots[i].Along > _knots[i - 1].Along)
        .Max(i => (_knots[i].Developed - _knots[i - 1].Developed) / (_knots[i].Along - _knots[i - 1].Along));

    /// <summary>Sum of what stands at single stations of the line.</summary>
    public double Jumps => Enumerable.Range(1, _knots.Count - 1)
        .Where(i => _knots[i].Along <= _knots[i - 1].Along)
        .Sum(i => _knots[i].Developed - _knots[i - 1].Developed);

    /// <summary>The developed distance of a place; at a corner that of the leg that starts there. Beyond the wall it goes on as the line does.</summary>
    public double At(double along) => Find(along, before: false);

    /// <summary>The same, at a corner that of the leg that ends there.</summary>
    public double Before(double along) => Find(along, before: true);

    /// <summary>The developed distance of a place of a leg; beyond the corner's station it goes on as far as the mitre.</summary>
    public double OnLeg(int leg, double along)
    {
        LegSpan span = _legs.First(l => l.Leg.Index == leg);
        if (along <= span.Leg.Start)
            return Math.Max(span.Begin, span.First - (span.Leg.Start - along));
        if (along >= span.Leg.End)
            return Math.Min(span.End, span.Last + (along - span.Leg.End));
        return At(along);
    }

    /// <summary>The developed distance at which two legs meet.</summary>
    public double Fold(Corner corner) => _legs.First(l => l.Leg.StartCorner == corner).Begin;

    /// <summary>Developed distances of a leg: its two ends, and the stations of its ends.</summary>
    private sealed record LegSpan(Leg Leg, double Begin, double First, double Last, double End);

    private double Find(double along, bool before)
    {
        if (along <= _knots[0].Along)
            return _knots[0].Developed + (along - _knots[0].Along);
        if (along >= _knots[^1].Along)
            return _knots[^1].Developed + (along - _knots[^1].Along);
        int i = before ? _knots.FindIndex(k => k.Along >= along) : _knots.FindLastIndex(k => k.Along <= along);
        (double Along, double Developed) a = before ? _knots[i - 1] : _knots[i], b = before ? _knots[i] : _knots[i + 1];
        return a.Developed + (b.Developed - a.Developed) * ((along - a.Along) / (b.Along - a.Along));
    }

    private static double Cut(Face face, Corner? corner) => corner is null ? 0 : face.MitreCut(corner, face.Wall.Bottom.At(corner.Along));

    private void Add(double along, double developed)
    {
        if (_knots.Count == 0 || _knots[^1] != (along, developed))
            _knots.Add((along, developed));
    }
}
