namespace SheetGen.ProjectFile.Tree;

/// <summary>Finds the name that was probably meant.</summary>
public static class Suggestion
{
    private const int LongestName = 40;

    /// <summary>The nearest of the names by edit distance; null where none is near.</summary>
    public static string? Nearest(string given, IEnumerable<string> names)
    {
        if (given.Length is 0 or > LongestName)
            return null;
        string? best = null;
        int least = Math.Min(Math.Max(1, given.Length / 3) + 1, given.Length);
        foreach (string name in names.Where(n => n.Length <= LongestName))
        {
            int distance = Distance(given.ToLowerInvariant(), name.ToLowerInvariant());
            if (distance < least)
                (best, least) = (name, distance);
        }
        return best;
    }

    /// <summary>Number of letters to insert, remove, change or swap with their neighbour.</summary>
    private static int Distance(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            d[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = a[i - 1] == b[j - 1] ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }
        return d[a.Length, b.Length];
    }
}
