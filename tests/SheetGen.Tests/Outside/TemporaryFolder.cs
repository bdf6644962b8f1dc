namespace SheetGen.Tests.Outside;

/// <summary>A folder of its own that goes away with the test.</summary>
public sealed class TemporaryFolder : IDisposable
{
    /// <summary>Where it is.</summary>
    public string Path { get; } = Directory.CreateTempSubdirectory("sheetgen-").FullName;

    /// <summary>A file in it.</summary>
    public string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, true);
}
