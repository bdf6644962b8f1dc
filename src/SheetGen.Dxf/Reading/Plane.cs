namespace SheetGen.Dxf;

/// <summary>The coordinate system of a flat entity (OCS), given by its extrusion direction through the format's arbitrary axis rule.</summary>
internal sealed class Plane
{
    private const double Small = 1.0 / 64, Flat = 1e-9;
    private readonly Xyz _x, _y, _z;

    private Plane(Xyz extrusion)
    {
        _z = extrusion * (1 / extrusion.Length);
        var nearWorldZ = Math.Abs(_z.X) < Small && Math.Abs(_z.Y) < Small;
        _x = Xyz.Cross(nearWorldZ ? new(0, 1, 0) : new(0, 0, 1), _z);
        _x *= 1 / _x.Length;
        _y = Xyz.Cross(_z, _x);
    }

    /// <summary>The plane of the drawing.</summary>
    internal static Plane World { get; } = new(new(0, 0, 1));

    /// <summary>Whether it is not parallel to the drawing, so that circles would not look round.</summary>
    internal bool IsTilted => 1 - Math.Abs(_z.Z) > Flat;

    /// <summary>Whether it is seen from behind: X is reversed, and so is the sense of angles.</summary>
    internal bool IsMirrored => !IsTilted && _z.Z < 0;

    /// <summary>The plane of an entity.</summary>
    internal static Plane Of(Record record)
    {
        if (!record.Has(210) && !record.Has(230))
            return World;
        var extrusion = new Xyz(record.Real(210), record.Real(220), record.Real(230, 1));
        return extrusion.Length > Flat ? new(extrusion) : World;
    }

    /// <summary>A point in world coordinates.</summary>
    internal Xyz ToWorld(Xyz point) => (_x * point.X) + (_y * point.Y) + (_z * point.Z);

    /// <summary>A direction in world coordinates, degrees, of a plane that is not tilted.</summary>
    internal double Angle(double degrees) => IsMirrored ? 180 - degrees : degrees;

    /// <summary>A turn in world coordinates, degrees, of a plane that is not tilted.</summary>
    internal double Turn(double degrees) => IsMirrored && degrees != 0 ? -degrees : degrees;

    /// <summary>A bulge seen from above.</summary>
    internal double Bulge(double bulge) => IsMirrored && bulge != 0 ? -bulge : bulge;
}
