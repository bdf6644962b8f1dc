namespace SheetGen.Benchmarks.Twin;

/// <summary>Some candidates of one grid station that lie near each other by place, splay and inclination; it is split where it must be looked at closer.</summary>
internal sealed class CandidateBox
{
    public CandidateBox(TwinStation station, Candidate[] members, CandidateBox? parent)
    {
        Station = station;
        Members = members;
        Parent = parent;
        Nodes = [.. members.Select(m => m.Node).Distinct()];
    }

    public TwinStation Station { get; }

    public Candidate[] Members { get; }

    public CandidateBox? Parent { get; }

    /// <summary>Numbers of the places of its members.</summary>
    public int[] Nodes { get; }

    /// <summary>Number of its variable.</summary>
    public int Variable { get; set; } = -1;

    public IEnumerable<Candidate> At(int node) => Members.Where(m => m.Node == node);

    /// <summary>Two halves along the measure in which it is widest; null for a single candidate.</summary>
    public (CandidateBox, CandidateBox)? Split(bool byPlace)
    {
        double reach = Members[0].Hole.Length / 2;
        Func<Candidate, double>[] keys =
        [
            m => m.Hole.Head.N * Axis.N + m.Hole.Head.E * Axis.E,
            m => m.Turning.Splay * Math.PI / 180 * reach,
            m => m.Turning.Inclination * Math.PI / 180 * reach,
        ];
        Func<Candidate, double> widest = byPlace && Nodes.Length > 1 ? keys[0] : keys.MaxBy(k => Members.Max(k) - Members.Min(k))!;
        double[] values = [.. Members.Select(m => Math.Round(widest(m), 6)).Distinct().Order()];
        if (values.Length < 2)
            return null;
        double limit = values[values.Length / 2];
        CandidateBox Part(bool low) => new(Station, [.. Members.Where(m => Math.Round(widest(m), 6) < limit == low)], this);
        return (Part(true), Part(false));
    }

    private Model.Geometry.Vector2D Axis => Station.Row.Bay.Wall.LayoutLine.TangentAt(Station.Row.GridChoice(Station.Ordinal).Head.Along.Number);
}
