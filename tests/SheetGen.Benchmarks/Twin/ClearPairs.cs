using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks.Twin;

/// <summary>Which candidates come too close to each other.</summary>
internal sealed class ClearPairs(double clearance)
{
    private const int Probes = 60;

    /// <summary>Most pairs that are looked at; beyond that two boxes count as having a clear pair, which leaves the limit valid.</summary>
    private const long GreatestLook = 3_000_000;

    public bool AreTooClose(in Candidate a, in Candidate b) => HoleDistance.CloserThan(a.Hole, b.Hole, clearance);

    /// <summary>True unless every candidate of one box is too close to every one of the other.</summary>
    public bool Exist(CandidateBox a, CandidateBox b)
    {
        Candidate[] first = a.Members, second = b.Members;
        uint random = 12345;
        int Next(int under) => (int)((random = random * 1664525 + 1013904223) >> 8) % under;
        for (int i = 0; i < Probes; i++)
        {
            if (!AreTooClose(first[Next(first.Length)], second[Next(second.Length)]))
                return true;
        }
        if ((long)first.Length * second.Length > GreatestLook)
            return true;
        foreach (Candidate x in first)
        {
            foreach (Candidate y in second)
            {
                if (!AreTooClose(x, y))
                    return true;
            }
        }
        return false;
    }
}
