using SheetGen.Model.Revisions;

namespace SheetGen.Layout.Revisions;

/// <summary>Bid items that are not the same in two states, by their numbers.</summary>
internal static class ItemChanges
{
    public static IEnumerable<ItemChange> Of(IReadOnlyList<RevisionItem> old, IReadOnlyList<RevisionItem> @new, RevisionScale scale)
    {
        foreach (string number in @new.Select(i => i.Number).Concat(old.Select(i => i.Number)).Distinct())
        {
            RevisionItem? a = old.FirstOrDefault(i => i.Number == number), b = @new.FirstOrDefault(i => i.Number == number);
            RevisionItem shown = (b ?? a)!;
            double? factor = a is null ? 1 : scale.FactorOf(a.Unit, shown.Unit);
            double? before = a?.Quantity * factor;
            bool isOther = factor is null || (a is null) != (b is null) || !IsSame(before, b?.Quantity, a?.Unit == b?.Unit, scale)
                || !IsSame(a?.Amount, b?.Amount, a?.Unit == b?.Unit, scale);
            if (isOther)
                yield return new ItemChange(number, shown.Description + (factor is null ? $" (unit {a!.Unit} before)" : ""), shown.Unit, before, b?.Quantity, a?.Amount, b?.Amount);
        }
    }

    /// <summary>Rounded quantities in different units differ by their rounding.</summary>
    private static bool IsSame(double? a, double? b, bool oneUnit, RevisionScale scale) =>
        a is null == b is null && (a is null || scale.IsSameAmount(a.Value, b!.Value) || (!oneUnit && Math.Abs(a.Value - b.Value) <= 1 + RevisionTolerance.SameConvertedItem * Math.Abs(b.Value)));
}
