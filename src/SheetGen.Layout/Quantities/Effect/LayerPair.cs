using SheetGen.Model;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>A layer between two borings: its lower limit at the first and at the last of them.</summary>
internal sealed record LayerPair(string Name, double FirstTo, double LastTo)
{
    /// <summary>
    /// The layers between two borings from the top down. Layers of one name belong together, as many as can without crossing, and of these
    /// ways the one with the greatest thickness; it does not matter which boring is first.
    /// </summary>
    public static IReadOnlyList<LayerPair> Between(Boring first, Boring last)
    {
        List<Limit> a = Limits(first), b = Limits(last);
        Match[,] best = new Match[a.Count + 1, b.Count + 1];
        for (int i = a.Count; i >= 0; i--)
        {
            for (int j = b.Count; j >= 0; j--)
            {
                if (i == a.Count || j == b.Count)
                {
                    best[i, j] = new Match(0, 0, "", null);
                    continue;
                }
                Match without = Better(best[i + 1, j], best[i, j + 1]);
                best[i, j] = a[i].Name != b[j].Name ? without : Better(without, new Match(
                    best[i + 1, j + 1].Count + 1, best[i + 1, j + 1].Thickness + (a[i].Thickness + b[j].Thickness), a[i].Name + "\n" + best[i + 1, j + 1].Names, (i, j)));
            }
        }
        var layers = new List<LayerPair>();
        int from = 0, to = 0;
        double high = first.Top, low = last.Top;
        for (Match at = best[0, 0]; at.Pair is { } pair; at = best[pair.First + 1, pair.Last + 1])
        {
            AddUnmatched(layers, a[from..pair.First], b[to..pair.Last], high, low);
            layers.Add(new LayerPair(a[pair.First].Name, a[pair.First].To, b[pair.Last].To));
            (from, to) = (pair.First + 1, pair.Last + 1);
            (high, low) = (a[pair.First].To, b[pair.Last].To);
        }
        AddUnmatched(layers, a[from..], b[to..], high, low);
        return layers;
    }

    /// <summary>Layers of one boring only, from where those above end: the set whose middle lies higher is the upper one.</summary>
    private static void AddUnmatched(List<LayerPair> layers, List<Limit> ofFirst, List<Limit> ofLast, double first, double last)
    {
        bool firstAbove = ofLast.Count == 0 || (ofFirst.Count > 0 && IsAbove(ofFirst, first, ofLast, last));
        if (firstAbove)
        {
            layers.AddRange(ofFirst.Select(l => new LayerPair(l.Name, l.To, last)));
            layers.AddRange(ofLast.Select(l => new LayerPair(l.Name, ofFirst.Count > 0 ? ofFirst[^1].To : first, l.To)));
        }
        else
        {
            layers.AddRange(ofLast.Select(l => new LayerPair(l.Name, first, l.To)));
            layers.AddRange(ofFirst.Select(l => new LayerPair(l.Name, l.To, ofLast[^1].To)));
        }
    }

    private static bool IsAbove(List<Limit> a, double aTop, List<Limit> b, double bTop)
    {
        double middleA = (aTop + a[^1].To) / 2, middleB = (bTop + b[^1].To) / 2;
        return middleA != middleB ? middleA > middleB : string.CompareOrdinal(a[0].Name, b[0].Name) < 0;
    }

    private static Match Better(Match a, Match b)
    {
        int order = (a.Count, a.Thickness).CompareTo((b.Count, b.Thickness));
        return order > 0 || (order == 0 && string.CompareOrdinal(a.Names, b.Names) <= 0) ? a : b;
    }

    private static List<Limit> Limits(Boring boring)
    {
        var limits = new List<Limit> { new(SoilLayers.Above, boring.Top, 0) };
        double top = boring.Top;
        foreach (BoringLayer layer in boring.Layers)
        {
            limits.Add(new Limit(layer.Name, layer.To, top - layer.To));
            top = layer.To;
        }
        limits.Add(new Limit(SoilLayers.Below, double.NegativeInfinity, 0));
        return limits;
    }

    private readonly record struct Limit(string Name, double To, double Thickness);

    /// <summary>The best way to match the layers from two places on; the pair with which it begins, null where there is none.</summary>
    private sealed record Match(int Count, double Thickness, string Names, (int First, int Last)? Pair);
}
