namespace SheetGen.EndToEnd.Support;

/// <summary>A folder of a test's own, gone with it.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("sheetgen-").FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Names of all files and folders below, as paths from here, in order.</summary>
    public IReadOnlyList<string> Listing(string below = "") => Directory
        .EnumerateFileSystemEntries(File(below), "*", SearchOption.AllDirectories)
        .Select(p => System.IO.Path.GetRelativePath(File(below), p).Replace('\\', '/'))
        .Order(StringComparer.Ordinal)
        .ToList();

    public void Dispose()
    {
        if (Directory.Exists(Path))
            Directory.Delete(Path, recursive: true);
    }
}
