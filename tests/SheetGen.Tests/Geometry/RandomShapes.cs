using SheetGen.Model.Geometry;

namespace SheetGen.Tests.Geometry;

/// <summary>Random holes and solids of believable size, from a seed.</summary>
internal sealed class RandomShapes(int seed)
{
    private readonly Random _random = new(seed);

    public double Between(double low, double high) => low + (high - low) * _random.NextDouble();

    public int Whole(int below) => _random.Next(below);

    public Vector3D Point(double size) => new(Between(-size, size), Between(-size, size), Between(-size, size));

    public Vector3D Direction()
    {
        while (true)
        {
            Vector3D v = Point(1);
            if (v.Length is > 0.1 and < 1)
                return v * (1 / v.Length);
        }
    }

    public Hole Hole(double size = 12, bool drifts = true) =>
        new(Point(size), Direction(), Between(0.5, 30), Between(0.1, 0.4), drifts && _random.Next(3) > 0 ? Between(0, 0.06) : 0);

    public Solid Solid(int kind) => kind switch
    {
        0 => new CylinderSolid(Point(8), Point(8), Between(0.5, 3)),
        1 => new PrismSolid(ConvexPolygon(), Between(-8, 0), Between(0, 8)),
        2 => new CapsuleSolid(Point(8), Point(8), Between(0.2, 2)),
        3 => new BoundarySolid(Point(10).Plan, Point(10).Plan),
        _ => Panel(),
    };

    public List<Vector2D> ConvexPolygon()
    {
        int count = 3 + _random.Next(5);
        double radius = Between(1, 6), turn = Between(0, 6), flat = Between(0.2, 1);
        Vector2D middle = Point(5).Plan;
        var corners = new List<Vector2D>();
        for (int i = 0; i < count; i++)
        {
            double angle = turn + (i + Between(0.05, 0.9)) * 2 * Math.PI / count;
            corners.Add(middle + new Vector2D(radius * Math.Cos(angle), flat * radius * Math.Sin(angle)));
        }
        if (_random.Next(2) == 0)
            corners.Reverse();
        return corners;
    }

    private FaceSolid Panel()
    {
        Vector3D x = Direction(), y = Vectors(x), middle = Point(6);
        return new FaceSolid(ConvexPolygon().ConvertAll(c => middle + x * c.N + y * c.E));
    }

    private Vector3D Vectors(Vector3D x)
    {
        Vector3D c = x.Cross(Direction());
        return c * (1 / c.Length);
    }
}
