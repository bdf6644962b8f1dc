using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>
/// Distances along a bay that spacings are counted in: along the face where it is longer than the layout line (at the elevation
/// where it is longest), along the layout line elsewhere, so that a spacing holds in both.
/// </summary>
public sealed class BayMeasure
{
    private readonly List<(double Along, double Measure, double Factor)> _pieces = [];

    public BayMeasure(Bay bay)
    {
        double at = bay.Start, sum = bay.StartEnd.Beyond;
        foreach (LayoutPiece piece in bay.Wall.LayoutLine.Pieces)
        {
            bool last = piece == bay.Wall.LayoutLine.Pieces[^1];
            double end = last ? bay.End : Math.Min(piece.End, bay.End);
            if (end <= at)
                continue;
            double factor = Math.Max(1, Math.Max(bay.Face.Scale(at, bay.LowestBottom), bay.Face.Scale(at, bay.HighestTop)));
            _pieces.Add((at, sum, factor));
            sum += (end - at) * factor;
            at = end;
        }
        Total = sum + bay.EndEnd.Beyond;
    }

    /// <summary>Width of the bay, with what the face reaches beyond its ends.</summary>
    public double Total { get; }

    public double Of(double along)
    {
        var piece = _pieces[0];
        foreach (var next in _pieces)
        {
            if (next.Along <= along)
                piece = next;
        }
        return piece.Measure + (along - piece.Along) * piece.Factor;
    }

    public double AlongAt(double measure)
    {
        var piece = _pieces[0];
        foreach (var next in _pieces)
        {
            if (next.Measure <= measure)
                piece = next;
        }
        return piece.Along + (measure - piece.Measure) / piece.Factor;
    }
}
