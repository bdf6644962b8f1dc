using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>A grid station of a cluster: every place and direction of its nail that is clear of what stands still.</summary>
internal sealed class ClusterStation
{
    public ClusterStation(RowTask row, int ordinal, IReadOnlyList<(int Node, HeadChoice Choice)> nodes)
    {
        Ordinal = ordinal;
        IsPinned = row.GridChoice(ordinal).IsPinned;
        var at = new List<int>();
        var turnings = new List<Turning>();
        var holes = new List<Hole>();
        var alongs = new List<double>();
        foreach ((int node, HeadChoice choice) in nodes)
        {
            for (int turning = 0; turning < choice.Turnings.Count; turning++)
            {
                if (!row.IsFree(choice, turning))
                    continue;
                at.Add(node);
                turnings.Add(choice.Turnings[turning]);
                alongs.Add(choice.Head.Along.Number);
                holes.Add(row.HoleAt(choice, turning));
            }
        }
        NodeOf = [.. at];
        Holes = [.. holes];
        double arm = row.Length / 2 * Math.PI / 180;
        Measures = [[.. alongs], [.. turnings.Select(t => t.Splay * arm)], [.. turnings.Select(t => t.Inclination * arm)]];
    }

    public int Ordinal { get; }

    public bool IsPinned { get; }

    public int Count => Holes.Length;

    public Hole[] Holes { get; }

    /// <summary>Node of each candidate in its stretch.</summary>
    public int[] NodeOf { get; }

    /// <summary>By place along the wall, splay and inclination: where each candidate lies, as the length by which half a nail further on differs.</summary>
    public double[][] Measures { get; }
}
