namespace SheetGen.Layout.Placing;

/// <summary>A direction that a nail of a section may take.</summary>
/// <param name="Splay">Degrees, positive up-station.</param>
/// <param name="Inclination">Degrees below horizontal.</param>
/// <param name="IsNoted">True where either change is beyond the field tolerance.</param>
/// <param name="Effort">Degrees turned in all, in cost units.</param>
/// <param name="Lengthening">Factor on the length that keeps the reach behind the face; 1 within the field tolerance.</param>
/// <param name="Inward">Part of the unit vector along the face's normal.</param>
/// <param name="UpStation">Part of the unit vector along the layout line.</param>
/// <param name="Down">Part of the unit vector downward.</param>
internal sealed record Turning(
    double Splay, double Inclination, bool IsNoted, long Effort, double Lengthening, double Inward, double UpStation, double Down)
{
    public bool IsStraight => Effort == 0;

    /// <summary>What turning costs a nail.</summary>
    public Cost Cost { get; } = new(0, IsNoted ? 1 : 0, Effort, 0, 0);
}
