namespace SheetGen.Cli;

/// <summary>A finished output file, not yet on disk.</summary>
/// <param name="Name">File name within the output folder.</param>
public sealed record OutputFile(string Name, byte[] Content)
{
    /// <summary>A file with what is written to a stream.</summary>
    public static OutputFile Of(string name, Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return new OutputFile(name, stream.ToArray());
    }
}
