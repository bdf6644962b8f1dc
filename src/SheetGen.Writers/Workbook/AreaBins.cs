using System.Globalization;

namespace SheetGen.Writers.Workbook;

/// <summary>Areas counted in classes of one round width.</summary>
internal sealed record AreaBins(double Start, double Step, IReadOnlyList<int> Counts)
{
    private const int Wanted = 8;

    /// <summary>Classes for areas, each rounded to a millionth, so that noise moves none from one class to another.</summary>
    public static AreaBins Of(IEnumerable<double> unrounded)
    {
        List<double> areas = [.. unrounded.Select(a => Math.Round(a, 6))];
        if (areas.Count == 0)
            return new AreaBins(0, 1, [0]);
        double least = areas.Min(), most = areas.Max(), step = Round((most - least) / Wanted);
        double start = Math.Floor(least / step) * step;
        var counts = new int[Math.Max(1, (int)Math.Floor((most - start) / step) + 1)];
        var bins = new AreaBins(start, step, counts);
        foreach (double area in areas)
        {
            int bin = counts.Length - 1;
            while (bin > 0 && area < bins.From(bin))
                bin--;
            counts[bin]++;
        }
        return bins;
    }

    /// <summary>Lower limit of a class; rounded so that it is written as it is meant.</summary>
    public double From(int bin) => Math.Round(Start + bin * Step, 6);

    public string NameOf(int bin) => string.Create(CultureInfo.InvariantCulture, $"{From(bin):0.###} to {From(bin + 1):0.###}");

    /// <summary>The next of 1, 2, 2.5, 5 and their tenfolds.</summary>
    private static double Round(double step)
    {
        if (!(step > 1e-3))
            return 0.01;
        double ten = Math.Pow(10, Math.Floor(Math.Log10(step)));
        foreach (double factor in (ReadOnlySpan<double>)[1, 2, 2.5, 5])
        {
            if (step <= factor * ten * (1 + 1e-9))
                return factor * ten;
        }
        return 10 * ten;
    }
}
