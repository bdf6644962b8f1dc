namespace SheetGen.Tests.Drawing;

/// <summary>The project file of one wall along a layout line of its own.</summary>
internal static class OneWall
{
    /// <summary>The text of the file, from pieces in its own words.</summary>
    /// <param name="start">The line's start: station, northing, easting, azimuth.</param>
    /// <param name="elements">The line's elements, between commas.</param>
    /// <param name="wall">Keys of the wall, one a line, without its layout line and its design zones.</param>
    /// <param name="zones">Its design zones without bar and hole, one a line.</param>
    /// <param name="drill">Bar and hole of the zones.</param>
    /// <param name="more">Further keys of the file, one a line.</param>
    public static string Yaml(string title, string unit, string start, string elements, string wall, string zones, string drill, string more) => $$$"""
        format: 1
        project: {title: {{{title}}}, number: T-1, units: {{{unit}}}}
        layout_lines:
          - name: L
            start: { {{{start}}} }
            elements: [{{{elements}}}]
        walls:
          - layout_line: L
        {{{Indented(4, wall.Split('\n'))}}}
            sections:
        {{{Indented(6, zones.Split('\n').Select(z => $"- {{{drill}, {z}}}"))}}}
        {{{more}}}
        """;

    private static string Indented(int by, IEnumerable<string> lines) => string.Join('\n', lines.Select(l => new string(' ', by) + l));
}
