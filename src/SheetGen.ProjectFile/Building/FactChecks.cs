using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Building;

/// <summary>
/// Holds the facts that the project states in its own words against the figures that it gives for the same elsewhere: the sheets print the words,
/// while quantities and ratios come from the figures.
/// </summary>
internal sealed partial class FactChecks(LengthUnit unit, ProblemList problems)
{
    /// <summary>How far words and figure may be off, as a share: 0.75 in for 19 mm is no contradiction.</summary>
    private const double Share = 0.015;

    private bool IsMetric => unit == LengthUnit.Metre;

    public void Check(MapItem root, WallProject project)
    {
        if (root.Map("design") is not { } facts)
            return;
        (string Name, DesignValues Design)[] sections = [.. project.Walls.SelectMany(w => w.Sections.Where(s => s.Design is not null).Select(s => (project.Walls.Count == 1 ? s.Name : $"{w.Name} {s.Name}", s.Design!)))];
        foreach (string key in facts.Values.Keys)
        {
            string words = facts.Text(key)!;
            foreach (IGrouping<Figure, string> group in sections.SelectMany(s => Figures(key, words, s.Design).Select(f => (Figure: f, s.Name))).GroupBy(f => f.Figure, f => f.Name))
                Told(group.Key, "section " + string.Join(", ", group.Distinct()) + " has");
            foreach (Figure figure in Figures(key, words, project.Rates))
                Told(figure, "the project has");

            void Told(Figure figure, string who)
            {
                if (figure.IsOther)
                    problems.Add(ProblemCodes.FactFigure, facts.SpotOf(key), $"\"{key}\" says \"{Shown.Short(words)}\", and {who} {figure.Shown} ({figure.Key}); the sheets print the words", "make them agree, or take the words out: the figure is then printed");
            }
        }
    }

    /// <summary>A figure for what a fact states.</summary>
    /// <param name="IsOther">Whether the words name another one.</param>
    private sealed record Figure(string Key, string Shown, bool IsOther);

    private IEnumerable<Figure> Figures(string key, string words, DesignValues design) => key switch
    {
        "shotcrete_strength" => Measured("design: facing: concrete_strength", Named(StrengthWords(), words, Measure.Concrete), design.Facing.ConcreteStrength, Measure.Concrete.UnitFor(unit)),
        "concrete_strength" => Measured("design: permanent_facing: concrete_strength", Named(StrengthWords(), words, Measure.Concrete), design.PermanentFacing.ConcreteStrength, Measure.Concrete.UnitFor(unit)),
        "bond" when design.BondByLayer.Count == 0 => Measured("design: bond", Named(StrengthWords(), words, Measure.Bond), design.Bond, Measure.Bond.UnitFor(unit)),
        "nail_load" when design.MaximumLoads.Count > 0 && Named(ForceWords(), words, Measure.Force) is double load && !design.MaximumLoads.Any(l => IsNear(load, l)) =>
            Measured("design: t_max", load, design.MaximumLoads.Max(), Measure.Force.UnitFor(unit)),
        "mesh" => Measured("design: facing: mesh", MeshArea(words), design.Facing.Mesh, Measure.SteelPerWidth.UnitFor(unit)),
        "plate" when Sizes(words) is { Count: > 1 } sizes => [.. Size("design: plate: width", sizes[0], design.PlateWidth), .. Size("design: plate: thickness", sizes[^1], design.PlateThickness)],
        "studs" when design.Studs is { } studs && Sizes(words) is { Count: 2 } sizes => [.. Size("design: studs: diameter", sizes[0], studs.Diameter), .. Size("design: studs: length", sizes[1], studs.Length)],
        "waler_bars" => Bars("design: facing: waler_bars", words, design.Facing.Walers),
        "bearing_bars" => Bars("design: facing: bearing_bars", words, design.Facing.BearingBars),
        _ => [],
    };

    private IEnumerable<Figure> Figures(string key, string words, Rates rates) => key switch
    {
        "centralizers" when Sizes(words) is { Count: > 0 } sizes => Measured("rates: centralizer_spacing", sizes[0], rates.CentralizerSpacing, Lengths.Symbol(unit)),
        "leveling_pad" when Sizes(words) is { Count: 2 } sizes => [.. Size("rates: pad: width", sizes[0], rates.PadWidth), .. Size("rates: pad: height", sizes[1], rates.PadHeight)],
        _ => [],
    };

    private IReadOnlyList<double> Sizes(string words) => SizeText.Lengths(words, unit);

    private IEnumerable<Figure> Size(string key, double stated, double? figure)
    {
        (double one, string symbol) = IsMetric ? (0.001, "mm") : (Lengths.FromInches(1, unit), "in");
        return Measured(key, stated / one, figure / one, symbol);
    }

    private static IEnumerable<Figure> Measured(string key, double? stated, double? figure, string symbol) =>
        stated is double s && figure is double f ? [new Figure(key, FormattableString.Invariant($"{f:0.####} {symbol}"), !IsNear(s, f))] : [];

    private static IEnumerable<Figure> Bars(string key, string words, FacingBars? bars)
    {
        if (bars is null || BarWords().Match(words) is not { Success: true } match)
            return [];
        bool otherCount = match.Groups["count"].Success && Number(match.Groups["count"].Value) != bars.Count;
        return [new Figure(key, FormattableString.Invariant($"{bars.Count} {bars.Bar.Size}"), otherCount || match.Groups["size"].Value != bars.Bar.Size.TrimStart('#'))];
    }

    private static bool IsNear(double a, double b) => Math.Abs(a - b) <= Share * Math.Max(Math.Abs(a), Math.Abs(b));

    /// <summary>The first figure of a kind that words name, in the project's unit of it.</summary>
    private double? Named(Regex form, string words, Measure measure) =>
        form.Match(words) is { Success: true } match ? MeasureValues.Of(Number(match.Groups["number"].Value), match.Groups["unit"].Value, measure, unit) : null;

    /// <summary>Steel per width of a welded wire by its name: spacing in inches and wires in hundredths of a square inch, or with an M in millimetres and square millimetres (ASTM A1064).</summary>
    private double? MeshArea(string words)
    {
        if (MeshWords().Match(words) is not { Success: true } match || match.Groups["spacing"].Value != match.Groups["other"].Value)
            return null;
        double spacing = Number(match.Groups["spacing"].Value), wire = Number(match.Groups["wire"].Value);
        return match.Groups["metric"].Success
            ? MeasureValues.Of(wire / spacing * 1000, "mm2/m", Measure.SteelPerWidth, unit)
            : MeasureValues.Of(wire / 100 / spacing * 12, "in2/ft", Measure.SteelPerWidth, unit);
    }

    private static double Number(string text) => double.Parse(text.Replace(",", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);

    private const string NumberForm = @"(?<![\w.,])(?<number>\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?)";

    [GeneratedRegex(NumberForm + @"[ -]?(?<unit>psi|ksi|kpa|mpa)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex StrengthWords();

    [GeneratedRegex(NumberForm + @"[ -]?(?<unit>kips?|kn)\b(?!/)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex ForceWords();

    [GeneratedRegex(@"(?:(?<![\w.])(?<count>\d{1,3})\s*)?#(?<size>\d+)\b", RegexOptions.CultureInvariant)]
    private static partial Regex BarWords();

    [GeneratedRegex(@"(?<![\w.])(?<spacing>\d+(?:\.\d+)?)\s*x\s*(?<other>\d+(?:\.\d+)?)[\s-]*(?<metric>M)?[WD](?<wire>\d+(?:\.\d+)?)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex MeshWords();
}
