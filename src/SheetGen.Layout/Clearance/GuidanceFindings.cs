using System.Globalization;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Clearance;

/// <summary>
/// Values of the design outside what is usual: warnings, never limits. The figures are typical values of GEC 7 (FHWA-NHI-14-007, 2015),
/// read through a transcription of its text.
/// </summary>
internal static class GuidanceFindings
{
    private const string Source = "GEC 7 (FHWA-NHI-14-007)";

    public static IEnumerable<Finding> Of(WallProject project)
    {
        foreach (Wall wall in project.Walls)
        {
            foreach (Section section in wall.Sections)
            {
                foreach (string message in OfSection(section, project.Unit))
                    yield return Warning(wall, section, $"Section {section.Name}: {message}");
            }
            if (wall.Lifts?.MaxExposed is { } lift && OfLift(lift, project.Unit) is { } text)
                yield return Warning(wall, null, $"{wall.Name}: {text}");
        }
    }

    private static IEnumerable<string> OfSection(Section section, LengthUnit unit)
    {
        bool foot = Lengths.IsFoot(unit);
        double least = foot ? 4 : 1.2, most = foot ? 6.5 : 1.98;
        string range = foot ? "4 to 6.5 ft" : "1.2 to 1.98 m";
        if (IsOutside(section.HorizontalSpacing, least, most))
            yield return $"a horizontal spacing of {Shown(section.HorizontalSpacing, unit)} is outside the usual {range} ({Source}, 6.3)";
        if (IsOutside(section.VerticalSpacing, least, most))
            yield return $"a vertical spacing of {Shown(section.VerticalSpacing, unit)} is outside the usual {range} ({Source}, 6.3)";
        double area = section.HorizontalSpacing * section.VerticalSpacing * (foot ? 1 : 1 / (0.3048 * 0.3048));
        if (area > 42 * (1 + Tolerance.Rounding))
            yield return $"a face area of {area.ToString("0.#", CultureInfo.InvariantCulture)} ft2 a nail is over the usual 42 ft2 ({Source}, 6.3)";
        if (IsOutside(section.Inclination, 10, 20))
            yield return $"an inclination of {Figures.Degrees(section.Inclination)} is outside the usual 10 to 20 ({Source}, 6.3)";
        if (section.TopRowDepth > section.VerticalSpacing / 2 * (1 + Tolerance.Rounding))
            yield return $"a first row {Shown(section.TopRowDepth, unit)} deep is deeper than half the vertical spacing ({Source}, 6.3)";
        double hole = Lengths.ToInches(section.HoleDiameter, unit);
        if (foot ? IsOutside(hole, 4, 8) : IsOutside(section.HoleDiameter, 0.1, 0.2))
        {
            string size = foot ? hole.ToString("0.##", CultureInfo.InvariantCulture) + " in" : Millimetres(section.HoleDiameter);
            yield return $"a hole of {size} is outside the usual {(foot ? "4 to 8 in" : "100 to 200 mm")} ({Source}, 3.3)";
        }
        if (IsOutside(section.Bar.DiameterInches, 0.75, 1.27))
            yield return $"a bar {section.Bar.Size} is outside the usual #6 to #10 ({Source}, 3.2)";
        if (section.TestNails.ProofShare < 0.05 * (1 - Tolerance.Rounding))
        {
            string share = (section.TestNails.ProofShare * 100).ToString("0.##", CultureInfo.InvariantCulture);
            yield return $"proof tests on {share} % of the production nails are under the usual 5 % ({Source}, 9.4)";
        }
    }

    private static string? OfLift(double lift, LengthUnit unit)
    {
        bool foot = Lengths.IsFoot(unit);
        return IsOutside(lift, foot ? 3 : 1, foot ? 6.5 : 2)
            ? $"an exposed height of {Shown(lift, unit)} is outside the usual lift of {(foot ? "3 to 6.5 ft" : "1 to 2 m")} ({Source}, 2.3)"
            : null;
    }

    private static bool IsOutside(double value, double least, double most) => value < least * (1 - Tolerance.Rounding) || value > most * (1 + Tolerance.Rounding);

    private static string Shown(double value, LengthUnit unit) => Figures.Number(value) + " " + Lengths.Symbol(unit);

    private static string Millimetres(double metres) => (metres * 1000).ToString("0.#", CultureInfo.InvariantCulture) + " mm";

    private static Finding Warning(Wall wall, Section? section, string message) => new()
    {
        Code = FindingCode.Guidance,
        Severity = Severity.Warning,
        Wall = wall,
        Station = wall.StationOf(section?.Start ?? wall.Start),
        ToStation = wall.StationOf(section?.End ?? wall.End),
        Message = message,
    };
}
