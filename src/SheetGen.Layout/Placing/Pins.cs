using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The designer's pins: a pinned nail stands where and as stated, whatever it hits; the others keep away from it. A pin of a row's
/// length alone pins nothing else.
/// </summary>
internal static class Pins
{
    public static void Apply(
        WallProject project, RowHeads row, RowNumber number, IReadOnlyList<HeadChoice>[] choices, IReadOnlySet<Along> added)
    {
        Bay bay = row.Bay;
        var taken = new Dictionary<int, Along>();
        foreach (FixedNail pin in project.FixedNails.Where(p => p.Kind != FixedKind.LeftOut && Concerns(p, row, number)))
        {
            if (pin is { Along: null, Splay: null, Inclination: null, Length: { } length })
            {
                for (int ordinal = 0; ordinal < choices.Length; ordinal++)
                    choices[ordinal] = [.. choices[ordinal].Select(c => c.WithLength(bay.Face, length))];
            }
            else if (pin.Along is not { } stated)
            {
                for (int ordinal = 0; ordinal < choices.Length; ordinal++)
                    choices[ordinal] = [Pinned(project, row, choices[ordinal][0], row.Places[ordinal], pin)];
            }
            else if (new Along(stated) is var along && IsIn(bay, along) && choices.Length > 0)
            {
                Along place = bay.Rounded(along);
                bool IsFree(int l) => added.Contains(row.Places[l]) == (pin.Kind == FixedKind.Added) && (!taken.TryGetValue(l, out Along other) || Math.Abs(other - along) < Tolerance.Rounding);
                if (Nearest(row.Places, new Along(pin.GridAlong ?? stated), IsFree) is not int ordinal)
                    continue;
                taken[ordinal] = along;
                choices[ordinal] = [Pinned(project, row, choices[ordinal][0], place, pin)];
            }
        }
    }

    private static HeadChoice Pinned(WallProject project, RowHeads row, HeadChoice before, Along along, FixedNail pin)
    {
        Section section = row.Bay.Section;
        double inclination = pin.Inclination ?? section.Inclination;
        Turning turning = Turnings.Make(section, project.Rules.Redirect, pin.Splay ?? 0, inclination, inclination - section.Inclination);
        bool isAdded = pin.Kind == FixedKind.Added;
        // An added nail stands for no grid station: it is off every one of them.
        double shift = isAdded ? project.Rules.ShiftStep : Math.Round(along - row.Places[before.Ordinal], Tolerance.RoundingDecimals);
        Head head = pin.Elevation is double elevation ? new Head(along, new Elevation(elevation).Rounded(row.Bay.Unit)) : row.HeadAt(along);
        if (shift == 0 && head.Elevation != row.HeadAt(along).Elevation)
            shift = Lengths.Quantum(row.Bay.Unit);
        return new HeadChoice(row.Bay.Face, head, before.Ordinal, shift, Turnings.Only(turning), true, pin.Length ?? before.PinnedLength) { IsAdded = isAdded };
    }

    /// <summary>True where a pin is said of a row.</summary>
    internal static bool Concerns(FixedNail pin, RowHeads row, RowNumber number) =>
        pin.Wall == row.Bay.Wall.Name && (pin.Section is null || pin.Section == row.Bay.Section.Name) && (pin.Row == number.ToString() || pin.Row == number.Name);

    /// <summary>True where a place is the bay's own.</summary>
    internal static bool IsIn(Bay bay, Along along) => along >= bay.Start && along <= bay.End && bay.Leg.Has(along);

    private static int? Nearest(List<Along> places, Along along, Func<int, bool> isFree)
    {
        int? best = null;
        for (int i = 0; i < places.Count; i++)
        {
            if (isFree(i) && (best is not int b || Math.Abs(places[i] - along) < Math.Abs(places[b] - along)))
                best = i;
        }
        return best;
    }
}
