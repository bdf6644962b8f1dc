using System.Globalization;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Cli;

/// <summary>What the program took from the project file, in the words in which a person would say it, so that a slip shows.</summary>
public static class Understood
{
    private const int MostObstructions = 8;

    /// <summary>Name and text of each line.</summary>
    public static IEnumerable<(string Name, string Text)> Lines(WallProject project, NailLayout layout)
    {
        foreach (Wall wall in project.Walls)
        {
            var words = new Words(project, wall);
            yield return (wall.Name, words.Place());
            yield return ("height", words.Height());
            foreach (Section section in wall.Sections)
                yield return ("section " + section.Name, words.OfSection(section, layout));
        }
        foreach ((string name, string text) in Obstructions(project))
            yield return (name, text);
        yield return ("defaults", Defaults(project));
    }

    private static IEnumerable<(string Name, string Text)> Obstructions(WallProject project)
    {
        var found = new List<(Obstruction Obstruction, Wall? Wall, ObstructionPlace Place)>();
        foreach (Obstruction obstruction in project.Obstructions)
        {
            (Wall Wall, ObstructionPlace Place)[] places =
                [.. project.Walls.Select(w => (w, Place: ObstructionPlace.Of(new Face(w), obstruction))).Where(p => p.Place is not null).Select(p => (p.w, p.Place!.Value))];
            found.Add(places.Length == 0 ? (obstruction, null, default) : Nearest(obstruction, places));
        }
        foreach ((Obstruction obstruction, Wall? wall, ObstructionPlace place) in found.OrderBy(f => f.Wall is null).ThenBy(f => Math.Round(f.Place.Behind, 2)).Take(MostObstructions))
            yield return (obstruction.Name, wall is null ? $"{Kind(project, obstruction)} beside the wall" : Where(project, obstruction, wall, place));
        if (found.Count > MostObstructions)
            yield return ("", Invariant($"and {found.Count - MostObstructions} more obstructions, farther behind the face"));
    }

    private static (Obstruction, Wall?, ObstructionPlace) Nearest(Obstruction obstruction, (Wall Wall, ObstructionPlace Place)[] places)
    {
        (Wall wall, ObstructionPlace place) = places.MinBy(p => p.Place.Behind);
        return (obstruction, wall, place);
    }

    private static string Where(WallProject project, Obstruction obstruction, Wall wall, ObstructionPlace place)
    {
        string unit = Lengths.Symbol(project.Unit);
        string Station(double along) => wall.StationText(along, project.Unit);
        string at = place.End - place.Start < Math.Max(1e-6, obstruction.Diameter) ? $"at {Station(place.Along)}" : $"from {Station(place.Start)} to {Station(place.End)}, nearest at {Station(place.Along)}";
        string behind = place.Behind >= 0 ? Invariant($"{place.Behind:0.00} {unit} behind the face") : Invariant($"{-place.Behind:0.00} {unit} in front of the face or through it");
        string levels = double.IsFinite(obstruction.Bottom) ? PlainNumber.Text($", elevation {obstruction.Bottom:0.00} to {obstruction.Top:0.00}") : "";
        return $"{Kind(project, obstruction)} {at}: {behind}{levels}";
    }

    private static string Kind(WallProject project, Obstruction obstruction) =>
        obstruction.Kind.ToString().ToLowerInvariant() + (obstruction.Diameter > 0 ? " " + Small(obstruction.Diameter, project.Unit) : "");

    private static string Defaults(WallProject project)
    {
        Rules rules = project.Rules;
        string unit = Lengths.Symbol(project.Unit);
        (string Key, string Text)[] matter =
        [
            ("clearance.obstruction", Invariant($"clearance to obstructions {rules.ObstructionClearance:0.###} {unit}")),
            ("clearance.nail", Invariant($"between nails {rules.NailClearance:0.###} {unit}")),
            ("clearance.boundary", Invariant($"to boundaries {rules.BoundaryClearance:0.###} {unit}")),
            ("redirect.field_tolerance", Invariant($"field tolerance {rules.Redirect.FieldTolerance:0.##} deg")),
            ("top_max", Invariant($"first nail at most {rules.TopMax:0.###} {unit} below the top")),
            ("bottom_max", Invariant($"last nail at most {rules.BottomMax:0.###} {unit} above the bottom")),
            ("edge_min", Invariant($"heads at least {rules.EdgeMin:0.###} {unit} from every edge")),
        ];
        string[] used = [.. matter.Where(m => rules.Defaulted.Contains(m.Key)).Select(m => m.Text)];
        return used.Length == 0 ? "none of the rules that matter" : string.Join(", ", used);
    }

    private static string Small(double length, LengthUnit unit) => Lengths.IsFoot(unit)
        ? Invariant($"{Lengths.ToInches(length, unit):0.##} in")
        : Invariant($"{length * 1000:0.#} mm");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>The words of one wall.</summary>
    private sealed class Words(WallProject project, Wall wall)
    {
        private readonly string _unit = Lengths.Symbol(project.Unit);

        public string Place()
        {
            double looks = WallWords.FaceAzimuth(wall.LayoutLine, wall.Side, wall.Start, wall.End);
            string line = project.LayoutLines.Count == 1 ? "" : $" of {wall.LayoutLine.Name}";
            string bends = wall.LayoutLine.Corners.Count(c => c.Along > wall.Start && c.Along < wall.End) is > 0 and int corners ? Invariant($", {corners} {(corners == 1 ? "corner" : "corners")}") : "";
            string curved = wall.LayoutLine.Pieces.Any(p => p.IsCurved && p.Start < wall.End && p.End > wall.Start) ? ", curved" : "";
            return Invariant($"{Station(wall.Start)} to {Station(wall.End)}{line} ({wall.End - wall.Start:0.00} {_unit}{curved}{bends}); soil {(wall.Side > 0 ? "RIGHT" : "LEFT")} of the line looking up-station ({Compass.Name(looks + Math.PI)}), face looks {Compass.Name(looks)}");
        }

        public string Height()
        {
            double[] places = [.. Enumerable.Range(0, 401).Select(i => wall.Start + (wall.End - wall.Start) * i / 400)];
            string grade = wall.FinishedGrade is not { } finished ? "" : $"; {Range(places.Select(s => wall.Top.At(s) - finished.At(s)))} {_unit} of it above finished grade";
            return $"{Range(places.Select(s => wall.Top.At(s) - wall.Bottom.At(s)))} {_unit}, top {Range(places.Select(wall.Top.At))}, bottom {Range(places.Select(wall.Bottom.At))}{grade}";
        }

        public string OfSection(Section section, NailLayout layout)
        {
            NailRow[] rows = [.. layout.Rows.Where(r => r.Wall.Name == wall.Name && r.Section.Name == section.Name && r.GridStations.Count > 0)];
            int grid = rows.Where(r => !r.Number.IsPart).Select(r => r.Number).Distinct().Count(), part = rows.Where(r => r.Number.IsPart).Select(r => r.Number).Distinct().Count();
            string counted = rows.Length == 0 ? "NO NAILS" : Invariant($"{grid} {(grid == 1 ? "row" : "rows")}") + (part == 0 ? "" : Invariant($" and {part} part {(part == 1 ? "row" : "rows")}"));
            string lengths = string.Join("/", section.Lengths.Select(l => Invariant($"{l:0.##}")));
            return Invariant($"{Station(section.Start)} to {Station(section.End)}: {BuiltSpacing.Text(wall, section, layout.Rows, project.Unit)}, {counted}, {Kind(section)}; ")
                + Invariant($"{lengths} {_unit} at {section.Inclination:0.##} deg down, {section.Bar}, hole {Small(section.HoleDiameter, project.Unit)}");
        }

        private static string Kind(Section section) =>
            (section.Rows switch { RowKind.Level => "level", RowKind.Parallel => "parallel to the top", _ => "first row parallel to the top" })
            + (section.Pattern == Pattern.Staggered ? ", staggered" : "");

        private string Station(double along) => wall.StationText(along, project.Unit);

        private static string Range(IEnumerable<double> values)
        {
            double[] all = [.. values];
            string least = PlainNumber.Fixed(all.Min(), 1), most = PlainNumber.Fixed(all.Max(), 1);
            return least == most ? least : $"{least} to {most}";
        }
    }
}
