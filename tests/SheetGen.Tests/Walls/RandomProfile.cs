namespace SheetGen.Tests.Walls;

/// <summary>Draws the top, the stepped bottom and the finished grade of a random wall.</summary>
public sealed class RandomProfile(WallRandom random, double foot, RandomWallOptions options)
{
    public List<(double Station, double Elevation)> Top { get; } = [];

    public List<(double Station, double Elevation)> Steps { get; } = [];

    public List<(double Station, double Elevation)> Grade { get; } = [];

    private double L(double feet) => Math.Round(feet * foot, 6);

    /// <summary>Draws the profiles between two stations; the bottom steps at panel breaks, or follows from the grade.</summary>
    public void Draw(double start, double end, List<double> breaks, bool fromGrade)
    {
        DrawTop(start, end, L(random.Between(60, 300, 1)));
        if (fromGrade)
            DrawGrade(start, end);
        else
            DrawSteps(end, breaks);
    }

    private void DrawTop(double start, double end, double level)
    {
        double at = start, z = level;
        Top.Add((at, z));
        while (at < end)
        {
            double reach = Math.Min(end - at, L(random.Between(15, 60, 0.5)));
            if (end - at - reach < L(4))
                reach = end - at;
            double slope = random.Of(0, random.Between(-0.05, 0.05), random.Between(-0.12, 0.12));
            at = end - at - reach < 1e-6 ? end : Math.Round(at + reach, 6);
            z = Math.Round(z + Math.Clamp(slope, 0.85 * (level - L(12) - z) / reach, (level + L(12) - z) / reach) * reach, 3);
            Top.Add((at, z));
            if (end - at > L(8) && random.Chance(0.15))
            {
                z = Math.Round(z + L(random.Of(-3, -2, -1, 1, 2, 3)), 3);
                Top.Add((at, z));
            }
        }
    }

    private void DrawSteps(double end, List<double> breaks)
    {
        double least = options.Satisfiable ? L(6.5) : L(random.Of(0.7, 3, 6, 8));
        double height = L(random.Between(8, 26)), step = L(random.Of(0.5, 1, 1.25, 2.5));
        double bottom = double.NaN;
        for (int i = 0; i < breaks.Count; i++)
        {
            if (random.Chance(0.08))
                height = random.Chance(0.15) ? least : L(random.Between(8, 26));
            double low = LowestTop(breaks[i], i + 1 < breaks.Count ? breaks[i + 1] : end);
            double wanted = Math.Floor((low - height) / step) * step;
            if (!double.IsNaN(bottom))
            {
                double change = Math.Clamp(wanted - bottom, -L(2.5), L(2.5));
                wanted = Math.Abs(change) < L(1) && random.Chance(0.6) ? bottom : bottom + Math.Round(change / step) * step;
            }
            while (low - wanted < least)
                wanted -= step;
            if (double.IsNaN(bottom) || Math.Abs(wanted - bottom) > L(0.01))
                Steps.Add((breaks[i], Math.Round(wanted, 3)));
            bottom = Math.Round(wanted, 3);
        }
    }

    private void DrawGrade(double start, double end)
    {
        double low = LowestTop(start, end) - L(random.Between(10, 20, 0.5)), at = start, z = low;
        Grade.Add((at, z));
        while (at < end)
        {
            double reach = Math.Min(end - at, L(random.Between(20, 60, 0.5)));
            at = end - at - reach < 1e-6 ? end : Math.Round(at + reach, 6);
            z = Math.Round(Math.Min(low, z + random.Between(-0.04, 0.04) * reach), 3);
            Grade.Add((at, z));
        }
        Steps.Add((start, low - L(3)));
    }

    private double LowestTop(double from, double to)
    {
        double low = Math.Min(TopAt(from), TopAt(to));
        foreach ((double s, double z) in Top)
        {
            if (s >= from && s <= to)
                low = Math.Min(low, z);
        }
        return low;
    }

    private double TopAt(double station)
    {
        for (int i = Top.Count - 1; i > 0; i--)
        {
            (double s0, double z0) = Top[i - 1];
            (double s1, double z1) = Top[i];
            if (station >= s0 && s1 > s0)
                return station >= s1 ? z1 : z0 + (z1 - z0) * (station - s0) / (s1 - s0);
        }
        return Top[0].Elevation;
    }
}
