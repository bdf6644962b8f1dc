namespace SheetGen.Cli;

/// <summary>
/// Keeps a second run off an output folder. The file stands beside what is written, not in it, so that it can be given up last; the system
/// gives it up for a run that was killed.
/// </summary>
internal sealed class OutputLock : IDisposable
{
    public const string FileName = ".sheetgen-lock";
    private const int MostTries = 100;

    // What the system answers where another has the file open: EAGAIN (its number differs) and ERROR_SHARING_VIOLATION.
    private const int HeldOnLinux = 11, HeldOnMac = 35, HeldOnWindows = unchecked((int)0x80070020);

    private readonly FileStream _held;
    private readonly string _folder;

    private OutputLock(FileStream held, string folder)
    {
        _held = held;
        _folder = folder;
    }

    /// <summary>Takes the folder, which is made where it is missing.</summary>
    /// <exception cref="OutputException">Another run has it.</exception>
    public static OutputLock Take(string folder, OutputDisk disk)
    {
        string path = Path.Combine(folder, FileName);
        for (int i = 0; i < MostTries; i++)
        {
            disk.MakeFolder(folder);
            if (OutputDisk.IsLink(path))
                throw new OutputException($"{path} is a link; remove it");
            if (TryOpen(path, folder) is not { } stream)
                continue;
            if (IsStill(path, stream))
                return new OutputLock(stream, folder);
            stream.Dispose();
        }
        throw Taken(folder);
    }

    /// <summary>Gives the folder up: the name goes first, so that no one takes a file that is about to vanish.</summary>
    public void Release(OutputDisk disk)
    {
        if (OperatingSystem.IsWindows())
            _held.Dispose(); // A file that is open cannot be deleted there.
        try
        {
            disk.Delete(Path.Combine(_folder, FileName));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A lock file that no one holds stops no one; or the next run has it open already.
        }
        _held.Dispose();
    }

    public void Dispose() => _held.Dispose();

    private static FileStream? TryOpen(string path, string folder)
    {
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.Write, FileShare.None, bufferSize: 0);
        }
        catch (DirectoryNotFoundException)
        {
            return null; // A run that failed took its own empty folder away between the two calls.
        }
        catch (IOException) when (File.Exists(path))
        {
            throw Taken(folder);
        }
        catch (IOException e) when (e.HResult is HeldOnLinux or HeldOnMac or HeldOnWindows)
        {
            return null; // The run that held the file gave it up between the refusal and the look.
        }
    }

    /// <summary>
    /// False where the file that was opened has lost its name meanwhile: its run has ended, and another may have made the next. The opened
    /// file gets a time of its own, which its name must then show; whole even seconds, since that is all that some file systems keep.
    /// </summary>
    private static bool IsStill(string path, FileStream held)
    {
        if (OperatingSystem.IsWindows())
            return true; // A file that is open keeps its name there.
        DateTime own = new DateTime(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc).AddSeconds(2 * Random.Shared.Next(300_000_000));
        File.SetLastWriteTimeUtc(held.SafeFileHandle, own);
        return File.GetLastWriteTimeUtc(path) == own;
    }

    private static OutputException Taken(string folder) => new($"another run is writing to {folder}; wait until it has finished");
}
