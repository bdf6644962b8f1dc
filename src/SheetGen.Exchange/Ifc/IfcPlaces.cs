using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Ifc;

/// <summary>Project, site, a facility a wall and a part of it a section; what stands in each is collected and related at the end.</summary>
internal sealed class IfcPlaces
{
    private const string Draft = "Draft for review by the engineer of record; not sealed. Verify obstructions and utilities before drilling.";

    private readonly IfcModel _model;
    private readonly IfcProperties _properties;
    private readonly Dictionary<string, StepRef> _sections = [];
    private readonly List<(string Key, StepRef Place, List<StepRef> Elements)> _held = [];

    public IfcPlaces(IfcModel model, IfcUnits units, IfcShapes shapes, IfcProperties properties)
    {
        _model = model;
        _properties = properties;
        WallProject project = model.Input.Project;
        Vector2D shift = model.Frame.ModelShift;
        SitePlacement = model.Placement(null, model.Axes(shift.At(0)));
        string name = project.Info.Number.Length > 0 ? project.Info.Number : project.Info.Title;
        Project = model.Root("IFCPROJECT", "project", IfcModel.Label(name), Draft, null, IfcModel.Label(project.Info.Title), null, new[] { shapes.Context }, units.Assignment);
        Site = model.Root("IFCSITE", "site", IfcModel.Label(project.Info.Title), null, null, SitePlacement, null, null, new StepEnum("ELEMENT"), null, null, null, null, null);
        _held.Add(("site", Site, []));
        model.Aggregate("project", Project, [Site]);
        AddMap(units, shapes);
        AddWalls();
        AddQuantities("project", "SheetGen_ProjectQuantities", Site, model.Input.Quantities.Definitions.Select(d => model.Input.Quantities.Totals[d.Name]));
        properties.Set("project", "SheetGen_Layout", [Site], Layout(model.Input));
    }

    public StepRef Project { get; }

    public StepRef Site { get; }

    public StepRef SitePlacement { get; }

    /// <summary>A placement at the project's origin, in the site.</summary>
    public StepRef AtOrigin() => _model.Placement(SitePlacement, _model.Axes(default));

    /// <summary>Puts an element into a section, or into the site where it belongs to none.</summary>
    public void Hold(StepRef element, Wall? wall = null, Section? section = null)
    {
        StepRef place = wall is not null && section is not null ? _sections[Key(wall, section)] : Site;
        _held.First(h => h.Place == place).Elements.Add(element);
    }

    public void Close()
    {
        foreach ((string key, StepRef place, List<StepRef> elements) in _held)
            _model.Contain(key, place, elements);
    }

    private static string Key(Wall wall, Section section) => $"{wall.Name}|{section.Name}";

    private void AddMap(IfcUnits units, IfcShapes shapes)
    {
        if (!_model.Frame.IsMapped)
            return;
        WallProject project = _model.Input.Project;
        StepRef target = _model.Step.Add("IFCPROJECTEDCRS",
            _model.Frame.Epsg ?? IfcModel.Label(_model.Frame.Zone), IfcModel.Label(_model.Frame.Zone), IfcModel.Label(_model.Frame.HorizontalDatum),
            IfcModel.Label(_model.Frame.VerticalDatum), null, IfcModel.Label(_model.Frame.Zone), units.Length);
        _model.Step.Add("IFCMAPCONVERSION", shapes.Context, target, project.Origin.E, project.Origin.N, 0.0, 1.0, 0.0, 1.0);
    }

    private void AddWalls()
    {
        var facilities = new List<StepRef>();
        foreach (Wall wall in _model.Input.Project.Walls)
        {
            StepRef facility = _model.Root("IFCFACILITY", "wall|" + wall.Name, IfcModel.Label(wall.Name), null, "SOIL NAIL WALL", AtOrigin(), null, null, new StepEnum("ELEMENT"));
            facilities.Add(facility);
            var parts = new List<StepRef>();
            foreach (SectionQuantities section in _model.Input.Quantities.Sections.Where(s => s.Wall.Name == wall.Name))
                parts.Add(AddSection(section));
            _model.Aggregate("wall|" + wall.Name, facility, parts);
        }
        _model.Aggregate("site", Site, facilities);
    }

    private StepRef AddSection(SectionQuantities of)
    {
        Section section = of.Section;
        string key = Key(of.Wall, section);
        StepRef part = _model.Root("IFCFACILITYPARTCOMMON", "section|" + key, IfcModel.Label(section.Name), null, null, AtOrigin(), null,
            IfcModel.Label(SummaryTables.StationsOf(of, _model.Input.Project.Unit)), new StepEnum("ELEMENT"), new StepEnum("LONGITUDINAL"), new StepEnum("SEGMENT"));
        _sections[key] = part;
        _held.Add(("section|" + key, part, []));
        _properties.Set(key, "SheetGen_Section", [part],
            _properties.Length("StartStation", of.Wall.StationOf(section.Start)), _properties.Length("EndStation", of.Wall.StationOf(section.End)),
            _properties.Length("HorizontalSpacing", section.HorizontalSpacing), _properties.Length("VerticalSpacing", section.VerticalSpacing),
            _properties.Text("Rows", section.Rows.ToString()), _properties.Text("Pattern", section.Pattern.ToString()),
            _properties.Length("TopRowDepth", section.TopRowDepth), _properties.Degrees("Inclination", section.Inclination),
            _properties.Text("Lengths", SummaryTables.LengthList(of)), _properties.Text("Bar", section.Bar.ToString()),
            _properties.Length("HoleDiameter", section.HoleDiameter), _properties.Text("Stage", section.Stage));
        AddQuantities(key, "SheetGen_SectionQuantities", part, _model.Input.Quantities.Definitions.Select(d => of.Amounts[d.Name]));
        return part;
    }

    /// <summary>Every amount by its name; what is incomplete says so beside its figure, what has none is named with what it lacks.</summary>
    private void AddQuantities(string key, string name, StepRef of, IEnumerable<Quantity> quantities)
    {
        List<Quantity> all = [.. quantities];
        _properties.Quantities(key, name, [of], [.. all.Select(One)]);
        string missing = string.Join("; ", all.Where(q => q.State == QuantityState.Missing).Select(q => $"{q.Name}: {MissingPart.InWords(q.Missing)}"));
        _properties.Set(key, name + "Missing", [of], _properties.Text("Missing", missing));
    }

    private StepRef? One(Quantity quantity)
    {
        string text = quantity.Definition.Text + (quantity.State == QuantityState.Incomplete ? "; " + quantity.Note : "");
        return quantity.Definition.Unit switch
        {
            "each" => _properties.CountQuantity(quantity.Name, quantity.Amount, text),
            "ft" or "m" => _properties.LengthQuantity(quantity.Name, quantity.Amount, text),
            "ft2" or "m2" => _properties.AreaQuantity(quantity.Name, quantity.Amount, text),
            "ft3" or "m3" => _properties.VolumeQuantity(quantity.Name, quantity.Amount, text),
            "lb" or "kg" => _properties.WeightQuantity(quantity.Name, quantity.Amount, text),
            _ => throw new InvalidOperationException($"no IFC quantity for the unit {quantity.Definition.Unit}"),
        };
    }

    private StepRef?[] Layout(ExchangeInput input) =>
    [
        _properties.Whole("Nails", input.Layout.Nails.Count),
        _properties.Whole("Unresolved", input.Layout.Nails.Count(n => n.Status == NailStatus.Unresolved)),
        _properties.Whole("FindingsOfSeverityError", input.Report.Findings.Count(f => f.Severity == Model.Problems.Severity.Error)),
        _properties.Text("InputHash", input.Project.InputHash),
        _properties.Text("GridToGround", input.Project.Info.Facts.GetValueOrDefault("grid_to_ground")),
        _properties.Text("HorizontalDatum", _model.Frame.HorizontalDatum),
        _properties.Text("VerticalDatum", _model.Frame.VerticalDatum),
        _properties.Text("Coordinates", _model.Frame.IsMapped
            ? "relative to the project's origin; the map conversion has its easting and northing"
            : "the project's own easting and northing; its coordinate zone is not given"),
    ];
}
