using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>Where on the face nails stand: corner before end before upper row.</summary>
internal sealed class Zones
{
    private readonly Face _face;
    private readonly Nail[] _byPlace;
    private readonly double[] _places;

    public Zones(Face face, IEnumerable<Nail> nails)
    {
        _face = face;
        _byPlace = [.. nails.OrderBy(n => n.Along)];
        _places = [.. _byPlace.Select(n => n.Along)];
    }

    public FaceZone Of(Nail nail)
    {
        Leg leg = _face.LegAt(nail.Along);
        double spacing = nail.Section.HorizontalSpacing;
        if (_face.ToMitre(leg, nail.Along, nail.Elevation) <= spacing)
            return FaceZone.Corner;
        double toStart = leg.StartCorner is null ? _face.Distance(leg.Start, nail.Along, nail.Elevation) : double.PositiveInfinity;
        double toEnd = leg.EndCorner is null ? _face.Distance(nail.Along, leg.End, nail.Elevation) : double.PositiveInfinity;
        if (Math.Min(toStart, toEnd) <= spacing)
            return FaceZone.End;
        return IsHighest(nail, leg, spacing / 2) ? FaceZone.UpperRow : FaceZone.Inner;
    }

    private bool IsHighest(Nail nail, Leg leg, double reach)
    {
        int at = Array.BinarySearch(_places, nail.Along - reach);
        for (int i = at < 0 ? ~at : at; i < _byPlace.Length && _byPlace[i].Along <= nail.Along + reach; i++)
        {
            if (_byPlace[i].Elevation > nail.Elevation && _face.LegAt(_byPlace[i].Along) == leg)
                return false;
        }
        return true;
    }
}
