using SheetGen.Model.Revisions;

namespace SheetGen.Layout.Revisions;

/// <summary>Quantities that are not the same in two states: totals, then by wall and stage.</summary>
internal static class AmountChanges
{
    private readonly record struct Place(string Wall, string Stage);

    public static IEnumerable<AmountChange> Of(IReadOnlyList<RevisionAmount> old, IReadOnlyList<RevisionAmount> @new, RevisionScale scale)
    {
        string[] names = [.. @new.Select(a => a.Name).Concat(old.Select(a => a.Name)).Distinct()];
        // A source that does not know stages is compared by wall alone.
        bool staged = old.Any(a => a.Stage.Length > 0) && @new.Any(a => a.Stage.Length > 0);
        Place PlaceOf(RevisionAmount a) => new(a.Wall, staged ? a.Stage : "");
        Place[] places = [.. @new.Select(PlaceOf).Concat(old.Select(PlaceOf)).Distinct()];
        ILookup<string, RevisionAmount> before = old.ToLookup(a => a.Name), after = @new.ToLookup(a => a.Name);
        foreach (string name in names)
        {
            if (Change(before[name], after[name], new Place("", ""), scale) is { } total)
                yield return total;
        }
        foreach (Place place in places.Where(_ => places.Length > 1))
        {
            foreach (string name in names)
            {
                if (Change(before[name].Where(a => PlaceOf(a) == place), after[name].Where(a => PlaceOf(a) == place), place, scale) is { } change)
                    yield return change;
            }
        }
    }

    private static AmountChange? Change(IEnumerable<RevisionAmount> old, IEnumerable<RevisionAmount> @new, Place place, RevisionScale scale)
    {
        RevisionAmount? shown = @new.FirstOrDefault() ?? old.FirstOrDefault();
        if (shown is null)
            return null;
        double? Sum(IEnumerable<RevisionAmount> parts)
        {
            double?[] known = [.. parts.Where(p => p.Amount is not null).Select(p => p.Amount * scale.FactorOf(p.Unit, shown.Unit))];
            return known.Length == 0 || known.Contains(null) ? null : known.Sum();
        }
        double? before = Sum(old), after = Sum(@new);
        bool same = before is null == after is null && (before is null || scale.IsSameAmount(before.Value, after!.Value));
        return same ? null : new AmountChange(shown.Name, shown.Text, shown.Unit, place.Wall, place.Stage, before, after);
    }
}
