namespace SheetGen.Layout.Placing;

/// <summary>A direction that a nail of a section may take.</summary>
/// <param name="Splay">Degrees, positive up-station.</param>
/// <param name="Inclination">Degrees below horizontal.</param>
/// <param name="IsNoted">True where either change is beyond the field tolerance.</param>
/// <param name="Effort">Degrees turned in all, in cost units.</param>
/// <param name="Stretch">Factor on the length that keeps the reach behind the face; 1 within the field tolerance.</param>
public readonly record struct Turning(double Splay, double Inclination, bool IsNoted, long Effort, double Stretch)
{
    public bool IsStraight => Effort == 0;
}
