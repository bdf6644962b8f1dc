namespace SheetGen.EndToEnd.Support;

/// <summary>Places in the source tree that the tests run on.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string Demo(string name) => Path.Combine(Root, "demo", name);

    public static string DemoFile(string name) => Path.Combine(Demo(name), "wall.yaml");

    public static IEnumerable<string> DemoNames => Directory
        .EnumerateDirectories(Path.Combine(Root, "demo"))
        .Select(d => Path.GetFileName(d)!)
        .Order(StringComparer.Ordinal);

    /// <summary>The program as the build made it, in the configuration that these tests were built in.</summary>
    public static string Program { get; } = FindProgram();

    private static string FindRoot()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "SheetGen.sln")))
                return at.FullName;
        }
        throw new InvalidOperationException("no SheetGen.sln above the tests");
    }

    private static string FindProgram()
    {
        string[] parts = Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory).Split(Path.DirectorySeparatorChar);
        return Path.Combine(Root, "src", "SheetGen.Cli", "bin", parts[^2], parts[^1], "SheetGen.Cli.dll");
    }
}
