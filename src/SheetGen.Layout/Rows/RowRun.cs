
namespace SheetGen.Layout.Rows;

/// <summary>
/// Where a row of a bay runs: between the mitres, or the bay's ends, at the row's own elevation; and the measure that its spacings are
/// counted in: along the face where that is longer than the layout line, along the layout line elsewhere, so that a spacing holds in both.
/// The measure starts at 0 where the face starts, which may be beyond the bay's stations.
/// </summary>
internal sealed class RowRun
{
    private const int MostSteps = 40;
    private readonly List<(Along Along, double Measure, double Factor)> _pieces = [];
    private readonly Func<Along, Elevation> _elevationAt;

    /// <param name="elevationAt">Elevation of the row by place along the layout line.</param>
    public RowRun(Bay bay, Func<Along, Elevation> elevationAt)
    {
        Bay = bay;
        _elevationAt = elevationAt;
        Start = Solve(bay.Start, bay.FaceStartAt);
        End = Solve(bay.End, bay.FaceEndAt);
        Along at = Start;
        double sum = bay.BeyondStart(elevationAt(Start));
        double[] stops = [.. bay.Wall.LayoutLine.Pieces.SelectMany(p => p.Stops().Skip(1)).SkipLast(1), double.PositiveInfinity];
        foreach (double stop in stops)
        {
            Along end = Along.Min(new Along(stop), End);
            if (end <= at)
                continue;
            Along near = end - (end - at) * RowTolerance.BeforeNextPiece;
            double one = Math.Max(bay.Face.Scale(at, elevationAt(at)), bay.Face.Scale(near, elevationAt(at))), other = Math.Max(bay.Face.Scale(at, elevationAt(end)), bay.Face.Scale(near, elevationAt(end)));
            double factor = Math.Max(1, Math.Max(one, other));
            _pieces.Add((at, sum, factor));
            Shrink = Math.Min(Shrink, Math.Min(one, other) / factor);
            sum += (end - at) * factor;
            at = end;
        }
        Width = _pieces.Count == 0 ? 0 : sum + bay.BeyondEnd(elevationAt(End));
    }

    public Bay Bay { get; }

    /// <summary>Place where the face starts at the row's elevation.</summary>
    public Along Start { get; }

    public Along End { get; }

    /// <summary>Width of the run in its measure, with what the face reaches beyond the bay's stations; 0 where the mitres leave nothing.</summary>
    public double Width { get; }

    /// <summary>Least length along the face per length of the measure: under 1 where an arc's face is shorter than the layout line.</summary>
    public double Shrink { get; } = 1;

    /// <summary>The first place where a head of the row may stand, at least so far from what the row ends at.</summary>
    public Along FirstPlace(double least) => Solve(Bay.Start, z => Bay.FirstPlace(z, least));

    public Along LastPlace(double least) => Solve(Bay.End, z => Bay.LastPlace(z, least));

    public double Of(Along along)
    {
        var piece = _pieces[0];
        foreach (var next in _pieces)
        {
            if (next.Along <= along)
                piece = next;
        }
        return piece.Measure + (along - piece.Along) * piece.Factor;
    }

    public Along AlongAt(double measure)
    {
        var piece = _pieces[0];
        foreach (var next in _pieces)
        {
            if (next.Measure <= measure)
                piece = next;
        }
        return piece.Along + (measure - piece.Measure) / piece.Factor;
    }

    /// <summary>The place whose elevation gives it: a row that follows the top meets the mitre where its own elevation puts it.</summary>
    private Along Solve(Along from, Func<Elevation, Along> placeAt)
    {
        Along at = from;
        for (int step = 0; step < MostSteps; step++)
        {
            Along next = placeAt(_elevationAt(at));
            if (Math.Abs(next - at) < Tolerance.Rounding)
                return next;
            at = next;
        }
        return at;
    }
}
