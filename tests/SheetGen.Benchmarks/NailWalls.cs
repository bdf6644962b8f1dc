using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks;

/// <summary>Holes of a long, gently bending wall of eight rows: most in the grid's direction, some turned, all slightly tapered. Feet.</summary>
internal static class NailWalls
{
    private const int Rows = 8;
    private const double Spacing = 3.5;

    public static Hole[] Make(int count, int seed)
    {
        var random = new Random(seed);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        var holes = new Hole[count];
        var at = new Vector2D(5000, 2000);
        double azimuth = 0.4, bend = 0;
        for (int i = 0; i < count; i++)
        {
            int row = i % Rows;
            if (row == 0)
            {
                if (i / Rows % 40 == 0)
                    bend = Between(-0.01, 0.01);
                azimuth += bend;
                at += Vector2D.FromAzimuth(azimuth) * Spacing;
            }
            bool turned = random.NextDouble() < 0.15;
            double splay = turned ? Between(-25, 25) : 0, inclination = turned ? Between(10, 20) : 15;
            double s = azimuth + Math.PI / 2 - splay * Math.PI / 180, down = inclination * Math.PI / 180;
            Vector3D direction = (Vector2D.FromAzimuth(s) * Math.Cos(down)).At(-Math.Sin(down));
            holes[i] = new Hole(at.At(120 - Spacing * row + Between(-0.05, 0.05)), direction, row < 4 ? 24 : 20, 0.25, 0.005);
        }
        return holes;
    }
}
