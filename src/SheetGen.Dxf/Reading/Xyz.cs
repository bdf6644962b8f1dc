namespace SheetGen.Dxf;

/// <summary>A point of space, as files have it.</summary>
internal readonly record struct Xyz(double X, double Y, double Z)
{
    public static Xyz operator +(Xyz a, Xyz b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Xyz operator *(Xyz a, double factor) => new(a.X * factor, a.Y * factor, a.Z * factor);

    internal DxfPoint Xy => new(X, Y);

    internal double Length => Math.Sqrt((X * X) + (Y * Y) + (Z * Z));

    internal static Xyz Cross(Xyz a, Xyz b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));
}
