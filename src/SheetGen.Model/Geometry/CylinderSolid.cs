namespace SheetGen.Model.Geometry;

/// <summary>A cylinder with flat ends square to its axis: a drilled shaft or pile.</summary>
/// <param name="End1">One end of the axis.</param>
/// <param name="End2">The other end; where both are one point the body is a disc that lies level.</param>
/// <param name="Radius">Half of the diameter, 0 or more.</param>
public sealed record CylinderSolid(Vector3D End1, Vector3D End2, double Radius) : Solid
{
    private readonly Vector3D _axis = Vectors.Unit(End2 - End1, new Vector3D(0, 0, 1));
    private readonly double _half = (End2 - End1).Length / 2;

    public Vector3D End1 { get; } = End1;

    public Vector3D End2 { get; } = End2;

    public double Radius { get; } = Radius;

    public override Bounds Bounds { get; } = BoundsOf(End1, End2, Radius);

    internal override Vector3D Anchor => End1 + (End2 - End1) * 0.5;

    internal override double Measure(Vector3D local, out Vector3D outward)
    {
        double along = local.Dot(_axis);
        Vector3D across = local - _axis * along;
        double radial = across.Length;
        double beyondEnd = Math.Abs(along) - _half, beyondSide = radial - Radius;
        Vector3D toEnd = along < 0 ? -_axis : _axis;
        if (beyondEnd > 0 && beyondSide > 0)
        {
            double distance = Math.Sqrt(beyondEnd * beyondEnd + beyondSide * beyondSide);
            outward = toEnd * (beyondEnd / distance) + across * (beyondSide / distance / radial);
            return distance;
        }
        if (beyondEnd > beyondSide)
        {
            outward = toEnd;
            return beyondEnd;
        }
        outward = radial > 0 ? across * (1 / radial) : Vectors.SquareTo(_axis);
        return beyondSide;
    }

    private static Bounds BoundsOf(Vector3D end1, Vector3D end2, double radius)
    {
        Vector3D axis = Vectors.Unit(end2 - end1, new Vector3D(0, 0, 1));
        double Reach(double part) => radius * Math.Sqrt(Math.Max(0, 1 - part * part));
        Vector3D reach = new(Reach(axis.N), Reach(axis.E), Reach(axis.Z));
        Bounds ends = Bounds.Of(end1, end2);
        return new Bounds(ends.Low - reach, ends.High + reach);
    }
}
