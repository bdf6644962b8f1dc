namespace SheetGen.Tests.ProjectFile;

/// <summary>Files of the repository that tests read.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    public static string Read(params string[] parts) => File.ReadAllText(PathOf(parts));

    private static string FindRoot()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "SheetGen.sln")))
            at = at.Parent;
        return at?.FullName ?? throw new InvalidOperationException("SheetGen.sln not found above the tests");
    }
}
