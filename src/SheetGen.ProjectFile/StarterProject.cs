using System.Reflection;

namespace SheetGen.ProjectFile;

/// <summary>The commented starter project (templates/starter/wall.yaml), carried by the program.</summary>
public static class StarterProject
{
    /// <summary>Name of the file in a new project's folder.</summary>
    public const string FileName = "wall.yaml";

    /// <summary>The file's text.</summary>
    public static string Text
    {
        get
        {
            using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("starter.wall.yaml")!;
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd();
        }
    }
}
