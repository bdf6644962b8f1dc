using System.Reflection;
using SheetGen.ProjectFile.Documents;

namespace SheetGen.ProjectFile;

/// <summary>The commented starter projects (templates/starter), carried by the program, and the editor's schema that they name.</summary>
public static class StarterProject
{
    /// <summary>Name of the file in a new project's folder.</summary>
    public const string FileName = "wall.yaml";

    /// <summary>Name of the schema beside it, which its first line names.</summary>
    public const string SchemaName = "sheetgen.schema.json";

    /// <summary>What the starters are near to; the first is the general one.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["wall", "bridge", "pipe", "curve", "metric"];

    /// <summary>The general starter's text.</summary>
    public static string Text => TextOf(Kinds[0]);

    /// <summary>The editor's schema.</summary>
    public static string Schema => EditorSchema.Text();

    /// <summary>The text of a kind.</summary>
    /// <exception cref="ArgumentException">No such kind.</exception>
    public static string TextOf(string kind)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"starter.{kind}.yaml")
            ?? throw new ArgumentException("no starter project of this kind", nameof(kind));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
