using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Spirals against a fine numerical integration.</summary>
public sealed class SpiralTests
{
    private static readonly LayoutElement[] Elements =
    [
        new LayoutElement.Tangent(50), new LayoutElement.Spiral(double.PositiveInfinity, 250, 120, Turn.Right), new LayoutElement.Arc(250, 80, Turn.Right),
        new LayoutElement.Spiral(250, 900, 90, Turn.Right), new LayoutElement.Spiral(900, double.PositiveInfinity, 60, Turn.Right), new LayoutElement.Spiral(double.PositiveInfinity, 300, 100, Turn.Left), new LayoutElement.Tangent(40),
    ];

    /// <summary>End point and azimuth of a spiral by the trapezoidal rule in a quarter of a million steps.</summary>
    internal static (Vector2D End, double Azimuth) Integrate(string type, double from, double to, double length)
    {
        const int Steps = 250_000;
        double azimuth = 0, n = 0, e = 0, h = length / Steps;
        double Law(double t) => type switch
        {
            "bloss" => 3 * t * t - 2 * t * t * t,
            "cosine" => 0.5 - 0.5 * Math.Cos(Math.PI * t),
            "sinusoid" => t - Math.Sin(2 * Math.PI * t) / (2 * Math.PI),
            "biquadratic" => t < 0.5 ? 2 * t * t : 1 - 2 * (1 - t) * (1 - t),
            _ => t,
        };
        for (int i = 0; i < Steps; i++)
        {
            double one = from + (to - from) * Law(i / (double)Steps), two = from + (to - from) * Law((i + 1) / (double)Steps);
            double next = azimuth + (one + two) / 2 * h;
            n += (Math.Cos(azimuth) + Math.Cos(next)) / 2 * h;
            e += (Math.Sin(azimuth) + Math.Sin(next)) / 2 * h;
            azimuth = next;
        }
        return (new Vector2D(n, e), azimuth);
    }

    [Theory]
    [InlineData(0, 1 / 250.0, 120)]
    [InlineData(1 / 250.0, 0, 120)]
    [InlineData(-1 / 300.0, -1 / 90.0, 200)]
    [InlineData(0, 1 / 20.0, 400)]
    [InlineData(1 / 1e6, -1 / 60.0, 33)]
    public void The_chord_of_a_clothoid_is_that_of_a_fine_integration(double from, double to, double length)
    {
        (Vector2D end, _) = Integrate("clothoid", from, to, length);
        Vector2D chord = Clothoid.Chord(0, from, (to - from) / length, length);
        Assert.True((chord - end).Length < 1e-7 * length, $"{chord} {end}");
    }

    /// <summary>Tables of the clothoid: at unit length and A = 1, x = 0.975287... = int cos(s^2/2), y = 0.163714... (series, from memory).</summary>
    [Fact]
    public void The_unit_clothoid_is_that_of_its_series()
    {
        double x = 0, y = 0, factorial = 1;
        for (int k = 0; k < 12; k++)
        {
            if (k > 0)
                factorial *= k;
            double term = 1 / (Math.Pow(2, k) * factorial * (2 * k + 1));
            (x, y) = (k % 4) switch { 0 => (x + term, y), 1 => (x, y + term), 2 => (x - term, y), _ => (x, y - term) };
        }
        Vector2D chord = Clothoid.Chord(0, 0, 1, 1);
        Assert.Equal(x, chord.N, 1e-12);
        Assert.Equal(y, chord.E, 1e-12);
    }

    [Fact]
    public void A_line_with_spirals_is_smooth_and_its_projection_goes_back()
    {
        var line = LayoutLine.Build("L", 1000, new Vector2D(10, 20), 0.4, Elements);
        foreach ((LayoutPiece a, LayoutPiece b) in line.Pieces.Zip(line.Pieces.Skip(1)))
        {
            Assert.True((a.PointAt(a.End) - b.Point).Length < 1e-9);
            Assert.Equal(a.AzimuthAt(a.End), b.Azimuth, 1e-12);
        }
        for (double along = -30; along <= line.Length + 30; along += 3.7)
        {
            foreach (double right in new[] { -60.0, -5, 0, 5, 60 })
            {
                LinePlace place = LayoutProjection.Locate(line, line.PointAt(along, right));
                Assert.Equal(along, place.Along, 1e-6);
                Assert.Equal(right, place.Right, 1e-6);
            }
        }
    }

    [Fact]
    public void Distances_along_the_face_are_those_of_fine_chords_and_places_go_back()
    {
        WallProject project = BaseWall.Read(BaseWall.Text);
        var line = LayoutLine.Build("L", 1000, default, 0.4, Elements);
        Wall wall = project.Walls[0] with { LayoutLine = line, Start = 0, End = line.Length, FaceOffset = 12, Batter = new Batter(8, 100) };
        var face = new Face(wall);
        foreach (double z in new[] { 95.0, 118 })
        {
            foreach ((double from, double to) in new[] { (10.0, 480.0), (60, 100), (55.5, 321.25), (130, 171) })
            {
                double sum = 0;
                const int Steps = 20_000;
                for (int i = 0; i < Steps; i++)
                    sum += (face.PointAt(from + (to - from) * (i + 1) / Steps, z) - face.PointAt(from + (to - from) * i / Steps, z)).Length;
                Assert.Equal(sum, face.Distance(from, to, z), 1e-5);
                Assert.Equal(to, face.PlaceAt(from, sum, z), 1e-5);
                Assert.Equal(from, face.PlaceAt(to, -sum, z), 1e-5);
            }
        }
    }

    [Theory]
    [InlineData("spiral: {length: 100, end_radius: 250, turn: right}", "")]
    [InlineData("spiral: {length: 100, turn: right}", "the radius of the spiral does not change")]
    [InlineData("spiral: {length: 100, start_radius: 50, end_radius: 50, turn: right}", "the radius of the spiral does not change")]
    [InlineData("spiral: {length: 9000, start_radius: 50, end_radius: 60, turn: right}", "turns by more than a full circle")]
    [InlineData("kink: 0.05", "a corner stands between")]
    public void Spirals_are_typed_in_the_project_file(string element, string message)
    {
        string[] problems = BaseWall.Problems(BaseWall.With("- line: 40", "- line: 40\n      - " + element));
        Assert.Equal(message.Length == 0 ? 0 : 1, problems.Count(p => p.Contains(message.Length == 0 ? "error" : message, StringComparison.Ordinal)));
    }
}
