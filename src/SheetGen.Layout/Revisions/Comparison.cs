using SheetGen.Model;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Revisions;

/// <summary>
/// Old against new: nails by mark (and, where a mark is gone, by place), findings by what they are about, quantities by wall and stage, bid
/// items by number. The two may be in different units: figures that differ by no more than both units' rounding are equal.
/// </summary>
public static class Comparison
{
    public static RevisionDifference Of(RevisionState old, RevisionState @new)
    {
        LengthUnit unit = @new.Unit ?? old.Unit ?? LengthUnit.Foot;
        IReadOnlyList<Wall> walls = @new.Walls.Count > 0 ? @new.Walls : old.Unit == unit ? old.Walls : [];
        var scale = new RevisionScale(old.Unit ?? unit, unit, walls);
        var notCompared = new List<string>();
        void Lacking(string what, bool inOld, bool inNew)
        {
            if (!inOld || !inNew)
                notCompared.Add($"{what}: {(inOld ? "" : old.Name)}{(!inOld && !inNew ? " and " : "")}{(inNew ? "" : @new.Name)} {(!inOld && !inNew ? "have" : "has")} none");
        }
        Lacking("findings", old.Findings is not null, @new.Findings is not null);
        Lacking("quantities", old.Amounts is not null, @new.Amounts is not null);
        Lacking("bid items", old.Items is not null, @new.Items is not null);
        if (old.Unit is null || @new.Unit is null)
        {
            string[] without = [.. new[] { old, @new }.Where(s => s.Unit is null).Select(s => s.Name).Distinct()];
            notCompared.Add($"units: {string.Join(" and ", without)} {(without.Length == 1 ? "does" : "do")} not tell the unit; {Lengths.Symbol(unit)} is taken");
        }
        return new RevisionDifference
        {
            Old = old,
            New = @new,
            Unit = unit,
            Walls = walls,
            Nails = [.. NailChanges.Of(old.Nails, @new.Nails, scale)],
            Findings = old.Findings is { } before && @new.Findings is { } after ? [.. FindingChanges.Of(before, after, scale)] : [],
            Amounts = old.Amounts is { } first && @new.Amounts is { } second ? [.. AmountChanges.Of(first, second, scale)] : [],
            Items = old.Items is { } had && @new.Items is { } has ? [.. ItemChanges.Of(had, has, scale)] : [],
            NotCompared = notCompared,
        };
    }
}
