using SheetGen.Layout.Placing;
using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks.Twin;

/// <summary>A place and a direction that a nail may take.</summary>
/// <param name="Node">Number of the place among all of the cluster.</param>
internal readonly record struct Candidate(int Node, Turning Turning, Hole Hole);

/// <summary>A grid station of a cluster: all places of its nails, and all directions that are clear of what stands still.</summary>
internal sealed class TwinStation(RowTask row, int ordinal, IReadOnlyList<Candidate> candidates, bool isPinned)
{
    public RowTask Row { get; } = row;

    public int Ordinal { get; } = ordinal;

    public bool IsPinned { get; } = isPinned;

    public IReadOnlyList<Candidate> Candidates { get; } = candidates;

    /// <summary>Boxes that are not split, together all of its candidates.</summary>
    public List<CandidateBox> Leaves { get; } = [];
}
