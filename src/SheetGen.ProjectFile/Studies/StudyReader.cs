using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Studies;

/// <summary>What reading a study gives.</summary>
/// <param name="Study">Null where any problem is an error.</param>
public sealed record StudyResult(Study? Study, IReadOnlyList<Problem> Problems);

/// <summary>Reads a study and the project file that it varies; every fault of both is reported, and each value of the study by the key's own rules.</summary>
public static partial class StudyReader
{
    public const int MostVariants = 10_000;

    [GeneratedRegex(@"^(?<number>[-+]?[0-9]+(?:\.[0-9]+)?)(?<unit>\s*[a-zA-Z%°'""]*)$")]
    private static partial Regex NumberText();

    public static StudyResult Read(string projectPath, string studyPath)
    {
        ReadResult project = ProjectReader.Read(projectPath);
        var problems = new ProblemList();
        Study? study = ReadStudy(project, projectPath, studyPath, problems);
        IReadOnlyList<Problem> all = [.. project.Problems, .. problems.Sorted()];
        return new StudyResult(project.Project is null || problems.HasErrors ? null : study, all);
    }

    private static Study? ReadStudy(ReadResult project, string projectPath, string path, ProblemList problems)
    {
        var start = new SourceSpot(path, 1, 1);
        InputFile file = InputFile.Read(path, InputFile.MostText);
        if (file.Text(out string why) is not { } text)
        {
            problems.Add(ProblemCodes.CannotRead, start, why.StartsWith("it ", StringComparison.Ordinal) ? "the study " + why[3..] : why, "check the path");
            return null;
        }
        if (YamlLoader.Load(text, path, problems) is not { } node)
            return null;
        LengthUnit unit = project.Root is { } root ? ProjectReader.UnitOf(root) : LengthUnit.Foot;
        KeyValuePair<ScalarNode, Node> vary = default;
        if (node is MapNode map)
        {
            vary = map.Entries.FirstOrDefault(e => e.Key.Text == StudyKeys.Vary);
            node = map with { Entries = [.. map.Entries.Where(e => e.Key.Text != StudyKeys.Vary)] };
        }
        if (new TreeReader(unit, problems).Read(node, StudyKeys.Root, start) is not MapItem given)
            return null;
        if (vary.Value is not MapNode { Entries.Count: > 0 } names)
        {
            problems.Add(ProblemCodes.StudyValues, vary.Key?.Spot ?? start, "a study needs vary: keys of the project file, each with its values", "for example vary: {horizontal_spacing: [3.5, 4], inclination: {from: 10, to: 20, step: 5}}");
            return null;
        }
        var keys = new List<VariedKey>();
        foreach ((ScalarNode name, Node values) in names.Entries)
        {
            if (KeyPath.Find(name, given.Text("wall"), given.Text("section"), problems) is { } key && Values(name, values, key, unit, problems) is { } choices)
                keys.Add(new VariedKey(name, key, choices));
        }
        double count = keys.Aggregate(1.0, (n, k) => n * k.Choices.Count);
        if (count > MostVariants)
            problems.Add(ProblemCodes.StudyValues, vary.Key.Spot, FormattableString.Invariant($"the study has {count:0} variants; the limit is {MostVariants}"), "vary fewer keys, or in larger steps");
        if (project.Root is null || problems.HasErrors)
            return null;
        Node varied = project.Root;
        var placed = new List<int>();
        foreach (VariedKey key in keys)
        {
            varied = key.Path.Put(varied, key.Name, key.Choices[0], out int places);
            placed.Add(places);
            if (places == 0)
                problems.Add(ProblemCodes.StudyKey, key.Name.Spot, $"the project file has no place for \"{Shown.Short(key.Name.Text)}\"", Where(key.Path));
        }
        // The last of two keys for one place would count, while the tables name the values of both.
        foreach ((VariedKey key, int places) in keys.Zip(placed).Where(k => Count(varied, k.First.Choices[0]) < k.Second))
            problems.Add(ProblemCodes.StudyKey, key.Name.Spot, $"\"{Shown.Short(key.Name.Text)}\" names a place that a later key of the study names too", "name each place once: inclination[section A] and inclination[section B], or inclination alone");
        return new Study(given.Text("title") ?? "", projectPath, given.Flag("prove") ?? false, project.Root, keys);
    }

    /// <summary>In how many places of a tree this very node stands.</summary>
    private static int Count(Node at, Node sought) => ReferenceEquals(at, sought) ? 1 : at switch
    {
        ListNode list => list.Items.Sum(i => Count(i, sought)),
        MapNode map => map.Entries.Sum(e => Count(e.Value, sought)),
        _ => 0,
    };

    private static string Where(KeyPath path) => path switch
    {
        { Wall: not null, Section: not null } => $"no wall {path.Wall} has a section {path.Section}",
        { Wall: not null } => $"no wall is named {path.Wall}",
        { Section: not null } => $"no section is named {path.Section}",
        _ => "the blocks that it stands in are missing",
    };

    /// <summary>The values of a key, each read as in a project file; null where any is faulty.</summary>
    private static IReadOnlyList<Node>? Values(ScalarNode name, Node values, KeyPath key, LengthUnit unit, ProblemList problems)
    {
        IReadOnlyList<Node>? choices = values switch
        {
            ListNode list => list.Items,
            MapNode range => Range(range, problems),
            _ => [values],
        };
        if (choices is null)
            return null;
        if (choices.Count == 0)
        {
            problems.Add(ProblemCodes.StudyValues, name.Spot, $"\"{Shown.Short(name.Text)}\" has no values", "write [3.5, 4] or {from: 10, to: 20, step: 5}");
            return null;
        }
        var reader = new TreeReader(unit, problems);
        bool good = true;
        var before = new List<(Item Value, string Shown)>();
        foreach (Node choice in choices)
        {
            Item? value = reader.Read(choice, key.Key, choice.Spot);
            good &= value is not null;
            if (value is null)
                continue;
            string shown = ShownValue(choice);
            if (before.FirstOrDefault(b => SameValue.Is(b.Value, value)).Shown is { } first)
            {
                problems.Add(ProblemCodes.StudyValues, choice.Spot, shown == first ? $"{shown} is given twice" : $"{shown} is the same as {first}, which is given before it", "give each value once");
                good = false;
            }
            before.Add((value, shown));
        }
        return good ? choices : null;
    }

    private static List<Node>? Range(MapNode range, ProblemList problems)
    {
        const string Hint = "write {from: 10, to: 20, step: 5}";
        string[] asked = ["from", "to", "step"];
        var numbers = new Dictionary<string, (decimal Value, string Unit, ScalarNode At)>();
        foreach ((ScalarNode name, Node value) in range.Entries)
        {
            if (!asked.Contains(name.Text))
                problems.Add(ProblemCodes.UnknownKey, name.Spot, $"unknown key \"{Shown.Short(name.Text)}\" in a range", Hint);
            else if (value is ScalarNode scalar && NumberText().Match(scalar.Text.Trim()) is { Success: true } match && decimal.TryParse(match.Groups["number"].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal number))
                numbers[name.Text] = (number, match.Groups["unit"].Value, scalar);
            else
                problems.Add(ProblemCodes.StudyValues, value.Spot, $"\"{name.Text}\" of a range takes a number", Hint);
        }
        foreach (string missing in asked.Where(a => range.Entries.All(e => e.Key.Text != a)))
            problems.Add(ProblemCodes.StudyValues, range.Spot, $"\"{missing}\" is missing in a range", Hint);
        if (numbers.Count < asked.Length)
            return null;
        (decimal from, decimal to, decimal step) = (numbers["from"].Value, numbers["to"].Value, numbers["step"].Value);
        string unit = numbers["from"].Unit;
        if (numbers.Values.Any(n => n.Unit.Trim() != unit.Trim()) || step <= 0 || to < from || (to - from) / step > MostVariants)
        {
            problems.Add(ProblemCodes.StudyValues, range.Spot, "the range does not go from its least to its greatest value in steps over 0, all in one unit", Hint);
            return null;
        }
        if ((to - from) % step != 0)
        {
            problems.Add(ProblemCodes.StudyValues, numbers["to"].At.Spot, FormattableString.Invariant($"steps of {step} from {from} do not end at {to}, which would be left out"), FormattableString.Invariant($"write to: {from + Math.Floor((to - from) / step) * step}, or another step"));
            return null;
        }
        var values = new List<Node>();
        for (decimal value = from; value <= to; value += step)
            values.Add(new ScalarNode(value.ToString(CultureInfo.InvariantCulture) + unit, false, numbers["from"].At.Spot));
        return values;
    }

    /// <summary>A value as tables show it: 3.5, or 24/24/20 for a list.</summary>
    internal static string ShownValue(Node node) => node switch
    {
        ScalarNode scalar => scalar.Text.Trim(),
        ListNode list => string.Join('/', list.Items.Select(ShownValue)),
        MapNode map => string.Join(", ", map.Entries.Select(e => e.Key.Text + " " + ShownValue(e.Value))),
        _ => "",
    };
}
