using SheetGen.Model.Units;

namespace SheetGen.ProjectFile.Keys;

/// <summary>A kind of figure with units other than length: its unit in projects in feet and in metres, and the sizes of all its units.</summary>
/// <param name="Name">What it is, with its article.</param>
/// <param name="Foot">Unit of a bare number in projects in feet.</param>
/// <param name="Metre">Unit of a bare number in projects in metres.</param>
/// <param name="Sizes">Exact or defined sizes of the units, all in one of them, as numerator and denominator.</param>
public sealed record Measure(string Name, string Foot, string Metre, IReadOnlyDictionary<string, (decimal Over, decimal Under)> Sizes)
{
    /// <summary>Pounds of force in newtons, 0.45359237 * 9.80665 exactly.</summary>
    private const decimal Newton = 4.4482216152605m;

    /// <summary>Millimetres in an inch, exactly.</summary>
    private const decimal Inch = 25.4m;

    public static Measure Force { get; } = new("a force", "kip", "kN", new Dictionary<string, (decimal, decimal)>
    {
        ["lb"] = (Newton, 1),
        ["lbf"] = (Newton, 1),
        ["kip"] = (Newton * 1000, 1),
        ["kips"] = (Newton * 1000, 1),
        ["k"] = (Newton * 1000, 1),
        ["n"] = (1, 1),
        ["kn"] = (1000, 1),
    });

    /// <summary>Bond, strength of concrete: psi, or kPa.</summary>
    public static Measure Bond { get; } = Pressure("a bond strength", "psi", "kPa");

    public static Measure Concrete { get; } = Pressure("a strength", "psi", "MPa");

    public static Measure Steel { get; } = Pressure("a yield strength", "ksi", "MPa");

    /// <summary>Steel per width.</summary>
    public static Measure SteelPerWidth { get; } = new("steel per width", "in2/ft", "mm2/m", new Dictionary<string, (decimal, decimal)>
    {
        ["in2/ft"] = (Inch * Inch * 1000, 304.8m),
        ["sqin/ft"] = (Inch * Inch * 1000, 304.8m),
        ["mm2/m"] = (1, 1),
        ["cm2/m"] = (100, 1),
    });

    public static Measure SteelArea { get; } = new("an area", "in2", "mm2", new Dictionary<string, (decimal, decimal)>
    {
        ["in2"] = (Inch * Inch, 1),
        ["sqin"] = (Inch * Inch, 1),
        ["mm2"] = (1, 1),
        ["cm2"] = (100, 1),
    });

    public static Measure UnitWeight { get; } = new("a unit weight", "pcf", "kN/m3", new Dictionary<string, (decimal, decimal)>
    {
        ["pcf"] = (Newton, 0.028316846592m),
        ["lb/ft3"] = (Newton, 0.028316846592m),
        ["kcf"] = (Newton * 1000, 0.028316846592m),
        ["kn/m3"] = (1000, 1),
    });

    public string UnitFor(LengthUnit unit) => Lengths.IsFoot(unit) ? Foot : Metre;

    private static Measure Pressure(string name, string foot, string metre) => new(name, foot, metre, new Dictionary<string, (decimal, decimal)>
    {
        ["psi"] = (Newton, Inch * Inch),
        ["ksi"] = (Newton * 1000, Inch * Inch),
        ["psf"] = (Newton, Inch * Inch * 144),
        ["ksf"] = (Newton * 1000, Inch * Inch * 144),
        ["kpa"] = (1, 1000),
        ["mpa"] = (1, 1),
        ["n/mm2"] = (1, 1),
        ["kn/m2"] = (1, 1000),
    });
}
