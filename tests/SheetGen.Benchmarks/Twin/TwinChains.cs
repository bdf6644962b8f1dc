using Google.OrTools.Sat;
using SheetGen.Layout.Placing;

namespace SheetGen.Benchmarks.Twin;

/// <summary>What the nodes of stretches allow each other, as constraints: each stretch is one chain of nodes from its start to its end.</summary>
internal static class TwinChains
{
    /// <param name="first">Number of the first node of a stretch among all.</param>
    /// <param name="stands">By node, true where a nail stands there.</param>
    public static void Add(CpModel model, StretchNodes nodes, int first, BoolVar[] stands) => Add(model, nodes, first, stands, (_, _) => { }, []);

    /// <param name="leavesOut">Told of each step that leaves grid stations out, and what that costs.</param>
    /// <param name="now">Numbers of the nodes where nails stand now, as a hint.</param>
    public static void Add(CpModel model, StretchNodes nodes, int first, BoolVar[] stands, Action<BoolVar, Cost> leavesOut, HashSet<int> now)
    {
        int[] chain = [.. nodes.InOrder.Where(p => now.Contains(first + p))];
        HashSet<(int From, int To)> steps = chain.Length == 0 ? [] : [(-1, chain[0]), .. chain.Zip(chain.Skip(1)), (chain[^1], -1)];
        var into = Enumerable.Range(0, nodes.Count).Select(_ => new List<ILiteral>()).ToArray();
        var from = Enumerable.Range(0, nodes.Count).Select(_ => new List<ILiteral>()).ToArray();
        var starts = new List<ILiteral>();
        var ends = new List<ILiteral>();
        void Arc(int before, int after, Cost cost, List<ILiteral> one, List<ILiteral> other)
        {
            BoolVar arc = model.NewBoolVar("");
            one.Add(arc);
            other.Add(arc);
            if (cost > default(Cost))
                leavesOut(arc, cost);
            if (chain.Length > 0)
                model.AddHint(arc, steps.Contains((before, after)) ? 1 : 0);
        }
        for (int p = 0; p < nodes.Count; p++)
        {
            if (nodes.Start(p) is { } start)
                Arc(-1, p, start, starts, into[p]);
            if (nodes.End(p) is { } end)
                Arc(p, -1, end, ends, from[p]);
            foreach (int next in nodes.Next(p))
                Arc(p, next, nodes.Between(p, next), from[p], into[next]);
        }
        model.AddExactlyOne(starts);
        model.AddExactlyOne(ends);
        for (int p = 0; p < nodes.Count; p++)
        {
            model.AddExactlyOne(into[p].Append(stands[first + p].Not()));
            model.AddExactlyOne(from[p].Append(stands[first + p].Not()));
        }
    }
}
