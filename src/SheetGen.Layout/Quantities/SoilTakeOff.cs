using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Feet of hole in each soil layer, along the holes' own paths: each hole is cut at the layer limits of the boring that is nearest in
/// plan to its middle, as if the layers were level there.
/// </summary>
internal static class SoilTakeOff
{
    public static List<SoilLength> Measure(WallProject project, IReadOnlyList<Nail> nails, IReadOnlyList<ExcavationLift> lifts)
    {
        if (project.Borings.Count == 0)
            return [];
        var parts = new List<(Nail Nail, int Lift, string Layer, double Length)>();
        foreach (Nail nail in nails)
        {
            int lift = lifts.FirstOrDefault(l => l.Wall == nail.Wall && l.Section == nail.Section && l.Rows.Contains(nail.Row) && l.Start <= nail.Along && nail.Along <= l.End)?.Number ?? 0;
            parts.AddRange(Along(project, nail).Select(p => (nail, lift, p.Layer, p.Length)));
        }
        return
        [
            .. parts.GroupBy(p => (p.Nail.Wall, p.Nail.Section, p.Lift, p.Layer))
                .OrderBy(g => project.Walls.ToList().IndexOf(g.Key.Wall)).ThenBy(g => g.Key.Section.Start).ThenBy(g => g.Key.Lift).ThenBy(g => g.Key.Layer, StringComparer.Ordinal)
                .Select(g => (g.Key, Length: g.Sum(p => p.Length)))
                .Select(g => new SoilLength(
                    g.Key.Wall, g.Key.Section, g.Key.Lift, g.Key.Layer, g.Length,
                    project.Rates.Drilling.TryGetValue(g.Key.Layer, out double rate) ? g.Length / rate : null)),
        ];
    }

    /// <summary>The layers that a hole goes through, with its length in each.</summary>
    public static IEnumerable<(string Layer, double Length)> Along(WallProject project, Nail nail)
    {
        Vector3D head = nail.Hole.Head, tip = nail.Hole.Tip;
        var middle = new Vector2D((head.N + tip.N) / 2, (head.E + tip.E) / 2);
        Boring boring = project.Borings.MinBy(b => (b.At - middle).Length)!;
        double high = Math.Max(head.Z, tip.Z), low = Math.Min(head.Z, tip.Z), top = double.PositiveInfinity;
        IEnumerable<(string Name, double To)> layers = boring.Layers.Select(l => (l.Name, l.To))
            .Prepend(("above boring " + boring.Name, boring.Top)).Append(("below boring " + boring.Name, double.NegativeInfinity));
        foreach ((string name, double to) in layers)
        {
            double share = high - low < Tolerance.Rounding ? (high <= top && high > to ? 1 : 0) : Math.Max(0, Math.Min(high, top) - Math.Max(low, to)) / (high - low);
            if (share > 0)
                yield return (name, share * nail.Length);
            top = to;
        }
    }
}
