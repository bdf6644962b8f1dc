using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Marks the stated share of a section's production nails as proof test nails where the project asks for it, spread over stations and rows
/// alike: the k-th of n stands near (k + 1/2) / n of the section's length, in the row that holds the share k * phi (fraction) of its nails,
/// phi the golden ratio: a sequence that fills both evenly (Kronecker; from memory).
/// </summary>
internal static class ProofMarks
{
    private const double GoldenRatio = 0.618033988749895;

    public static List<Nail> Mark(List<Nail> nails)
    {
        var marked = new HashSet<string>();
        foreach (var section in nails.Where(n => n.Kind == NailKind.Production).GroupBy(n => (n.Wall, n.Section)))
        {
            TestNails tests = section.Key.Section.TestNails;
            if (tests.SpreadProofMarks)
                Spread(section.Key.Section, [.. section.Where(n => n.Status != NailStatus.Unresolved)], Count(tests, section.Count()), marked);
        }
        return [.. nails.Select(n => marked.Contains(n.Mark) ? n with { Kind = NailKind.Proof } : n)];
    }

    /// <summary>Number of proof test nails among so many production nails: the share, rounded up.</summary>
    public static int Count(TestNails tests, int production) => (int)Math.Ceiling(tests.ProofShare * production - Tolerance.Rounding);

    private static void Spread(Section section, List<Nail> able, int count, HashSet<string> marked)
    {
        able.Sort((a, b) => a.Row.CompareTo(b.Row) is var byRow and not 0 ? byRow : a.Along.CompareTo(b.Along));
        count = Math.Min(count, able.Count);
        for (int k = 0; k < count; k++)
        {
            double target = section.Start + (section.End - section.Start) * (k + 0.5) / count;
            double share = (k + 0.5) * GoldenRatio % 1;
            RowNumber row = able[(int)(share * able.Count)].Row;
            Nail chosen = able.Where(n => !marked.Contains(n.Mark))
                .OrderBy(n => n.Row != row).ThenBy(n => Math.Round(Math.Abs(n.Along - target), Tolerance.Decimals)).ThenBy(n => n.Row).ThenBy(n => n.Along).First();
            marked.Add(chosen.Mark);
        }
    }
}
