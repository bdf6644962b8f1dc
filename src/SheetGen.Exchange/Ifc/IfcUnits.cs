using SheetGen.Model.Units;

namespace SheetGen.Exchange.Ifc;

/// <summary>
/// The project's own units, so that every figure is the one of the other results: length, area, volume in metres or in the foot that the
/// project has, mass in kilograms or pounds, plane angles in radians; degrees for properties that say so.
/// </summary>
internal sealed class IfcUnits
{
    private const double KilogramsPerPound = 0.45359237;

    private readonly IfcModel _model;

    public IfcUnits(IfcModel model)
    {
        _model = model;
        LengthUnit unit = model.Input.Project.Unit;
        Length = unit == LengthUnit.Metre ? Si("LENGTHUNIT", "METRE") : Feet(unit, "LENGTHUNIT", "FOOT", 1, "METRE", "IFCLENGTHMEASURE");
        StepRef area = unit == LengthUnit.Metre ? Si("AREAUNIT", "SQUARE_METRE") : Feet(unit, "AREAUNIT", "SQUARE FOOT", 2, "SQUARE_METRE", "IFCAREAMEASURE");
        StepRef volume = unit == LengthUnit.Metre ? Si("VOLUMEUNIT", "CUBIC_METRE") : Feet(unit, "VOLUMEUNIT", "CUBIC FOOT", 3, "CUBIC_METRE", "IFCVOLUMEMEASURE");
        StepRef kilogram = model.Step.Value("IFCSIUNIT", StepFile.Derived, new StepEnum("MASSUNIT"), new StepEnum("KILO"), new StepEnum("GRAM"));
        StepRef mass = Lengths.IsFoot(unit) ? Converted("MASSUNIT", "POUND", [0, 1], KilogramsPerPound, kilogram, "IFCMASSMEASURE") : kilogram;
        StepRef radian = Si("PLANEANGLEUNIT", "RADIAN");
        Degree = Converted("PLANEANGLEUNIT", "DEGREE", [], Math.PI / 180, radian, "IFCPLANEANGLEMEASURE");
        Assignment = model.Step.Add("IFCUNITASSIGNMENT", (object)new[] { Length, area, volume, mass, radian });
    }

    public StepRef Length { get; }

    public StepRef Degree { get; }

    public StepRef Assignment { get; }

    private StepRef Si(string kind, string name) => _model.Step.Value("IFCSIUNIT", StepFile.Derived, new StepEnum(kind), null, new StepEnum(name));

    private StepRef Feet(LengthUnit unit, string kind, string name, int power, string si, string measure)
    {
        int[] exponents = [power];
        string full = unit == LengthUnit.SurveyFoot ? "US SURVEY " + name : name;
        return Converted(kind, full, exponents, Math.Pow(Lengths.MetresPer(unit), power), Si(kind, si), measure);
    }

    private StepRef Converted(string kind, string name, int[] exponents, double factor, StepRef si, string measure)
    {
        object?[] dimensions = new object?[7];
        for (int i = 0; i < 7; i++)
            dimensions[i] = i < exponents.Length ? exponents[i] : 0;
        return _model.Step.Value("IFCCONVERSIONBASEDUNIT", _model.Step.Value("IFCDIMENSIONALEXPONENTS", dimensions), new StepEnum(kind), name,
            _model.Step.Value("IFCMEASUREWITHUNIT", new StepTyped(measure, factor), si));
    }
}
