using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Placing;

/// <summary>
/// What would help: for each nail that is left unresolved the least relaxation of each rule that frees it, found by halving and tried each
/// time; nails that stand near each other and are freed by the same rule are told together.
/// </summary>
internal sealed class Helping
{
    /// <summary>Most nails that are looked at; a wall with more has a design that does not fit it.</summary>
    public const int MostNails = 24;

    private const double LeastLength = 0.5;

    /// <summary>Most places of an added nail that are tried for one that is left out, and trials of making room at each.</summary>
    private const int MostPlaces = 12;

    private const int TrialsOfPlace = 5;

    /// <summary>Number of no district.</summary>
    private const int Taken = -1;

    private const string LeaveOut = "leave_out", Clearance = "clearance";

    private readonly District _whole;
    private readonly Freeing _freeing;
    private readonly HelpTeller _teller;

    public Helping(LayoutState layout, CoverWatch cover, HelpTeller teller)
    {
        _teller = teller;
        foreach (Slot slot in layout.Slots)
            slot.District = 0;
        _whole = new District(layout, cover, 0, layout.Slots, 1);
        _freeing = new Freeing(_whole);
    }

    /// <param name="Change">How far from the rule it is: more asks for more.</param>
    /// <param name="For">The same value for a nail of another slot.</param>
    private readonly record struct Freed(Slot Slot, string Relaxation, double Change, string Text, Func<Slot, Relaxed> For);

    public IEnumerable<NailHelp> Of()
    {
        Slot[] unresolved = [.. _whole.Slots.Where(s => s.IsUnresolved && !s.IsPinned)];
        foreach (List<Slot> group in Groups([.. unresolved.Take(MostNails)]))
        {
            Freed[] freed = [.. group.SelectMany(Ways), .. AllElsewhere(group)];
            foreach (IGrouping<string, Freed> way in freed.GroupBy(f => f.Relaxation))
                yield return Told(group.Count, [.. way]);
            Slot[] stuck = [.. group.Where(s => !freed.Any(f => f.Slot == s))];
            if (stuck.Length > 0)
                yield return _teller.About(stuck, "none", "", "no relaxation that was tried frees " + (stuck.Length == 1 ? "it" : "them"));
        }
        foreach (IGrouping<Wall, Slot> wall in unresolved.Skip(MostNails).GroupBy(s => s.Row.Bay.Wall))
            yield return _teller.About([.. wall], "none", "", FormattableString.Invariant($"not looked at: help is worked out for {MostNails} nails"));
    }

    private IEnumerable<Freed> Ways(Slot slot)
    {
        Rules rules = slot.Row.Bay.Rules;
        var unit = slot.Row.Bay.Unit;
        double length = slot.Row.Length, increment = rules.LengthIncrement;
        int steps = (int)Math.Floor(length * (1 - LeastLength) / increment + Tolerance.Rounding);
        if (Least(steps, k => Relaxed.Length(slot, length - k * increment)) is { } shorter)
            yield return new Freed(slot, "length", -shorter.Value, Figures.Length(shorter.Value, unit), s => Relaxed.Length(s, shorter.Value));
        if (Least(3, k => Relaxed.Maximum(slot, rules.Redirect.Maximum + 5 * k)) is { } turn)
            yield return new Freed(slot, "redirect.maximum", turn.Value, FormattableString.Invariant($"{turn.Value:0.##} degrees"), s => Relaxed.Maximum(s, turn.Value));
        if (Least(3, k => Relaxed.Inclination(slot, 5 * k)) is { } window)
        {
            double low = Math.Max(0, rules.Redirect.LeastInclination - window.Value), high = Math.Min(45, rules.Redirect.GreatestInclination + window.Value);
            yield return new Freed(slot, "redirect.inclination", window.Value, FormattableString.Invariant($"[{low:0.##}, {high:0.##}] degrees"), s => Relaxed.Inclination(s, window.Value));
        }
        double clear = Math.Min(rules.NailClearance, rules.ObstructionClearance);
        if (Least(3, k => Relaxed.Clearance(slot, clear * k / 4)) is { } less)
        {
            string to = $"{Figures.Length(rules.ObstructionClearance - less.Value, unit)} to obstructions, {Figures.Length(rules.NailClearance - less.Value, unit)} to nails";
            yield return new Freed(slot, Clearance, less.Value, to, s => Relaxed.Clearance(s, less.Value));
        }
    }

    /// <summary>
    /// Nails left out, and for each one added at the nearest place where it can stand and nothing more is uncovered; those added so far stand when the
    /// next one is looked for, so that all of them can be had together.
    /// </summary>
    private IEnumerable<Freed> AllElsewhere(IEnumerable<Slot> group)
    {
        District copy = _whole.Copy(0);
        var freeing = new Freeing(copy);
        foreach (Slot slot in group)
        {
            Slot own = copy.Layout.Slots[slot.Index];
            Bay bay = own.Row.Bay;
            foreach (Head head in AddedNail.Heads(copy.Layout, own).Take(MostPlaces))
            {
                if (freeing.Keep(Relaxed.Elsewhere(own, head), TrialsOfPlace) is not { } turning)
                    continue;
                string place = $"{bay.Wall.StationText(head.Along, bay.Unit)}, elevation {Figures.Length(head.Elevation.Number, bay.Unit)}";
                yield return new Freed(slot, LeaveOut, 0, FormattableString.Invariant($"add at {place}, splay {turning.Splay:0.##}, inclination {turning.Inclination:0.##}"), s => Relaxed.Elsewhere(s, head));
                break;
            }
        }
    }

    /// <summary>The first of so many steps that frees the nail, by halving; null where none does.</summary>
    private Relaxed? Least(int steps, Func<int, Relaxed> make)
    {
        Relaxed? best = null;
        int low = 1, high = steps;
        while (low <= high)
        {
            // The last step is tried first: where it does not help, no other is tried.
            int middle = best is null ? high : (low + high) / 2;
            Relaxed relaxed = make(middle);
            if (_freeing.Frees(relaxed))
            {
                best = relaxed;
                high = middle - 1;
            }
            else if (best is null)
            {
                return null;
            }
            else
            {
                low = middle + 1;
            }
        }
        return best;
    }

    private NailHelp Told(int of, Freed[] freed)
    {
        bool needsApproval = freed[0].Relaxation == Clearance;
        (string value, string result) = freed[0].Relaxation == LeaveOut ? Added(of, freed) : Together(of, freed);
        return _teller.About([.. freed.Select(f => f.Slot)], freed[0].Relaxation, value, result + (needsApproval ? "; only with the engineer of record's consent" : ""), needsApproval);
    }

    /// <summary>Nails that are added for those left out: each has its own head and direction, and all stand together.</summary>
    private (string Value, string Result) Added(int of, Freed[] freed) => freed.Length == 1
        ? (freed[0].Text, Frees(1, of))
        : ("and add a nail for each", $"{Frees(freed.Length, of)} ({string.Join("; ", freed.Select(f => $"{_teller.Mark(f.Slot)} {f.Text}"))})");

    /// <summary>
    /// The one value that frees each of them, the furthest from the rule that one of them asks for; it is tried for all of them together. Then what each
    /// needs by itself, the least first.
    /// </summary>
    private (string Value, string Result) Together(int of, Freed[] freed)
    {
        IGrouping<string, Freed>[] values = [.. freed.OrderBy(f => f.Change).ThenBy(f => f.Slot.Index).GroupBy(f => f.Text)];
        string least = values[0].Key, most = values[^1].Key;
        if (freed.Length == 1)
            return (most, Frees(1, of));
        string each = string.Join("; ", values.Select(v => $"{v.Key}: {string.Join(", ", v.Select(f => _teller.Mark(f.Slot)))}"));
        string own = values.Length > 1 ? $" (by itself each needs {each})" : "";
        int stand = Standing([.. values.SelectMany(v => v)]);
        return stand == freed.Length ? (most, $"{Frees(stand, of)} together{own}")
            : stand > 1 ? (most, $"{Frees(stand, of)} together, {freed.Length} one at a time{own}")
            : (values.Length > 1 ? $"{least} to {most}" : most, $"{Frees(freed.Length, of)}, one at a time{own}");
    }

    private static string Frees(int count, int of) =>
        count < of ? FormattableString.Invariant($"frees {count} of {of}") : of == 1 ? "frees it" : FormattableString.Invariant($"frees all {of}");

    /// <summary>How many of some nails stand at once where all have the value that the last of them needs, those with most to ask for put first.</summary>
    private int Standing(Freed[] freed)
    {
        District copy = _whole.Copy(0);
        var freeing = new Freeing(copy);
        int standing = 0;
        foreach (Freed nail in freed.Reverse())
        {
            Slot own = copy.Layout.Slots[nail.Slot.Index];
            if (freeing.Keep(freed[^1].For(own), Freeing.Trials) is null)
                continue;
            // It stands by a rule that its row has not: it may not be taken out and put back to make room.
            own.District = Taken;
            standing++;
        }
        return standing;
    }

    /// <summary>Nails of a wall whose heads are within two spacings of another of the group.</summary>
    private static List<List<Slot>> Groups(Slot[] slots)
    {
        var groups = new List<List<Slot>>();
        foreach (Slot slot in slots)
        {
            double reach = Tolerance.TwoAway * slot.Row.Bay.Section.HorizontalSpacing;
            List<List<Slot>> near = groups.FindAll(g => g[0].Row.Bay.Wall == slot.Row.Bay.Wall && g.Exists(s => (s.Grid.Point - slot.Grid.Point).Length <= reach));
            List<Slot> joined = [.. near.SelectMany(g => g), slot];
            groups.RemoveAll(near.Contains);
            groups.Add(joined);
        }
        return groups;
    }
}
