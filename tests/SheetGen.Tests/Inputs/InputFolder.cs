using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Inputs;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>A folder with a project file and files of other programs beside it; removed at the end.</summary>
internal sealed class InputFolder : IDisposable
{
    public InputFolder() => Directory.CreateDirectory(Path);

    public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), "sheetgen-in-" + Guid.NewGuid().ToString("N"));

    public string Of(string name) => System.IO.Path.Combine(Path, name);

    public InputFolder With(string name, string text)
    {
        File.WriteAllText(Of(name), text);
        return this;
    }

    /// <summary>Reads a project file of this folder.</summary>
    public ReadResult Read(string yaml, bool allowOutside = false) =>
        ProjectReader.Read(With("wall.yaml", yaml).Of("wall.yaml"), new ReadOptions(allowOutside));

    /// <summary>The project, without an error or warning.</summary>
    public WallProject Project(string yaml)
    {
        ReadResult read = Read(yaml);
        Assert.Equal([], read.Problems.Where(p => p.Severity != Severity.Notice).Select(ProblemPrinter.Plain));
        return read.Project!;
    }

    /// <summary>The problems without the folder's own name.</summary>
    public string[] Problems(string yaml, bool allowOutside = false) =>
        [.. Read(yaml, allowOutside).Problems.Select(ProblemPrinter.Plain).Select(p => p.Replace(Path + System.IO.Path.DirectorySeparatorChar, "", StringComparison.Ordinal))];

    public void Dispose() => Directory.Delete(Path, recursive: true);

    /// <summary>A project with one wall on a layout line and its profiles.</summary>
    public static string Yaml(string line, string top, string stations, string units = "ft", string more = "", string bottom = "80") => $$"""
        format: 1
        project: {title: Test, units: {{units}}}
        layout_lines:
          - name: L
            {{line}}
        walls:
          - name: W
            retained_side: right
            stations: {{stations}}
            top: {{top}}
            bottom: {steps: [[{{stations.Split(',')[0].Trim('[')}}, {{bottom}}]]}
            sections:
              - {name: A, stations: {{stations}}, horizontal_spacing: 1.5 m, vertical_spacing: 1.5 m, top_row_depth: 0.6 m, inclination: 15, lengths: 8 m, bar: {size: "#8", grade: 75}, hole: 6 in}
        {{more}}
        """;
}
