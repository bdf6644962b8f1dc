namespace SheetGen.Model.Results;

/// <summary>
/// What the layout as drawn does to the engineer's design, nail by nail. Nothing is designed here: the engineer's values are carried
/// over to the nails as drawn. Forces in kip (feet) or kN (metres).
/// </summary>
public sealed record LayoutEffect
{
    /// <summary>What stands on every page of it.</summary>
    public const string Caution =
        "For the engineer of record. Global stability, sliding, bearing, seismic loads and deflection are not checked here; the design itself is not checked.";

    /// <summary>Production nails in the layout's order.</summary>
    public required IReadOnlyList<NailEffect> Nails { get; init; }

    /// <summary>In order of wall and station.</summary>
    public required IReadOnlyList<SectionEffect> Sections { get; init; }

    /// <summary>Grid places without a nail, and who carries their area.</summary>
    public required IReadOnlyList<SharedArea> LeftOut { get; init; }

    /// <summary>Area of face on legs that have no nail at all, so that no nail carries it; 0 in any usual wall.</summary>
    public required double AreaWithoutNails { get; init; }

    /// <summary>Loads of load tests by section and soil; empty where no bond is given.</summary>
    public IReadOnlyList<SoilTest> Tests { get; init; } = [];

    /// <summary>How layers are read between borings; empty without borings.</summary>
    public string LayersFrom { get; init; } = "";

    /// <summary>True where the project gives any of the engineer's values.</summary>
    public bool HasValues => Sections.Any(s => s.Section.Design is not null);

    /// <summary>Nails that carry another area, stand, point or reach otherwise than on the grid: by zone, lowest ratio first, then greatest share of area.</summary>
    public IReadOnlyList<NailEffect> Changed =>
    [
        .. Nails.Where(n => n.IsChanged).OrderBy(n => n.Zone).ThenBy(n => n.Drawn.Lowest?.Ratio ?? double.PositiveInfinity)
            .ThenByDescending(n => n.AreaShare).ThenBy(n => n.Nail.Mark, StringComparer.Ordinal),
    ];
}
