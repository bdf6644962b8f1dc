using SheetGen.Model.Results;

namespace SheetGen.Exchange.Ifc;

/// <summary>Property and quantity sets. The program's own sets begin with SheetGen_; the schema's with Pset_ and Qto_.</summary>
internal sealed class IfcProperties(IfcModel model, IfcUnits units)
{
    public object Label(string text) => new StepTyped("IFCLABEL", IfcModel.Label(text) ?? "");

    /// <summary>A property; null where there is no value to give.</summary>
    public StepRef? Text(string name, string? value) =>
        string.IsNullOrEmpty(value) ? null : Single(name, value.Length > 255 ? new StepTyped("IFCTEXT", value) : Label(value), null);

    public StepRef? Length(string name, double? value) => Number(name, "IFCLENGTHMEASURE", value, null);

    public StepRef? Degrees(string name, double? value) => Number(name, "IFCPLANEANGLEMEASURE", value, units.Degree);

    public StepRef? Ratio(string name, double? value) => Number(name, "IFCRATIOMEASURE", value, null);

    public StepRef? Whole(string name, int? value) => value is { } count ? Single(name, new StepTyped("IFCINTEGER", count), null) : null;

    public StepRef? Flag(string name, bool value) => Single(name, new StepTyped("IFCBOOLEAN", value), null);

    /// <summary>Gives things a set of properties; the ones without a value are left out.</summary>
    public void Set(string key, string name, IReadOnlyCollection<StepRef> of, params StepRef?[] properties)
    {
        StepRef[] given = [.. properties.OfType<StepRef>()];
        if (given.Length > 0 && of.Count > 0)
            Relate(key, name, of, model.Root("IFCPROPERTYSET", $"set|{name}|{key}", name, null, given));
    }

    public StepRef? LengthQuantity(string name, double? value, string? text = null) => Quantity("IFCQUANTITYLENGTH", name, value, text);

    public StepRef? AreaQuantity(string name, double? value, string? text = null) => Quantity("IFCQUANTITYAREA", name, value, text);

    public StepRef? VolumeQuantity(string name, double? value, string? text = null) => Quantity("IFCQUANTITYVOLUME", name, value, text);

    public StepRef? WeightQuantity(string name, double? value, string? text = null) => Quantity("IFCQUANTITYWEIGHT", name, value, text);

    /// <summary>A count; an unrounded one (shares of stock bars, spare nails) as a number, since the schema's counts are whole.</summary>
    public StepRef? CountQuantity(string name, double? value, string? text = null) => value is { } count && count == Math.Floor(count) && count < int.MaxValue
        ? model.Step.Value("IFCQUANTITYCOUNT", name, text, null, (int)count, null)
        : Quantity("IFCQUANTITYNUMBER", name, value, text);

    /// <summary>Gives things a set of quantities.</summary>
    public void Quantities(string key, string name, IReadOnlyCollection<StepRef> of, params StepRef?[] quantities)
    {
        StepRef[] given = [.. quantities.OfType<StepRef>()];
        if (given.Length > 0 && of.Count > 0)
            Relate(key, name, of, model.Root("IFCELEMENTQUANTITY", $"quantities|{name}|{key}", name, null, null, given));
    }

    private void Relate(string key, string name, IReadOnlyCollection<StepRef> of, StepRef set) =>
        model.Root("IFCRELDEFINESBYPROPERTIES", $"defines|{name}|{key}", null, null, of, set);

    private StepRef? Number(string name, string measure, double? value, StepRef? unit) =>
        value is null || double.IsInfinity(value.Value) ? null : Single(name, new StepTyped(measure, FiniteNumber.Of(value.Value)), unit);

    private StepRef Single(string name, object value, StepRef? unit) => model.Step.Value("IFCPROPERTYSINGLEVALUE", name, null, value, unit);

    private StepRef? Quantity(string entity, string name, double? value, string? text) =>
        value is { } number ? model.Step.Value(entity, name, text, null, number, null) : null;
}
