using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>Writes the limits of the design sections into an elevation, and what is built in each.</summary>
public sealed class ZoneLabels(ElevationView view)
{
    private readonly Printed _print = view.Context.Print;
    private readonly Wall _wall = view.Wall;
    private readonly SheetWindow _window = view.Window;

    /// <summary>Limits, names and typical spacings of the sections.</summary>
    public void Write()
    {
        double top = view.Viewport.Frame.Top - 1;
        double low = view.AxisAt + 3;
        foreach (Section section in _wall.Sections)
        {
            double from = Math.Max(section.Start, _window.Start), to = Math.Min(section.End, _window.End);
            if (to - from < 1e-6)
                continue;
            if (section.Start > _wall.Start && _window.Has(section.Start))
                Limit(section.Start, low, top);
            double left = Math.Min(view.At(from, 0).X, view.At(to, 0).X), right = Math.Max(view.At(from, 0).X, view.At(to, 0).X);
            var frame = new Point2((left + right) / 2, top - 2);
            view.Labels.Label(new LabelRequest(SectionWords(section), TextRole.Label, frame, 0)
            {
                Toward = -Math.PI / 2,
                LeaderFrom = 400,
                Reach = 60,
                Otherwise = string.Join(", ", SectionWords(section)[0]),
            });
        }
    }

    private void Limit(double along, double low, double top)
    {
        Point2 a = new(view.At(along, 0).X, low), b = new(a.X, top);
        view.Labels.Add(new Line(LayerRole.SectionLimit, a, b));
        view.Labels.Placer.Crowd.Add(a, b, LineKind.NoText);
        view.Labels.Label(new LabelRequest([[Station(along)]], TextRole.Label, new(a.X, top - 12), 0.5)
        {
            Upright = true,
            LeaderFrom = 3,
            Otherwise = Say(Phrase.ZonesMeet, Station(along)),
        });
    }

    private IReadOnlyList<IReadOnlyList<string>> SectionWords(Section s)
    {
        string name = Say(Phrase.ZoneName, s.Name.ToUpperInvariant());
        string spacing = Say(Phrase.Typical, Say(Phrase.SpacingBoth, _print.Distance(s.HorizontalSpacing), VerticalWords(s)));
        string rows = Say(Phrase.PatternAndRows, Say(s.Pattern == Pattern.Square ? Phrase.PatternSquare : Phrase.PatternStaggered), Say(RowWords(s.Rows)));
        if (s.FirstColumn is { } first)
            rows = Say(Phrase.FirstColumn, rows, _print.Distance(first));
        else if (s.HasBestColumns)
            rows = Say(Phrase.CentredColumns, rows);
        string hole = Say(Phrase.HolesBelowHorizontal, _print.Small(s.HoleDiameter), _print.Angle(s.Inclination));
        string bar = Say(Phrase.BarIs, s.Bar.ToString().ToUpperInvariant());
        return [
            [name, $"{spacing}, {rows}", $"{hole}, {bar}"],
            [name, spacing, rows, $"{hole}, {bar}"],
            [
                name, Say(Phrase.TypicalSpacingShort, _print.Distance(s.HorizontalSpacing)), VerticalWords(s), rows,
                Say(Phrase.HolesShort, _print.Small(s.HoleDiameter)), Say(Phrase.AngleDown, _print.Angle(s.Inclination)), bar,
            ],
            [name],
        ];
    }

    /// <summary>The vertical spacing as built, and the grid's where that differs: 3.75' V (4.00' MAX.).</summary>
    private string VerticalWords(Section s)
    {
        string most = _print.Distance(s.VerticalSpacing);
        if (BuiltSpacing.RowGaps(_wall, s, view.Context.Layout.Rows) is not { } gaps)
            return Say(Phrase.SpacingMost, most);
        string least = _print.Distance(gaps.Least), greatest = _print.Distance(gaps.Greatest);
        string built = least == greatest ? least : Say(Phrase.SpacingRange, least, greatest);
        return built == most ? Say(Phrase.SpacingVertical, most) : Say(Phrase.SpacingBuilt, built, most);
    }

    private static Phrase RowWords(RowKind kind) => kind switch
    {
        RowKind.Level => Phrase.RowsLevel,
        RowKind.Parallel => Phrase.RowsParallel,
        _ => Phrase.RowsTopParallel,
    };

    private string Say(Phrase phrase, params ReadOnlySpan<string> values) => view.Context.Say(phrase, values);

    private string Station(double along) => Say(Phrase.Station, _print.Station(_wall, along));
}
