using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Set;

/// <summary>What every part of the composer draws from.</summary>
public sealed record DrawingContext(
    WallProject Project, NailLayout Layout, ClearanceReport Report, QuantityTable Quantities, IReadOnlyList<TableData> Tables, RunInfo Run,
    DrawingTemplates Templates)
{
    /// <summary>The words of the sheets, with the project's own for a design section.</summary>
    public Language Language { get; } = Templates.Language.WithZone(Project.Sheets.SectionWord);

    public Printed Print { get; } = new(Project.Unit, Project.Origin, Templates.Language);

    /// <summary>The length that is written with each row.</summary>
    public RowLengths RowLengths { get; } = new(Layout);

    /// <summary>Marks of the nails without a clear place that may be drilled, since the engineer has accepted it: the sheet says why.</summary>
    public IReadOnlySet<string> Accepted { get; } = Report.AcceptedNails();

    /// <summary>True for a nail that may not be drilled: without a clear place, and not accepted.</summary>
    public bool IsStopped(Nail nail) => nail.Status == NailStatus.Unresolved && !Accepted.Contains(nail.Mark);

    private readonly Dictionary<LayoutLine, Dictionary<Obstruction, IReadOnlyList<LinePlace>>> _places = new(ReferenceEqualityComparer.Instance);

    /// <summary>Where the points of an obstruction lie along a layout line; looked up once for each pair.</summary>
    public IReadOnlyList<LinePlace> PlacesOf(LayoutLine line, Obstruction obstruction)
    {
        if (!_places.TryGetValue(line, out Dictionary<Obstruction, IReadOnlyList<LinePlace>>? known))
            _places[line] = known = new(ReferenceEqualityComparer.Instance);
        if (!known.TryGetValue(obstruction, out IReadOnlyList<LinePlace>? places))
            known[obstruction] = places = [.. obstruction.Shape.Select(p => LayoutProjection.Locate(line, p.Plan))];
        return places;
    }

    public TextStyle StyleOf(TextRole role) => Templates.Texts[role];

    /// <summary>A fixed text of the sheets with its values.</summary>
    public string Say(Phrase phrase, params ReadOnlySpan<string> values) => Language.Say(phrase, values);

    /// <summary>From one printed value to another; the value alone where both are the same.</summary>
    public string FromTo(string from, string to) => from == to ? from : Say(Phrase.FromTo, from, to);

    /// <summary>A fact of the project in its own words; null where it has none.</summary>
    public string? Stated(string key) => Project.Info.Facts.TryGetValue(key, out string? words) && words.Length > 0 ? words.ToUpperInvariant() : null;

    /// <summary>The tests of a design section; null where it has none.</summary>
    public TestPlan? TestsOf(Wall wall, Section section) => Quantities.Tests.FirstOrDefault(t => t.Wall == wall && t.Section == section);

    private readonly ILookup<Wall, Nail> _nails = Layout.Nails.ToLookup(n => n.Wall);

    public IEnumerable<Nail> NailsOf(Wall wall) => _nails[wall];

    public Text Write(LayerRole layer, TextRole role, Point2 at, string value, HorizontalAlign align = HorizontalAlign.Left, double rotation = 0) =>
        new(layer, role, at, StyleOf(role).Height, value, align, rotation);
}
