using SheetGen.Model.Corridors;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Corridors;

/// <summary>What reading a corridor gives.</summary>
/// <param name="Corridor">Null where any problem is an error.</param>
public sealed record CorridorResult(Corridor? Corridor, IReadOnlyList<Problem> Problems);

/// <summary>
/// Reads which walls a corridor has: from a list (YAML), a folder with one, a folder of project files, or project files named one by one or
/// by a pattern. The project files themselves are not opened.
/// </summary>
public static class CorridorReader
{
    /// <summary>The list of a folder.</summary>
    public const string ListName = "corridor.yaml";

    public static CorridorResult Read(IReadOnlyList<string> arguments)
    {
        var problems = new ProblemList();
        Corridor? corridor = arguments is [{ } one] ? ReadOne(one, problems) : OfFiles(arguments, Directory.GetCurrentDirectory(), [], problems);
        return new CorridorResult(problems.HasErrors ? null : corridor, problems.Sorted());
    }

    private static Corridor? ReadOne(string argument, ProblemList problems)
    {
        var spot = new SourceSpot(argument, 1, 1);
        if (Directory.Exists(argument))
        {
            string list = Path.Combine(argument, ListName);
            return File.Exists(list) ? ReadList(list, problems) : OfFolder(argument, problems);
        }
        if (!File.Exists(argument) && FilePattern.IsPattern(argument))
        {
            IReadOnlyList<string> files = FilePattern.Find(argument);
            if (files.Count == 0)
                problems.Add(ProblemCodes.CannotRead, spot, "no file fits this pattern", "* stands for any part of a name, ** for any folders");
            return files.Count == 0 ? null : OfFiles(files, FilePattern.RootOf(argument), [], problems);
        }
        return ReadList(argument, problems);
    }

    private static Corridor? OfFolder(string folder, ProblemList problems)
    {
        string[] direct = [.. Directory.EnumerateFiles(folder).Where(f => Path.GetExtension(f) is ".yaml" or ".yml").Order(StringComparer.Ordinal)];
        string[] below = [.. Directory.EnumerateDirectories(folder).Select(d => Path.Combine(d, StarterProject.FileName)).Where(File.Exists).Order(StringComparer.Ordinal)];
        string[] passed = [.. direct.Where(f => !IsProject(f))];
        string[] files = [.. direct.Except(passed), .. below];
        if (files.Length == 0)
        {
            problems.Add(ProblemCodes.CannotRead, new SourceSpot(folder, 1, 1), $"the folder has no {ListName}, no project files and no folders with a {StarterProject.FileName}",
                "name the list, or the folder that the project files stand in");
            return null;
        }
        return OfFiles(files, folder, [.. passed.Select(p => $"{p} was passed over: it does not look like a project file (no layout_lines, walls or project)")], problems);
    }

    /// <summary>False for a YAML file of another kind; a file that cannot be read counts, so that its fault is told.</summary>
    private static bool IsProject(string file)
    {
        string? text = InputFile.Read(file, InputFile.MostText).Text(out _);
        return text is null || text.Split('\n').Any(l => l.StartsWith("layout_lines", StringComparison.Ordinal) || l.StartsWith("project", StringComparison.Ordinal))
            || !text.Split('\n').Any(l => l.Length > 0 && (char.IsAsciiLetter(l[0]) || l[0] == '{'));
    }

    private static Corridor OfFiles(IReadOnlyList<string> files, string folder, IReadOnlyList<string> notes, ProblemList problems)
    {
        var walls = new List<CorridorWall>();
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (string file in files)
        {
            var spot = new SourceSpot(file, 1, 1);
            string shown = ShownPath(folder, file), name = SetName.Of(file);
            if (walls.Any(w => w.Shown == shown))
            {
                problems.Add(ProblemCodes.DuplicateName, spot, "the file is named twice", "name it once");
                continue;
            }
            if (!taken.Add(name))
            {
                name = SetName.Of(shown.Replace('/', '-'));
                for (int i = 2; !taken.Add(name); i++)
                    name = FormattableString.Invariant($"{SetName.Of(file)} ({i})");
            }
            walls.Add(new CorridorWall(name, file, shown, "", "", "", false, spot));
        }
        string title = Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)));
        return new Corridor(title.Length == 0 ? "Corridor" : title, folder, walls, notes);
    }

    private static Corridor? ReadList(string path, ProblemList problems)
    {
        var start = new SourceSpot(path, 1, 1);
        InputFile file = InputFile.Read(path, InputFile.MostText);
        if (file.Text(out string why) is not { } text)
        {
            problems.Add(file.IsTooLarge ? ProblemCodes.TooLarge : ProblemCodes.CannotRead, start, why.StartsWith("it ", StringComparison.Ordinal) ? "the list " + why[3..] : why, "check the path");
            return null;
        }
        if (YamlLoader.Load(text, path, problems) is not { } node)
            return null;
        if (node is MapNode project && project.Entries.Any(e => e.Key.Text is "layout_lines" or "project"))
            return OfFiles([path], Path.GetDirectoryName(Path.GetFullPath(path))!, [], problems);
        return new TreeReader(LengthUnit.Foot, problems).Read(WithFiles(node), CorridorKeys.Root, start) is MapItem root ? OfList(root, path, problems) : null;
    }

    /// <summary>A wall may be written as its file alone.</summary>
    private static Node WithFiles(Node root) => root is not MapNode map ? root : map with
    {
        Entries = [.. map.Entries.Select(e => e.Key.Text == "walls" && e.Value is ListNode list
            ? KeyValuePair.Create(e.Key, (Node)(list with { Items = [.. list.Items.Select(i => i is ScalarNode { IsEmpty: false } file ? OfFile(file) : i)] }))
            : e)],
    };

    private static MapNode OfFile(ScalarNode file) => new([new(new ScalarNode("file", false, file.Spot), file)], file.Spot);

    private static Corridor OfList(MapItem root, string path, ProblemList problems)
    {
        string folder = Path.GetDirectoryName(path) ?? "";
        var walls = new List<CorridorWall>();
        var names = new Dictionary<string, SourceSpot>(StringComparer.OrdinalIgnoreCase);
        foreach ((MapItem map, string key) in root.Maps("walls").Prepend(root).SelectMany(m => new[] { (m, "stage"), (m, "contract") }))
        {
            if (map.Text(key) is { } told && told.Equals("all", StringComparison.OrdinalIgnoreCase))
                problems.Add(ProblemCodes.OutOfRange, map.SpotOf(key), $"\"{key}\" cannot be \"{told}\": the register's sums over every {key} stand under that word", "write another name");
        }
        foreach (MapItem map in root.Maps("walls"))
        {
            if (map.Text("file") is not { } file)
                continue;
            string full = Path.Combine(folder, file);
            string name = map.Text("name") ?? SetName.Of(Directory.Exists(full) ? Path.Combine(full, StarterProject.FileName) : full);
            SourceSpot spot = map.SpotOf(map.Gives("name") ? "name" : "file");
            if (SetName.Fault(name) is { } fault)
                problems.Add(ProblemCodes.BadSetName, spot, $"\"{Shown.Short(name)}\" cannot be the name of a set: {fault}", "use letters, digits, blanks, - and _");
            else if (!names.TryAdd(name, spot))
                problems.Add(ProblemCodes.DuplicateName, spot, $"two walls of the list are named \"{name}\", and each needs a folder of its own", FormattableString.Invariant($"give one of them another name; the first is in line {names[name].Line}"), names[name]);
            string Of(string key) => map.Text(key) ?? root.Text(key) ?? "";
            // A spreadsheet takes C-1 and c-1 for one: the first spelling counts.
            string OneSpelling(string key) => walls.Select(w => key == "stage" ? w.Stage : w.Contract).FirstOrDefault(t => t.Equals(Of(key), StringComparison.OrdinalIgnoreCase)) ?? Of(key);
            walls.Add(new CorridorWall(
                name, full, ShownPath(folder, full), OneSpelling("stage"), OneSpelling("contract"), Of("coordinates"),
                map.Flag("prove") ?? root.Flag("prove") ?? false, map.SpotOf("file")));
        }
        return new Corridor(root.Text("title") ?? "", folder, walls, []);
    }

    private static string ShownPath(string folder, string file) => Path.GetRelativePath(Path.GetFullPath(folder.Length == 0 ? "." : folder), Path.GetFullPath(file)).Replace('\\', '/');
}
