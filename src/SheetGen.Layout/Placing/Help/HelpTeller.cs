using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Placing;

/// <summary>Makes a help of the unresolved nails that it is for, named by their marks.</summary>
internal sealed class HelpTeller(IReadOnlyDictionary<Placed, string> marks)
{
    public string Mark(Slot slot) => marks[slot.Nails[0]];

    /// <param name="slots">Unresolved nails of one wall.</param>
    /// <param name="needsApproval">True where it asks for less than a required clearance.</param>
    public NailHelp About(IReadOnlyList<Slot> slots, string relaxation, string value, string result, bool needsApproval = false)
    {
        Wall wall = slots[0].Row.Bay.Wall;
        IEnumerable<Station> stations = slots.Select(s => wall.StationOf(s.Grid.Head.Along));
        return new NailHelp(wall, [.. slots.Select(Mark)], stations.Min().Number, stations.Max().Number, relaxation, value, result, needsApproval);
    }
}
