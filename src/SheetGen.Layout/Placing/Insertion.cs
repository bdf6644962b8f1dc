using System.Numerics;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Greedy rebuild: freed slots get their nails back one after the other, each in its cheapest direction that is clear of all that stands. Some
/// directions are skipped at random, so that the same slots come out differently.
/// </summary>
internal sealed class Insertion(District district)
{
    private readonly List<Seat> _seats = [];
    private readonly List<Placed> _around = [];

    /// <summary>A place that waits for its nail.</summary>
    public readonly record struct Seat(Slot Slot, HeadChoice Choice);

    /// <summary>In which order nails are put back.</summary>
    public enum Order
    {
        /// <summary>At random.</summary>
        Random,

        /// <summary>The first of the slots that were freed before all others, those at random.</summary>
        SeedFirst,

        /// <summary>Those with the fewest free directions first.</summary>
        FewestFirst,

        /// <summary>As they were given.</summary>
        Given,
    }

    public void Clear() => _seats.Clear();

    public void Add(Slot slot, HeadChoice choice) => _seats.Add(new Seat(slot, choice));

    /// <summary>Frees a slot whose nails will stand at the same places again.</summary>
    public void Take(Slot slot)
    {
        foreach (Placed nail in slot.Nails)
            _seats.Add(new Seat(slot, nail.Choice));
        district.Trial.Free(slot);
    }

    /// <summary>Puts a nail on every seat; false where one found no direction and cannot be left unresolved, or more stay unresolved than allowed.</summary>
    /// <param name="seeds">Number of seats that come first where the order says so.</param>
    /// <param name="skipped">How many of 1,000 directions are skipped.</param>
    /// <param name="unresolved">How many may be left unresolved.</param>
    public bool PutBack(Order order, int seeds, int skipped, int unresolved)
    {
        Sort(order, seeds);
        foreach (Seat seat in _seats)
        {
            if (TryPut(seat, skipped))
                continue;
            if (!seat.Choice.IsAtGrid || --unresolved < 0)
                return false;
            PutUnresolved(seat);
        }
        return true;
    }

    /// <summary>Puts a nail on every seat, those with the fewest free directions first; unresolved at the grid where none is clear.</summary>
    /// <returns>Rows that are not whole: a nail off the grid found no direction in them.</returns>
    public IReadOnlyList<RowTask> PutBackAll()
    {
        Sort(Order.FewestFirst, 0);
        List<RowTask> broken = [];
        foreach (Seat seat in _seats)
        {
            if (broken.Contains(seat.Slot.Row) || TryPut(seat, 0))
                continue;
            if (seat.Choice.IsAtGrid)
                PutUnresolved(seat);
            else
                broken.Add(seat.Slot.Row);
        }
        return broken;
    }

    private void PutUnresolved(Seat seat) => Put(seat, Placed.At(seat.Slot.Row, seat.Choice, seat.Choice.Turnings[0], true));

    private void Sort(Order order, int seeds)
    {
        switch (order)
        {
            case Order.Random:
                district.Random.Shuffle(_seats);
                break;
            case Order.SeedFirst:
                Seat[] first = [.. _seats.Take(seeds)];
                _seats.RemoveRange(0, first.Length);
                district.Random.Shuffle(_seats);
                _seats.InsertRange(0, first);
                break;
            case Order.FewestFirst:
                district.Random.Shuffle(_seats);
                // Pinned nails first: they ask nobody, so that what came before would stay too close to them.
                Seat[] sorted = [.. _seats.OrderBy(s => s.Choice.IsPinned ? -1 : s.Slot.Freedom)];
                _seats.Clear();
                _seats.AddRange(sorted);
                break;
            default:
                break;
        }
    }

    /// <summary>Puts a nail in its cheapest direction that is clear; each clear one is skipped in so many of 1,000 cases.</summary>
    public bool TryPut(Seat seat, int skipped)
    {
        (Slot slot, HeadChoice choice) = seat;
        RowTask row = slot.Row;
        if (choice.IsPinned)
        {
            Put(seat, Placed.At(row, choice, choice.Turnings[0], false));
            return true;
        }
        if (Cheapest(slot, choice, row.FreeOf(choice), skipped) is not { } nail)
            return false;
        Put(seat, nail);
        return true;
    }

    /// <summary>The straight direction is looked at first, then the next few, then word by word: most nails find a clear one early.</summary>
    private Placed? Cheapest(Slot slot, HeadChoice choice, FreeDirections free, int skipped)
    {
        const ulong First = 1, Early = 0xFE;
        if (free.Among(0, First) != 0 && !Skips(skipped))
        {
            Placed straight = free.NailAt(0);
            InWay inWay = free.InWay(0);
            if (!inWay.IsBlocked(0, district.Layout))
            {
                if (district.Layout.FirstHit(slot, straight.Hole) is not { } hit)
                    return straight;
                inWay.Add(0, hit);
            }
        }
        _around.Clear();
        district.Layout.AddAround(slot, free.Reach, _around);
        for (int word = 0; word < free.Words; word++)
        {
            int turning = word == 0 ? FirstClear(slot.Row, choice, free, 0, free.Among(0, Early), skipped) : -1;
            if (turning < 0)
                turning = FirstClear(slot.Row, choice, free, word, word == 0 ? free.Among(0, ~(First | Early)) : free.Word(word), skipped);
            if (turning >= 0)
                return free.NailAt(turning);
        }
        return null;
    }

    private int FirstClear(RowTask row, HeadChoice choice, FreeDirections free, int word, ulong left, int skipped)
    {
        if (left == 0)
            return -1;
        LayoutState layout = district.Layout;
        InWay inWay = free.InWay(word);
        district.Work += BitOperations.PopCount(left);
        for (; left != 0; left &= left - 1)
        {
            int bit = BitOperations.TrailingZeroCount(left), turning = word * FreeDirections.WordSize + bit;
            if (inWay.IsBlocked(bit, layout))
                continue;
            if (FirstHit(row.HoleAt(choice, turning)) is { } hit)
                inWay.Add(bit, hit);
            else if (!Skips(skipped))
                return turning;
        }
        return -1;
    }

    private Placed? FirstHit(in Hole hole)
    {
        for (int i = 0; i < _around.Count; i++)
        {
            if (!district.Layout.AreTooClose(hole, _around[i].Hole))
                continue;
            // What was in the way is likely to be in the way of the next one too.
            (_around[0], _around[i]) = (_around[i], _around[0]);
            return _around[0];
        }
        return null;
    }

    private bool Skips(int perMille) => perMille > 0 && district.Random.Chance(perMille);

    /// <summary>Puts a nail on a seat beside those that its slot has already.</summary>
    public void Put(Seat seat, Placed nail)
    {
        Placed[] now = seat.Slot.Nails;
        Placed[] nails = now.Length == 0 ? [nail] : [.. now.Append(nail).OrderBy(n => n.Choice.Head.Along)];
        district.Trial.Put(seat.Slot, nails);
    }
}
