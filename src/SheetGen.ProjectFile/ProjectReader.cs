using System.Security.Cryptography;
using System.Text;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Building;
using SheetGen.ProjectFile.Forms;
using SheetGen.ProjectFile.Inputs;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile;

/// <summary>Reads a project file (YAML, or a filled form: XLSX). Bad input never throws: every fault is a problem with its place.</summary>
public static class ProjectReader
{
    private const string FileHint = "check the path";

    /// <summary>Reads the file at a path; places in problems name the path as given.</summary>
    public static ReadResult Read(string path, ReadOptions? options = null)
    {
        InputFile file = InputFile.Read(path, InputFile.MostText);
        if (file.Bytes is { } bytes && FormReader.IsWorkbook(bytes))
            return ReadForm(bytes, path, options ?? new ReadOptions());
        if (file.Text(out string why) is not { } text)
            return Failed(file.IsTooLarge ? ProblemCodes.TooLarge : ProblemCodes.CannotRead, path, why.StartsWith("it ", StringComparison.Ordinal) ? "the file " + why[3..] : why, file.Bytes is null ? FileHint : "save it as UTF-8");
        return ReadText(text, path, Convert.ToHexStringLower(SHA256.HashData(file.Bytes!)), options ?? new ReadOptions());
    }

    /// <summary>Reads a text; the file name is used in the places of problems.</summary>
    public static ReadResult ReadText(string text, string fileName) =>
        ReadText(text, fileName, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))), new ReadOptions());

    private static ReadResult ReadText(string text, string fileName, string inputHash, ReadOptions options)
    {
        var problems = new ProblemList();
        text = text.TrimStart('\uFEFF');
        return YamlLoader.Load(text, fileName, problems) is { } loaded
            ? ReadLoaded(loaded, fileName, text, inputHash, options, problems)
            : new ReadResult(null, problems.Sorted(), text);
    }

    /// <summary>Reads a filled form. Its text is that of a project file which says the same.</summary>
    private static ReadResult ReadForm(byte[] bytes, string fileName, ReadOptions options)
    {
        var problems = new ProblemList();
        return FormReader.Read(bytes, fileName, problems) is { } loaded
            ? ReadLoaded(loaded, fileName, YamlText.Of(loaded), Convert.ToHexStringLower(SHA256.HashData(bytes)), options, problems)
            : new ReadResult(null, problems.Sorted());
    }

    private static ReadResult ReadLoaded(Node loaded, string fileName, string text, string inputHash, ReadOptions options, ProblemList problems)
    {
        LengthUnit unit = UnitOf(loaded);
        var files = new ForeignFiles(Path.GetDirectoryName(fileName) ?? "", options, problems);
        Node node = Shorthand.Expand(new Importing(files, unit, problems).Expand(loaded));
        return Read(node, unit, fileName, text, files.Hash(inputHash), problems);
    }

    /// <summary>Reads a tree that was changed after loading; its text stands for it where it is read again.</summary>
    internal static ReadResult ReadTree(Node root, string fileName, string text) =>
        Read(root, UnitOf(root), fileName, text, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))), new ProblemList());

    private static ReadResult Read(Node node, LengthUnit unit, string fileName, string text, string inputHash, ProblemList problems)
    {
        var start = new SourceSpot(fileName, 1, 1);
        WallProject? project = null;
        if (new TreeReader(unit, problems).Read(node, KeyTable.Root, start) is MapItem root)
            project = ProjectBuilder.Build(root, unit, inputHash, problems);
        return new ReadResult(problems.HasErrors ? null : project, problems.Sorted(), text) { Root = node };
    }

    /// <summary>The project's unit, needed before anything else is read; feet where it is missing or faulty, which is reported later.</summary>
    internal static LengthUnit UnitOf(Node root)
    {
        Key units = KeyTable.Root.Children.First(k => k.Name == "project").Children.First(k => k.Name == "units");
        return ValueOf(ValueOf(root, "project"), "units") is ScalarNode scalar
            ? units.ChoiceOf(scalar.Text) switch
            {
                "m" => LengthUnit.Metre,
                "us-ft" => LengthUnit.SurveyFoot,
                _ => LengthUnit.Foot,
            }
            : LengthUnit.Foot;
    }

    private static Node? ValueOf(Node? node, string key) =>
        node is MapNode map ? map.Entries.FirstOrDefault(e => e.Key.Text == key).Value : null;

    private static ReadResult Failed(ProblemCode code, string path, string message, string hint) =>
        new(null, [new Problem(code.Severity, code.Code, message, new SourceSpot(path, 1, 1), hint)]);
}
