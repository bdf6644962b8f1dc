using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>
/// The facts of the design as every sheet prints them: in the project's own words, else from the figures that the project file gives
/// elsewhere, so that no sheet has a blank for what another one prints.
/// </summary>
/// <param name="blank">Stands where a part of a fact is not given.</param>
public sealed class DesignFacts(DrawingContext context, string blank)
{
    private bool IsFeet => Lengths.IsFoot(context.Print.Unit);

    private Rates Rates => context.Project.Rates;

    public IReadOnlyList<(Wall Wall, Section Section)> Sections { get; } =
        [.. context.Project.Walls.SelectMany(w => w.Sections.Select(s => (w, s)))];

    /// <summary>A fact in the project's own words; null where it has none.</summary>
    public string? Stated(string key) => context.Stated(key);

    /// <summary>A fact for all design sections.</summary>
    public string? Of(string key) => Of(key, Sections);

    /// <summary>A fact for some design sections: one where it is the same in all, else each with the names of its sections; null where nothing gives it.</summary>
    public string? Of(string key, IReadOnlyList<(Wall Wall, Section Section)> sections)
    {
        if (Stated(key) is string stated)
            return stated;
        var words = sections.Where(s => IsAsked(key, s.Wall, s.Section)).GroupBy(s => Figures(key, s.Wall, s.Section)).ToList();
        return words.All(w => w.Key is null) ? null
            : words.Count == 1 ? words[0].Key
            : string.Join("; ", words.Select(w => context.Say(Phrase.ZoneName, Names(w)) + ": " + (w.Key ?? blank)));
    }

    /// <summary>Names of design sections, with their walls' where there are several walls.</summary>
    public string Names(IEnumerable<(Wall Wall, Section Section)> sections) => string.Join(", ",
        sections.Select(s => (context.Project.Walls.Count == 1 ? s.Section.Name : $"{s.Wall.Name} {s.Section.Name}").ToUpperInvariant()).Distinct());

    /// <summary>Width and height of the leveling pad: the rates', else those that the fact states; null where not given.</summary>
    public (double? Width, double? Height) Pad => StatedSizes("leveling_pad") is [double width, double height]
        ? (Rates.PadWidth ?? width, Rates.PadHeight ?? height)
        : (Rates.PadWidth, Rates.PadHeight);

    /// <summary>Spacing of the centralizers and their distance from the ends of the hole: the rates', else those that the fact states; null where not given.</summary>
    public (double? Spacing, double? End) Centralizers
    {
        get
        {
            IReadOnlyList<double> stated = StatedSizes("centralizers");
            return (Rates.CentralizerSpacing ?? (stated.Count > 0 ? stated[0] : null), Rates.CentralizerEnd ?? (stated.Count > 1 ? stated[1] : null));
        }
    }

    /// <summary>How long a cut may stay open; a usual time, common practice, where it is not given.</summary>
    public string OpenHours(double? given) => Usual(given, 24, h => context.Say(Phrase.Hours, Printed.Number(h, 1)));

    /// <summary>How high a cut may stay open; a usual height, common practice, where it is not given.</summary>
    public string OpenHeight(double? given) => Usual(given, IsFeet ? 4 : 1.2, context.Print.Short);

    /// <summary>How far apart drainage strips stand at most; a usual distance, common practice, where it is not given.</summary>
    public string StripSpacing(double? given) => Usual(given, IsFeet ? 10 : 3, context.Print.Short);

    private string Usual(double? given, double usual, Func<double, string> words) => given is double value ? words(value) : context.Say(Phrase.Default, words(usual));

    /// <summary>The lengths that a fact states in the project's own words, project units.</summary>
    public IReadOnlyList<double> StatedSizes(string key) => Stated(key) is string words ? SizeText.Lengths(words, context.Print.Unit) : [];

    /// <summary>False for a design section that has no use for a fact.</summary>
    private bool IsAsked(string key, Wall wall, Section section) => key switch
    {
        "concrete_strength" or "facing_bars" => wall.Facing is { Kind: not FacingKind.None },
        "verification_load" => context.TestsOf(wall, section) is { Asked: > 0 },
        "proof_load" => context.TestsOf(wall, section) is { Proof: > 0 },
        _ => true,
    };

    private string? Figures(string key, Wall wall, Section section)
    {
        DesignValues design = section.Design ?? new DesignValues();
        return key switch
        {
            "mesh" => Mesh(design.Facing.Mesh),
            "waler_bars" => Bars(design.Facing.Walers, Rates.WalerBars, null),
            "bearing_bars" => Bars(design.Facing.BearingBars, Rates.BearingBars, Rates.BearingBarLength),
            "plate" => design.PlateWidth is double width ? $"{Small(width)} x {Small(width)} x {Small(design.PlateThickness)}" : null,
            "studs" => design.Studs is { } s ? context.Say(Phrase.StudCount, Printed.Number(s.Count, 0), Small(s.Diameter), Small(s.Length)) : null,
            "shotcrete_strength" => Strength(design.Facing.ConcreteStrength),
            // Shot facing may be told of with the shotcrete in words; the figure under design: facing is the temporary facing's alone.
            "concrete_strength" => Strength(design.PermanentFacing.ConcreteStrength)
                ?? (wall.Facing?.Kind is FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete ? Stated("shotcrete_strength") : null),
            "facing_bars" => FacingBars(design.PermanentFacing),
            "bond" => Bond(design),
            "nail_load" => NailLoad(design.MaximumLoads),
            "verification_load" or "proof_load" => context.TestsOf(wall, section) is TestPlan plan ? TestLoads.Computed(context, key == "proof_load", plan) : null,
            "centralizers" => Centralizers is (double spacing, var end)
                ? end is double e ? context.Say(Phrase.CentralizersEnds, context.Print.Short(spacing), context.Print.Short(e)) : context.Say(Phrase.CentralizersMost, context.Print.Short(spacing))
                : null,
            "leveling_pad" => Pad is (null, null) ? null : $"{Small(Pad.Width)} x {Small(Pad.Height)}",
            "connection" => wall.Facing?.Kind is FacingKind.CastInPlace or FacingKind.PermanentShotcrete or FacingKind.SculptedShotcrete
                ? Stated("studs") ?? Figures("studs", wall, section) : null,
            _ => null,
        };
    }

    private string Small(double? length) => length is double l ? context.Print.Small(l) : blank;

    private string? Strength(double? value) => value is double v ? context.Say(IsFeet ? Phrase.StressPsi : Phrase.StressMegapascal, Printed.Number(v, 1)) : null;

    private string? Mesh(double? area) => area is double a ? context.Say(IsFeet ? Phrase.MeshFeet : Phrase.MeshMetres, Printed.Number(a, IsFeet ? 3 : 1)) : null;

    /// <summary>Number and size of bars, with their length; the number alone where only the rates give it.</summary>
    private string? Bars(FacingBars? bars, double? number, double? length)
    {
        string? words = bars is not null ? context.Say(Phrase.BarCount, Printed.Number(bars.Count, 0), bars.Bar.Size)
            : number is double n ? context.Say(Phrase.BarCount, Printed.Number(n, 1), blank)
            : length is not null ? blank : null;
        return words is not null && length is double l ? context.Say(Phrase.BarsLong, words, context.Print.Short(l)) : words;
    }

    private string? FacingBars(FacingDesign facing)
    {
        string[] parts =
        [
            .. new[]
            {
                Mesh(facing.Mesh),
                Bars(facing.Walers, null, null) is string walers ? context.Say(Phrase.WalersAre, walers) : null,
                Bars(facing.BearingBars, null, null) is string bearing ? context.Say(Phrase.BearingBarsAre, bearing) : null,
            }.OfType<string>(),
        ];
        return parts.Length == 0 ? null : string.Join(", ", parts);
    }

    private string? Bond(DesignValues design)
    {
        string Stress(double value) => context.Say(IsFeet ? Phrase.StressPsi : Phrase.StressKilopascal, Printed.Number(value, 2));
        string[] layers = [.. design.BondByLayer.Select(b => $"{b.Key.ToUpperInvariant()} {Stress(b.Value)}")];
        if (layers.Length > 0 || design.Bond is not null)
            return string.Join(", ", layers.Concat(design.Bond is double every ? [layers.Length == 0 ? Stress(every) : context.Say(Phrase.BondElsewhere, Stress(every))] : []));
        return Rates.DesignBond is double pullout ? context.Say(IsFeet ? Phrase.PulloutFeet : Phrase.PulloutMetres, Printed.Number(pullout, 3)) : null;
    }

    private string? NailLoad(IReadOnlyList<double> byRow)
    {
        if (byRow.Count == 0)
            return null;
        string[] loads = [.. byRow.Select(l => Printed.Number(l, 1))];
        string Force(string figures) => context.Say(IsFeet ? Phrase.ForceKip : Phrase.ForceKilonewton, figures);
        return loads.Distinct().Count() == 1 ? Force(loads[0]) : context.Say(Phrase.LoadsByRow, Force(string.Join(", ", loads)));
    }
}
