using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>The square plan cells that a hole runs through.</summary>
public static class PlanCells
{
    public static HashSet<(int N, int E)> Of(in Hole hole, double grow, double cell)
    {
        double margin = Math.Max(hole.Radius, hole.RadiusAt(hole.Length)) + grow;
        var keys = new HashSet<(int N, int E)>();
        int pieces = Math.Max(1, (int)Math.Ceiling(hole.Length / cell));
        for (int i = 0; i < pieces; i++)
        {
            Vector3D a = hole.At(hole.Length * i / pieces), b = hole.At(hole.Length * (i + 1) / pieces);
            for (int n = Floor(Math.Min(a.N, b.N) - margin, cell); n <= Floor(Math.Max(a.N, b.N) + margin, cell); n++)
            {
                for (int e = Floor(Math.Min(a.E, b.E) - margin, cell); e <= Floor(Math.Max(a.E, b.E) + margin, cell); e++)
                    keys.Add((n, e));
            }
        }
        return keys;
    }

    public static int Floor(double value, double cell) => (int)Math.Floor(value / cell);
}
