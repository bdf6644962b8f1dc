using SheetGen.Dxf;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>How a drawing lies in the project: its unit, scale, turn and shift.</summary>
/// <param name="Factor">Project units in one of the drawing.</param>
/// <param name="Map">Drawing coordinates to project coordinates (x easting, y northing).</param>
internal sealed record DrawingPlace(FileUnit Unit, double Factor, Placing Map)
{
    /// <summary>Unit of a drawing by its header ($INSUNITS); null where it does not tell.</summary>
    public static FileUnit? UnitOf(DxfContent content) => content.Header.TryGetValue("$INSUNITS", out IReadOnlyList<string>? value) && value.Count > 0 ? value[0] switch
    {
        "1" => FileUnit.Inch,
        "2" => FileUnit.Foot,
        "4" => FileUnit.Millimetre,
        "5" => FileUnit.Centimetre,
        "6" => FileUnit.Metre,
        "21" => FileUnit.SurveyFoot,
        _ => null,
    }
    : null;

    /// <summary>The place that a block gives; null where it is faulty or the drawing's unit is not known, which is reported.</summary>
    public static DrawingPlace? Read(MapItem source, DxfContent content, ForeignFile file, LengthUnit project, ProblemList problems)
    {
        FileUnit? told = UnitOf(content), given = source.Text("units") is { } named ? FileUnit.All.First(u => u.Symbol == named) : null;
        if ((given ?? told) is not { } unit)
        {
            problems.Add(ProblemCodes.CannotUse, file.Spot, $"\"{Shown.Short(file.Name)}\" does not tell the unit that it is drawn in", "say it: units: ft");
            return null;
        }
        if (given is not null && told is not null && given.Symbol != told.Symbol)
            problems.Add(ProblemCodes.Inexact, source.SpotOf("units"), $"the drawing says that it is drawn in {told.Symbol}, the project file in {given.Symbol}: the project file's word counts", "");
        if (given is null && unit.Symbol is "ft" or "us-ft" && Lengths.IsFoot(project) && unit.Symbol != Lengths.Symbol(project))
            problems.Add(ProblemCodes.Inexact, file.Spot, $"the drawing is in {unit.Symbol}, the project in {Lengths.Symbol(project)}: its coordinates are converted, which at state plane coordinates moves things by feet", $"if it is drawn in the project's feet: units: {Lengths.Symbol(project)}");
        double factor = unit.In(project) * (source.Number("scale") ?? 1);
        if (source.List("match") is { } match)
            return Matched(source, match, unit, factor, problems);
        double angle = Angles.ToRadians(source.Number("rotate") ?? 0), c = Math.Cos(angle) * factor, s = Math.Sin(angle) * factor;
        return new DrawingPlace(unit, factor, new Placing(new(c, s, 0), new(-s, c, 0), new(0, 0, factor), new(source.Number("shift_easting") ?? 0, source.Number("shift_northing") ?? 0, 0)));
    }

    private static DrawingPlace? Matched(MapItem source, ListItem match, FileUnit unit, double factor, ProblemList problems)
    {
        foreach (string key in new[] { "shift_northing", "shift_easting", "rotate", "scale" }.Where(source.Gives))
            problems.Add(ProblemCodes.NotHere, source.Keys[key], $"\"{key}\" does not go with match: the two points give it", "remove it");
        MapItem[] maps = [.. match.Maps];
        if (match.Faulty || maps.Length != 2)
            return null;
        (double X, double Y, double E, double N) A(MapItem m) => (m.Number("x")!.Value, m.Number("y")!.Value, m.Number("easting")!.Value, m.Number("northing")!.Value);
        var (a, b) = (A(maps[0]), A(maps[1]));
        double dx = b.X - a.X, dy = b.Y - a.Y, de = b.E - a.E, dn = b.N - a.N, square = dx * dx + dy * dy;
        if (square < 1e-12 || de * de + dn * dn < 1e-12)
        {
            problems.Add(ProblemCodes.NoLength, maps[1].Spot, "the two matching points fall together", "give two that lie far apart", maps[0].Spot);
            return null;
        }
        double c = (de * dx + dn * dy) / square, s = (dn * dx - de * dy) / square, size = Math.Sqrt(c * c + s * s);
        if (Math.Abs(size / factor - 1) > 1e-4)
            problems.Add(ProblemCodes.Inexact, match.Spot, FormattableString.Invariant($"the two matching points lie {size / factor:0.######} times as far apart in the project as in the drawing: everything is stretched by that"), "check the four points; a factor from grid to ground is nearer to 1");
        return new DrawingPlace(unit, size, new Placing(new(c, s, 0), new(-s, c, 0), new(0, 0, factor), new(a.E - c * a.X + s * a.Y, a.N - s * a.X - c * a.Y, 0)));
    }
}
