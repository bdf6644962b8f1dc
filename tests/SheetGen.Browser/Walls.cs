using System.Globalization;
using System.Text;
using System.Text.Json;
using SheetGen.Cli;

namespace SheetGen.Browser;

/// <summary>Walls built by the program itself into a folder of the test.</summary>
public sealed class Walls : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("sheetgen-").FullName;

    /// <summary>Builds a project file and gives the path of its page.</summary>
    public string Build(string yaml, string name, params string[] more)
    {
        string file = Path.Combine(Folder, name + ".yaml"), target = Path.Combine(Folder, name);
        File.WriteAllText(file, yaml);
        var told = new StringWriter(CultureInfo.InvariantCulture);
        int code = Entry.Run(["build", file, "--out", target, .. more], new Screen(TextWriter.Null, told, live: false));
        return code <= 1 ? Path.Combine(target, "review.html") : throw new InvalidOperationException(told.ToString());
    }

    public static string Demo(string name) => File.ReadAllText(Path.Combine(Browser.Root(), "demo", name, "wall.yaml"));

    /// <summary>A straight wall of many nails with some shafts behind it.</summary>
    public static string Long(int columns, string title = "Long wall", string shaft = "S")
    {
        var yaml = new StringBuilder(FormattableString.Invariant($$$"""
            format: 1
            project: {title: {{{JsonSerializer.Serialize(title)}}}, number: T-9, units: ft}
            layout_lines: [{name: WL-1, start: {station: 0+00, northing: 5000, easting: 2000, azimuth: 90}, elements: [{line: {{{columns * 5}}}}]}]
            walls:
              - name: W
                layout_line: WL-1
                retained_side: right
                stations: [0, {{{columns * 5}}}]
                top: [[0, 150], [{{{columns * 5}}}, 150]]
                bottom: {steps: [[0, 100]]}
                sections:
                  - {name: A, stations: [0, {{{columns * 5}}}], horizontal_spacing: 5, vertical_spacing: 5, top_row_depth: 2.25, inclination: 15, lengths: 20, bar: {size: "#8", grade: 75}, hole: 6 in}
            obstructions:

            """));
        for (int i = 0; i < 5; i++)
            yaml.Append(CultureInfo.InvariantCulture, $"  - {{name: {JsonSerializer.Serialize(shaft + i)}, kind: shaft, at: {{station: {12 + 20 * i}, offset: 30}}, diameter: 3, top: 150, bottom: 90}}\n");
        return yaml.ToString();
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
