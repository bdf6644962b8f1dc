using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Small walls, each searched and enumerated: what no wall may break is asserted at once, and how often what was met is counted, so that a test can demand it.</summary>
internal sealed class SmallWallTally
{
    private readonly Dictionary<string, int> _counts = [];
    private readonly List<SmallKinds> _kinds = [];
    private readonly List<string> _worse = [];

    public Compared Limits { get; } = new();

    /// <summary>Walls that were compared with all of their layouts.</summary>
    public int Asked => _kinds.Count;

    public void Look(WallProject project, SmallKinds kinds, bool prove, string where)
    {
        NailLayout layout = Placer.Place(project, new PlacingOptions(prove));
        LayoutScore score = layout.Score;
        Assert.Equal((score.Unresolved.Found, score.Noted.Found), (layout.Nails.Count(n => n.Status == NailStatus.Unresolved), layout.Nails.Count(n => n.Status == NailStatus.Noted)));
        var every = new EveryLayout(project, layout.Rows);
        Assert.Equal(every.Uncovered(layout.Nails.Select(n => (n.Along, n.Elevation))), score.Cover.Found, SmallFigures.SameCover);
        // No row keeps its spacing beside the pinned nail.
        if (every.IsImpossible)
        {
            Assert.True(layout.Nails.Any(n => n.IsFixed), $"{where}: no layout by enumeration");
            return;
        }
        SmallFigures best = every.Best(), found = SmallFigures.Of(score);
        Assert.Equal(found, every.FiguresOf(layout) with { Cover = found.Cover });
        Assert.False(found < best, $"{where}: found {found}, better than the best {best}");
        Assert.True(found.Cover < best.Cover + SmallFigures.SameCover, $"{where}: found {found}, which {best} covers");
        Limits.AssertLimit(score, best.Unresolved, best.Noted, best.Effort, where);
        _kinds.Add(kinds);
        Count("unresolved", found.Unresolved == best.Unresolved);
        Count("noted", (found.Unresolved, found.Noted) == (best.Unresolved, best.Noted));
        Count("best", !(best < found));
        Count("with unresolved nails", best.Unresolved > 0);
        Count("with part rows", layout.Rows.Any(r => r.Number.IsPart));
        Count("uncovered in part", best.Cover > 0);
        Count("covered better than by the grid", best.Cover < every.UncoveredByGrid - SmallFigures.SameCover);
        if (best < found)
            _worse.Add($"{where}: found {found}, best {best}");
    }

    /// <summary>Of walls of all kinds each kind is a good share, and nearly all are as good as the best of their layouts.</summary>
    public void AssertAllKinds()
    {
        AssertCount(0.99, "unresolved");
        AssertCount(0.97, "noted");
        AssertCount(0.95, "best");
        Limits.AssertMany(Asked, Asked * 9 / 10, Asked * 7 / 10);
        AssertKind(0.5, SmallKinds.SlopingTop);
        AssertKind(0.4, SmallKinds.SteppedBottom, SmallKinds.FaceOffset);
        AssertKind(0.3, SmallKinds.Batter);
        AssertKind(0.2, SmallKinds.Pin, SmallKinds.TwoRows | SmallKinds.SlopingTop, SmallKinds.TwoRows | SmallKinds.SteppedBottom);
        AssertKind(0.1, SmallKinds.TwoRows | SmallKinds.OutsideCorner, SmallKinds.FaceOffset | SmallKinds.OutsideCorner, SmallKinds.SlopingTop | SmallKinds.OutsideCorner);
        AssertKind(0.05, SmallKinds.TwoRows | SmallKinds.InsideCorner, SmallKinds.FaceOffset | SmallKinds.InsideCorner, SmallKinds.Batter | SmallKinds.OutsideCorner);
        AssertKind(0.02, SmallKinds.Batter | SmallKinds.InsideCorner);
        AssertCount(0.5, "with part rows");
        AssertCount(0.45, "with unresolved nails");
        AssertCount(0.06, "uncovered in part");
    }

    /// <summary>At least such a share of the walls asked had all of some kinds.</summary>
    private void AssertKind(double share, params SmallKinds[] kinds) =>
        Assert.All(kinds, kind => Assert.True(_kinds.Count(k => (k & kind) == kind) is var count && count >= share * Asked, $"{count} of {kind}, wanted {share}: {this}"));

    /// <summary>At least such a share of the walls asked were or had something.</summary>
    public void AssertCount(double share, string what) =>
        Assert.True(_counts[what] >= share * Asked, $"{what}, wanted {share}: {this}\n{string.Join('\n', _worse)}");

    public override string ToString() => $"{Asked} walls asked; {string.Join(", ", _counts.Select(c => $"{c.Value} {c.Key}"))}; {Limits}; {string.Join(", ", Enum.GetValues<SmallKinds>().Select(k => $"{_kinds.Count(w => (w & k) == k)} {k}"))}";

    private void Count(string what, bool isSo) => _counts[what] = _counts.GetValueOrDefault(what) + (isSo ? 1 : 0);
}
