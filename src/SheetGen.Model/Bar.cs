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
    /// <summary>
    /// True where the weight is published for the grade, or the project file gives it. ASTM A615/A615M knows grades 40, 60, 75, 80 and
    /// 100; bars of other grades (A722 grade 150 above all) have rolled shapes and weights of their own.
    /// </summary>
    public bool HasWeight => IsWeightGiven || Grade is 0 or 40 or 60 or 75 or 80 or 100;

    /// <summary>True where the project file gives the weight.</summary>
    public bool IsWeightGiven { get; init; }

    /// <summary>The bar with a weight of the user's own, in lb/ft or kg/m.</summary>
    public Bar WithWeight(double weight, bool metric)
    {
        const double kilogramsPerMetre = 0.45359237 / 0.3048;
        return this with
        {
            PoundsPerFoot = metric ? weight / kilogramsPerMetre : weight,
            KilogramsPerMetre = metric ? weight : weight * kilogramsPerMetre,
            IsWeightGiven = true,
        };
    }

    public override string ToString() => Grade > 0 ? FormattableString.Invariant($"{Size} Gr {Grade}") : Size;
}
