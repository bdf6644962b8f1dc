using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Studies;

/// <summary>A key of the project file with the values that a study gives it.</summary>
internal sealed record VariedKey(ScalarNode Name, KeyPath Path, IReadOnlyList<Node> Choices);

/// <summary>Variants of one project file: every combination of the values of the varied keys. Number 0 is the project file as it is.</summary>
public sealed class Study
{
    private readonly Node _root;
    private readonly IReadOnlyList<VariedKey> _keys;

    internal Study(string title, string projectPath, bool prove, Node root, IReadOnlyList<VariedKey> keys)
    {
        (Title, ProjectPath, Prove, _root, _keys) = (title, projectPath, prove, root, keys);
        Count = keys.Aggregate(1, (n, k) => n * k.Choices.Count);
        Keys = [.. keys.Select(k => k.Name.Text.Trim())];
    }

    public string Title { get; }

    public string ProjectPath { get; }

    /// <summary>Tighten the proof of each layout.</summary>
    public bool Prove { get; }

    /// <summary>Number of variants, the project file as it is not counted.</summary>
    public int Count { get; }

    /// <summary>Names of the varied keys, as the study writes them.</summary>
    public IReadOnlyList<string> Keys { get; }

    /// <summary>The values of a variant, one a key; empty for number 0.</summary>
    /// <param name="number">1 to <see cref="Count"/>; the last key changes fastest.</param>
    public IReadOnlyList<string> ValuesOf(int number) => [.. Chosen(number).Select(StudyReader.ShownValue)];

    /// <summary>The values of a key in the order of the study.</summary>
    public IReadOnlyList<string> ChoicesOf(int key) => [.. _keys[key].Choices.Select(StudyReader.ShownValue)];

    /// <summary>The project file of a variant, without comments: read alone it gives the same project.</summary>
    public string TextOf(int number) => YamlText.Of(RootOf(number));

    /// <summary>The project of a variant. Faults name their place in the study where its value makes them.</summary>
    public ReadResult Read(int number) => ProjectReader.ReadTree(RootOf(number), ProjectPath, TextOf(number));

    private IReadOnlyList<Node> Chosen(int number)
    {
        if (number < 0 || number > Count)
            throw new ArgumentOutOfRangeException(nameof(number));
        var chosen = new List<Node>();
        if (number == 0)
            return chosen;
        int rest = number - 1;
        foreach (VariedKey key in _keys.Reverse())
        {
            chosen.Add(key.Choices[rest % key.Choices.Count]);
            rest /= key.Choices.Count;
        }
        chosen.Reverse();
        return chosen;
    }

    private Node RootOf(int number)
    {
        Node root = _root;
        foreach ((VariedKey key, Node value) in _keys.Zip(Chosen(number)))
            root = key.Path.Put(root, key.Name, value, out _);
        return root;
    }
}
