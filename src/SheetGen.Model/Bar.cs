namespace SheetGen.Model;

/// <summary>A reinforcing bar size with its published nominal values.</summary>
/// <param name="Size">Designation, such as #8.</param>
/// <param name="Grade">Yield strength in ksi (60, 75, 80, 97, 150 ...).</param>
/// <param name="DiameterInches">Nominal diameter in inches.</param>
/// <param name="AreaSquareInches">Nominal area in square inches.</param>
/// <param name="PoundsPerFoot">Nominal weight in pounds per foot.</param>
/// <param name="DiameterMillimetres">Nominal diameter in millimetres.</param>
/// <param name="AreaSquareMillimetres">Nominal area in square millimetres.</param>
/// <param name="KilogramsPerMetre">Nominal mass in kilograms per metre.</param>
public sealed record Bar(
    string Size, int Grade, double DiameterInches, double AreaSquareInches, double PoundsPerFoot,
    double DiameterMillimetres, double AreaSquareMillimetres, double KilogramsPerMetre)
{
    public override string ToString() => Grade > 0 ? FormattableString.Invariant($"{Size} Gr {Grade}") : Size;
}
