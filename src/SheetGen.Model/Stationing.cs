using SheetGen.Model.Units;

namespace SheetGen.Model;

/// <summary>
/// Printed stations of a layout line. Inside the program a station is the internal one, which runs on without a jump from the line's start;
/// station equations change only what is printed and read.
/// </summary>
public sealed class Stationing
{
    private readonly Zone[] _zones;

    /// <param name="startStation">Station of the line's start.</param>
    /// <param name="equations">Station equations in order along the line.</param>
    public Stationing(double startStation, IReadOnlyList<StationEquation> equations)
    {
        StartStation = startStation;
        Equations = equations;
        _zones =
        [
            new Zone(double.NegativeInfinity, equations.Count == 0 ? double.PositiveInfinity : equations[0].Along, startStation),
            .. equations.Select((e, i) => new Zone(e.Along, i + 1 < equations.Count ? equations[i + 1].Along : double.PositiveInfinity, e.Ahead.Number - e.Along)),
        ];
    }

    public double StartStation { get; }

    public IReadOnlyList<StationEquation> Equations { get; }

    /// <summary>The printed station of a place; at an equation the ahead station.</summary>
    public PrintedStation Printed(double along) => ZoneAt(along).Printed(along);

    /// <summary>Places with a printed station, in order: none in a gap, several where stations overlap. At an equation both sides count.</summary>
    public IReadOnlyList<double> PlacesOf(PrintedStation printed) => [.. ZonesOf(printed).Select(z => z.Along)];

    /// <summary>As <see cref="PlacesOf"/>: with the number of the zone, from 0, that each lies in.</summary>
    public IReadOnlyList<(int Zone, double Along)> ZonesOf(PrintedStation printed) =>
        [.. _zones.Select((z, i) => (Zone: i, Along: z.PlaceOf(printed))).Where(p => _zones[p.Zone].Has(p.Along))];

    /// <summary>The station of a place in words, with BK or AH where that station exists twice.</summary>
    public string Text(double along, LengthUnit unit) => Text(along, unit, Lengths.Decimals(unit));

    /// <summary>As <see cref="Text(double, LengthUnit)"/>, with the given number of decimals.</summary>
    public string Text(double along, LengthUnit unit, int decimals)
    {
        PrintedStation printed = Printed(along);
        return printed.Text(unit, decimals) + Mark(along, printed);
    }

    /// <summary>" BK" or " AH" where the station of a place exists twice; else empty.</summary>
    public string Mark(double along) => Mark(along, Printed(along));

    /// <summary>Places between two whose printed station is a multiple of a step, in order.</summary>
    public IEnumerable<double> RoundPlaces(double from, double to, double step)
    {
        const double Tiny = 1e-9;
        foreach (Zone zone in _zones)
        {
            double low = Math.Max(from, zone.Start), high = Math.Min(to, zone.End);
            for (double s = Math.Ceiling((low + zone.Shift) / step - Tiny) * step; s - zone.Shift <= high + Tiny; s += step)
            {
                if (s - zone.Shift < zone.End - Tiny)
                    yield return s - zone.Shift;
            }
        }
    }

    private Zone ZoneAt(double along) => _zones[Array.FindLastIndex(_zones, z => z.Start <= along + 1e-9)];

    private string Mark(double along, PrintedStation printed)
    {
        if (Equations.Count == 0)
            return "";
        int own = Array.FindLastIndex(_zones, z => z.Start <= along + 1e-9);
        for (int i = 0; i < _zones.Length; i++)
        {
            if (i != own && _zones[i].Has(_zones[i].PlaceOf(printed)))
                return own > i ? " AH" : " BK";
        }
        return "";
    }

    /// <summary>A stretch between two equations: printed station = distance along + shift.</summary>
    private sealed record Zone(double Start, double End, double Shift)
    {
        public PrintedStation Printed(double along) => new(along + Shift);

        public double PlaceOf(PrintedStation printed) => printed.Number - Shift;

        public bool Has(double along) => along >= Start - 1e-9 && along <= End + 1e-9;
    }
}
