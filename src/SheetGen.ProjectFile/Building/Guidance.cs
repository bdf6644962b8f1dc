using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Building;

/// <summary>What is outside the usual. The ranges are published; the source stands in each message.</summary>
internal static class Guidance
{
    private const string Spacing = "usual: 3 to 6.5 ft (0.9 to 2 m); upper limit FHWA GEC 7 (2015) 6.3, lower common practice, no source";
    private const string Area = "usual: up to 42 ft2 (3.9 m2), FHWA GEC 7 (2015) 6.3";
    private const string Inclination = "usual: 10 to 20 deg, FHWA GEC 7 (2015) 6.3";
    private const string Hole = "usual: 4 to 8 in (100 to 200 mm), FHWA GEC 7 (2015) 3.3";
    private const string Size = "usual: #6 to #10, FHWA GEC 7 (2015) 3.2";

    public static void Check(MapItem section, Bar? bar, LengthUnit unit, string? wallName, ProblemList problems)
    {
        bool foot = Lengths.IsFoot(unit);
        string where = $"section {Shown.Short(section.Text("name") ?? "?")} of {Shown.Short(wallName ?? "?")}";
        void Warn(string key, string what, string usual) =>
            problems.Add(ProblemCodes.Guidance, section.SpotOf(key), $"{where}: {what} is outside what is usual", usual);
        string Meant(double value, double from, double to) =>
            LengthValues.Meant(FormattableString.Invariant($"{value}"), value, unit, v => v >= from && v <= to) is { } meant ? $"did you mean {meant}? " : "";

        double least = foot ? 3 : 0.9, most = foot ? 6.5 : 2;
        foreach (string key in new[] { "horizontal_spacing", "vertical_spacing" })
        {
            if (section.Number(key) is { } spacing && (spacing < least || spacing > most))
                Warn(key, FormattableString.Invariant($"{key} {spacing}"), Meant(spacing, least, most) + Spacing);
        }
        if (section.Number("horizontal_spacing") is { } h && section.Number("vertical_spacing") is { } v
            && h <= most && v <= most && h * v > (foot ? 42 : 3.9))
            Warn("vertical_spacing", FormattableString.Invariant($"the area of a nail {h * v:0.##}"), Area);
        if (section.Number("inclination") is { } inclination && inclination is < 10 or > 20)
            Warn("inclination", FormattableString.Invariant($"inclination {section.Number("inclination")}"), Inclination);
        if (section.Number("hole") is { } hole && (hole < (foot ? 4.0 / 12 : 0.1) - Tolerance.Length || hole > (foot ? 8.0 / 12 : 0.2) + Tolerance.Length))
            Warn("hole", FormattableString.Invariant($"the hole {hole:0.###}"), Meant(hole, foot ? 0.33 : 0.1, foot ? 0.67 : 0.2) + Hole);
        if (bar is not null && (bar.DiameterInches < 0.75 || bar.DiameterInches > 1.27))
            Warn("bar", $"the bar {bar.Size}", Size);
    }
}
