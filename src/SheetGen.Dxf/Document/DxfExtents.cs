namespace SheetGen.Dxf;

/// <summary>A rectangle along the axes.</summary>
public readonly record struct DxfExtents(DxfPoint Min, DxfPoint Max)
{
    /// <summary>Width along X.</summary>
    public double Width => Max.X - Min.X;

    /// <summary>Height along Y.</summary>
    public double Height => Max.Y - Min.Y;

    /// <summary>The middle of the rectangle.</summary>
    public DxfPoint Center => new((Min.X + Max.X) / 2, (Min.Y + Max.Y) / 2);

    /// <summary>The least rectangle that holds both.</summary>
    public DxfExtents Union(DxfExtents other) => new(
        new(Math.Min(Min.X, other.Min.X), Math.Min(Min.Y, other.Min.Y)),
        new(Math.Max(Max.X, other.Max.X), Math.Max(Max.Y, other.Max.Y)));
}
