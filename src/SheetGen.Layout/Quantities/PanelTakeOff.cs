using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Precast panels in level courses from the wall's lowest bottom, column by column between panel breaks, restarted at corners;
/// and the leveling pad below them. A column belongs to the section of its middle.
/// </summary>
internal static class PanelTakeOff
{
    public static List<PanelCount> Panels(Face face, LengthUnit unit)
    {
        Wall wall = face.Wall;
        if (wall.Panels is not { } panels)
            return [];
        double datum = wall.Bottom.Points.Min(p => p.Elevation), tolerance = 2 * Lengths.Quantum(unit);
        var found = new List<(int Course, PanelSize Size, double Width, double Start, double End, Section Section, string Place)>();
        foreach ((double start, double end) in Columns(face))
        {
            Section section = SectionOf(wall, (start + end) / 2);
            double bottom = LowestIn(wall.Bottom, start, end), top = HighestIn(wall.Top, start, end);
            double width = face.Distance(start, end, bottom);
            int first = (int)Math.Floor((bottom - datum) / panels.Height + 1e-9);
            for (int course = first; datum + course * panels.Height < top - tolerance; course++)
            {
                double low = Math.Max(bottom, datum + course * panels.Height), high = datum + (course + 1) * panels.Height;
                double atStart = Math.Clamp(wall.Top.At(start), low, high) - low, atEnd = Math.Clamp(wall.Top.Before(end), low, high) - low;
                bool fullHeight = Math.Abs(Math.Min(atStart, atEnd) - panels.Height) <= tolerance;
                PanelSize size = !fullHeight ? PanelSize.SpecialHeight
                    : Math.Abs(width - panels.Width) <= tolerance ? PanelSize.Full : PanelSize.Partial;
                double Rounded(double value) => Lengths.RoundToQuantum(value, unit);
                found.Add((course + 1, size, size == PanelSize.Full ? panels.Width : Rounded(width),
                    fullHeight ? panels.Height : Rounded(atStart), fullHeight ? panels.Height : Rounded(atEnd),
                    section, StationRange.Of(wall, start, end, unit)));
            }
        }
        return
        [
            .. found.GroupBy(p => (p.Section, p.Course, p.Size, p.Width, p.Start, p.End))
                .OrderBy(g => g.Key.Section.Start).ThenBy(g => g.Key.Course).ThenBy(g => g.Key.Size)
                .ThenByDescending(g => g.Key.Width).ThenByDescending(g => g.Key.Start).ThenByDescending(g => g.Key.End)
                .Select(g => new PanelCount(wall, g.Key.Section, g.Key.Course, g.Key.Size, g.Key.Width, g.Key.Start, g.Key.End,
                    [.. g.Select(p => p.Place)])),
        ];
    }

    /// <summary>Level runs of the leveling pad along the stepped bottom, cut at corners and section limits.</summary>
    public static List<PadRun> Pad(Face face)
    {
        Wall wall = face.Wall;
        var runs = new List<PadRun>();
        foreach (Leg leg in face.Legs)
        {
            double? before = null;
            List<double> cuts = Cuts(leg, wall.Bottom.Points.Select(p => p.Along).Concat(wall.Sections.Select(s => s.Start)));
            for (int i = 0; i + 1 < cuts.Count; i++)
            {
                double elevation = wall.Bottom.At(cuts[i]);
                double length = face.Distance(cuts[i], cuts[i + 1], elevation);
                if (i == 0 && leg.StartCorner is { } opens)
                    length -= face.MitreCut(opens, elevation);
                if (i + 2 == cuts.Count && leg.EndCorner is { } closes)
                    length -= face.MitreCut(closes, elevation);
                double? rise = before is { } b ? elevation - b : null;
                runs.Add(new PadRun(wall, SectionOf(wall, (cuts[i] + cuts[i + 1]) / 2), cuts[i], cuts[i + 1], elevation, length, rise));
                before = elevation;
            }
        }
        return runs;
    }

    /// <summary>The section that a place belongs to.</summary>
    public static Section SectionOf(Wall wall, double along) =>
        wall.Sections.LastOrDefault(s => s.Start <= along && along <= s.End)
        ?? wall.Sections.MinBy(s => Math.Min(Math.Abs(s.Start - along), Math.Abs(s.End - along)))
        ?? throw new ArgumentException("a wall needs a section", nameof(wall));

    private static IEnumerable<(double Start, double End)> Columns(Face face)
    {
        foreach (Leg leg in face.Legs)
        {
            List<double> cuts = Cuts(leg, face.Wall.PanelBreaks);
            for (int i = 0; i + 1 < cuts.Count; i++)
                yield return (cuts[i], cuts[i + 1]);
        }
    }

    private static List<double> Cuts(Leg leg, IEnumerable<double> places)
    {
        const double tiny = 1e-6;
        var cuts = new List<double> { leg.Start };
        foreach (double place in places.Order())
        {
            if (place > cuts[^1] + tiny && place < leg.End - tiny)
                cuts.Add(place);
        }
        cuts.Add(leg.End);
        return cuts;
    }

    private static double LowestIn(Profile profile, double start, double end) => Values(profile, start, end).Min();

    private static double HighestIn(Profile profile, double start, double end) => Values(profile, start, end).Max();

    private static IEnumerable<double> Values(Profile profile, double start, double end) =>
        profile.Points.Where(p => p.Along > start && p.Along < end).Select(p => p.Elevation)
            .Append(profile.At(start)).Append(profile.Before(end));
}
