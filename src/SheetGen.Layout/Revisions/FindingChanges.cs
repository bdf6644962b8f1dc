using SheetGen.Model.Revisions;

namespace SheetGen.Layout.Revisions;

/// <summary>Findings that are new, gone, or tell other figures.</summary>
internal static class FindingChanges
{
    public static IEnumerable<FindingChange> Of(IReadOnlyList<RevisionFinding> old, IReadOnlyList<RevisionFinding> @new, RevisionScale scale)
    {
        ILookup<string, RevisionFinding> before = old.ToLookup(f => f.Key), after = @new.ToLookup(f => f.Key);
        foreach (string key in @new.Select(f => f.Key).Concat(old.Select(f => f.Key)).Distinct())
        {
            List<RevisionFinding> had = [.. before[key]], has = [.. after[key]];
            // What is told of one thing in the same words is the same; the rest is paired by the nearest place, both ways alike.
            foreach (RevisionFinding same in has.ToList())
            {
                if (had.Find(f => IsSame(f, same, scale)) is not { } pair)
                    continue;
                had.Remove(pair);
                has.Remove(same);
            }
            foreach ((RevisionFinding a, RevisionFinding b) in Pairs(had, has, scale))
            {
                had.Remove(a);
                has.Remove(b);
                yield return new FindingChange(a, b);
            }
            foreach (RevisionFinding found in has)
                yield return new FindingChange(null, found);
            foreach (RevisionFinding gone in had)
                yield return new FindingChange(gone, null);
        }
    }

    private static List<(RevisionFinding, RevisionFinding)> Pairs(List<RevisionFinding> had, List<RevisionFinding> has, RevisionScale scale)
    {
        double Away(RevisionFinding a, RevisionFinding b) => Math.Abs(scale.Length(a.Station ?? 0) - (b.Station ?? 0));
        var pairs = new List<(RevisionFinding, RevisionFinding)>();
        var all = had.SelectMany(a => has.Select(b => (a, b))).OrderBy(p => Away(p.a, p.b)).ToList();
        while (all.Count > 0)
        {
            (RevisionFinding a, RevisionFinding b) = all[0];
            pairs.Add((a, b));
            all.RemoveAll(p => ReferenceEquals(p.a, a) || ReferenceEquals(p.b, b));
        }
        return pairs;
    }

    private static bool IsSame(RevisionFinding a, RevisionFinding b, RevisionScale scale)
    {
        bool Same(double? x, double? y) => x is null == y is null && (x is null || scale.IsSame(x.Value, y!.Value));
        return a.Severity == b.Severity && Same(a.Station, b.Station) && Same(a.ToStation, b.ToStation) && Same(a.Clear, b.Clear) && Same(a.Required, b.Required)
            && (!scale.IsOneUnit || a.Message == b.Message);
    }
}
