using System.Globalization;
using System.Text;
using SheetGen.Model.Units;

namespace SheetGen.ProjectFile.Inputs.Inspecting;

/// <summary>A project file around a file of another program.</summary>
public static class StartFrom
{
    /// <summary>The text; null where nothing of the file can be taken.</summary>
    /// <param name="name">Name of the file beside the project file.</param>
    public static string? Text(Inspection inspection, string name)
    {
        if (!inspection.Yaml.Any(y => y.Key is "layout_lines" or "obstructions"))
            return null;
        if (inspection.Yaml[0].Key == "layout_lines" && inspection.LineLength <= 0)
            return null;
        bool metric = inspection.Unit == LengthUnit.Metre, isLine = inspection.Yaml[0].Key == "layout_lines";
        string file = LandXmlInspection.Quoted(name), zero = metric ? "0+000" : "0+00";
        // Profiles often begin a little behind their alignment's start.
        (double least, double most) = inspection.Profile is { } p ? (Math.Max(0, p.From), Math.Min(inspection.LineLength, p.To)) : (0, inspection.LineLength);
        double usual = metric ? 30 : 100, from = least + Math.Min(usual / 10, (most - least) / 20), to = Math.Min(from + usual, most - (most - least) / 20);
        string first = isLine ? At(from) : zero, last = isLine ? At(to) : metric ? "0+030" : "1+00";
        var text = new StringBuilder();
        text.Append("# yaml-language-server: $schema=sheetgen.schema.json\n# A project around ").Append(name).Append(": correct what the comments name, then: sheetgen check .\n");
        text.Append("format: 1\nproject: {title: New wall, units: ").Append(Lengths.Symbol(inspection.Unit)).Append("}\n\nlayout_lines:\n");
        text.Append(isLine ? inspection.Yaml[0].Text : $"  - name: WL-1\n    start: {{station: {zero}, northing: 0, easting: 0, azimuth: 90}}     # where the wall's line begins\n    elements: [{{line: {(metric ? 60 : 200)}}}]\n");
        text.Append("\nwalls:\n  - name: Wall 1\n    retained_side: right     # side of the soil, looking up-station\n");
        text.Append(CultureInfo.InvariantCulture, $"    stations: [{first}, {last}]     # first and last station; an @ counts from the line's start\n");
        if (isLine && inspection.Profile is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"    top: {{from_landxml: {{file: {file}, alignment: {LandXmlInspection.Quoted(inspection.LineName)}, raise: {(metric ? 5 : 16)}}}}}     # the road's profile, raised: give the top of the wall\n");
            text.Append(CultureInfo.InvariantCulture, $"    finished_grade: {{from_landxml: {{file: {file}, alignment: {LandXmlInspection.Quoted(inspection.LineName)}}}}}\n");
            text.Append(metric ? "    bottom: {from_grade: {embedment: 0.6, rise: 0.4}}\n    panels: {width: 3, height: 1.5}\n" : "    bottom: {from_grade: {embedment: 2, rise: 1.25}}\n    panels: {width: 10, height: 5}\n");
        }
        else
        {
            text.Append(CultureInfo.InvariantCulture, $"    top: [[{first}, {(metric ? 106 : 118)}], [{last}, {(metric ? 106 : 118)}]]     # give the elevations\n    bottom: {{steps: [[{first}, {(metric ? 101 : 102)}]]}}\n");
        }
        text.Append(CultureInfo.InvariantCulture, $"    sections:\n      - name: A\n        stations: [{first}, {last}]\n        rows: parallel\n        inclination: 15\n        bar: {{size: \"#8\", grade: 75}}\n");
        text.Append(metric ? "        horizontal_spacing: 1.5\n        vertical_spacing: 1.5\n        top_row_depth: 0.6\n        lengths: 8\n        hole: 150 mm\n"
            : "        horizontal_spacing: 5\n        vertical_spacing: 5\n        top_row_depth: 2\n        lengths: 24\n        hole: 6 in\n");
        YamlBlock[] drawn = [.. inspection.Yaml.Where(y => y.Key == "obstructions")];
        if (drawn.Length > 0)
            text.Append("\n# Take out the layers that holes need not keep clear of, and give the elevations.\nobstructions:\n").AppendJoin("", drawn.Select(y => y.Text));
        return text.ToString();

        static string At(double along) => FormattableString.Invariant($"\"@{Math.Round(along, 1)}\"");
    }
}
