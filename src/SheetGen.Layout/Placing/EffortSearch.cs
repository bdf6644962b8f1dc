namespace SheetGen.Layout.Placing;

/// <summary>What effort can be saved once no unresolved or noted nail is gained any more: by chains, around all nails that are not plain, then nail by nail.</summary>
internal sealed class EffortSearch(DistrictLoop loop, StretchLimits limits)
{
    /// <summary>Trials without a gain after which effort is left as it is, for each nail that is not plain.</summary>
    private const int EffortTrials = 5;

    /// <summary>Stretches that are solved by chain at the end without a gain before that is left.</summary>
    private const int ChainPatience = 8;

    /// <summary>Stretches that are solved by chain at most in a district: a chain takes as long as some hundred trials.</summary>
    private const int GreatestChains = 40;

    private readonly Stretch _stretch = new(loop.District);
    private readonly SingleNail _single = new(loop.District);

    private District District => loop.District;

    /// <param name="most">Directions that may be looked at.</param>
    /// <returns>False where it ended at a greatest number of directions, trials or chains.</returns>
    public bool Run(long most)
    {
        long end = District.Work + most;
        bool isComplete = Chains();
        Slot[] turned = [.. District.Slots.Where(IsWorthTrying)];
        int mostTrials = DistrictLoop.GreatestTrials * turned.Length, trials = 0;
        for (int idle = 0; idle < EffortTrials * turned.Length && trials < mostTrials && District.Work < end; idle++, trials++)
        {
            if (loop.TryAround(turned) < 0)
                idle = -1;
        }
        for (bool better = true; better && District.Work < end;)
        {
            better = false;
            foreach (Slot slot in District.Slots)
                better |= District.May(slot) && !slot.IsPlain && loop.Try(_single, slot) < 0;
        }
        return isComplete && (mostTrials == 0 || trials < mostTrials) && District.Work < end;
    }

    private bool IsWorthTrying(Slot slot) => District.May(slot) && !slot.IsPlain && !limits.IsMet(slot);

    /// <summary>Solves stretches by chain, those with the most to save first; one that holds what the last ones left is passed over.</summary>
    /// <returns>False where it ended at its greatest number of stretches.</returns>
    private bool Chains()
    {
        var solved = new HashSet<Placed>(ReferenceEqualityComparer.Instance);
        int idle = 0, chains = 0;
        foreach (Slot slot in District.Slots.Where(IsWorthTrying).OrderByDescending(limits.Over).ToList())
        {
            if (slot.IsPlain || limits.IsMet(slot) || Array.TrueForAll(slot.Nails, solved.Contains))
                continue;
            if (idle >= ChainPatience || chains >= GreatestChains)
                return idle >= ChainPatience;
            chains++;
            idle = loop.Try(_stretch, slot) < 0 ? 0 : idle + 1;
            IReadOnlyList<Slot> row = District.Layout.Rows[slot.Row.Index].Slots;
            for (int ordinal = Math.Max(0, slot.Ordinal - 1); ordinal <= Math.Min(row.Count - 1, slot.Ordinal + 1); ordinal++)
                solved.UnionWith(row[ordinal].Nails);
        }
        return true;
    }
}
