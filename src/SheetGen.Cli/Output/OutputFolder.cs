namespace SheetGen.Cli;

/// <summary>
/// Writes a set of files into a folder, all or nothing. Whatever happens, old and new files never stand mixed; where the system can exchange
/// two folders' names, whoever looks at any moment sees one whole set. The next run that writes finishes or clears what a kill left.
/// Only files under our own names are replaced; whatever else is in the folder stays.
/// </summary>
public sealed class OutputFolder
{
    internal const string StagingName = ".sheetgen-new";

    private readonly string _folder;
    private readonly IReadOnlyList<string> _ownNames;
    private readonly OutputDisk _disk;

    /// <param name="folder">The output folder; need not exist. A link to a folder stays a link.</param>
    /// <param name="ownNames">All file names that this program writes, those of this run included.</param>
    /// <exception cref="OutputException">The name cannot be that of a folder.</exception>
    public OutputFolder(string folder, IReadOnlyList<string> ownNames, OutputDisk? disk = null)
    {
        try
        {
            string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
            _folder = Directory.Exists(full) && OutputDisk.IsLink(full)
                ? Path.TrimEndingDirectorySeparator(Directory.ResolveLinkTarget(full, returnFinalTarget: true)!.FullName)
                : full;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new OutputException(e is FileNotFoundException or DirectoryNotFoundException
                ? "the folder that this runs in is gone; change to one that is there"
                : $"{folder} cannot be the output folder: {e.Message}");
        }
        _ownNames = ownNames;
        _disk = disk ?? new OutputDisk();
    }

    /// <summary>Says early what would keep the set from being written, so that no one waits for a layout that cannot be kept.</summary>
    /// <exception cref="OutputException">The folder cannot take the files.</exception>
    public void CheckPossible()
    {
        if (File.Exists(_folder))
            throw new OutputException($"{_folder} is a file; --out needs a folder");
        if (!Directory.Exists(_folder) && OutputDisk.IsLink(_folder))
            throw new OutputException($"{_folder} is a link to a folder that is not there");
        foreach (string name in _ownNames)
        {
            if (Directory.Exists(Path.Combine(_folder, name)))
                throw new OutputException($"{Path.Combine(_folder, name)} is a folder; it stands where {name} must be written");
        }
        foreach (string name in new[] { StagingName, OutputLock.FileName })
        {
            // What we would move and delete in such a folder belongs to someone else.
            if (OutputDisk.IsLink(Path.Combine(_folder, name)))
                throw new OutputException($"{Path.Combine(_folder, name)} is a link; remove it");
        }
        for (string? parent = Path.GetDirectoryName(_folder); parent is not null; parent = Path.GetDirectoryName(parent))
        {
            if (File.Exists(parent))
                throw new OutputException($"{parent} is a file; {_folder} cannot be made in it");
        }
    }

    /// <summary>Puts the files in place of the former set.</summary>
    /// <param name="stopped">Asked between files; true leaves the folder as it was.</param>
    /// <returns>False where it was stopped.</returns>
    /// <exception cref="OutputException">The folder cannot be written; it is left as it was.</exception>
    public bool Write(IReadOnlyList<OutputFile> files, Func<bool> stopped)
    {
        CheckPossible();
        string? firstMade = FirstMissing(_folder);
        try
        {
            using OutputLock held = OutputLock.Take(_folder, _disk);
            try
            {
                return WriteHeld(files, stopped);
            }
            finally
            {
                held.Release(_disk);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new OutputException($"cannot write to {_folder}: {e.Message}");
        }
        finally
        {
            if (firstMade is not null)
                RemoveEmpty(_folder, firstMade);
        }
    }

    private bool WriteHeld(IReadOnlyList<OutputFile> files, Func<bool> stopped)
    {
        string staging = Path.Combine(_folder, StagingName);
        var atOnce = new StandInSwap(_folder, _ownNames, _disk);
        var byFile = new FileByFileSwap(_folder, _ownNames, _disk);
        CheckPossible();
        atOnce.Repair();
        byFile.Repair();
        ClearStaging(staging);
        try
        {
            _disk.MakeFolder(staging);
            if (!Fill(staging, files, stopped))
                return false;
            Complete(staging, files);
            if (!atOnce.TrySwap(files))
                byFile.Swap();
            Complete(_folder, files);
            return true;
        }
        finally
        {
            TryClearStaging(staging);
        }
    }

    private void TryClearStaging(string staging)
    {
        try
        {
            // What file by file could neither finish nor undo waits for the next run.
            if (!FileByFileSwap.IsOpen(staging))
                ClearStaging(staging);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The next run clears it.
        }
    }

    private bool Fill(string staging, IReadOnlyList<OutputFile> files, Func<bool> stopped)
    {
        foreach (OutputFile file in files)
        {
            if (stopped())
                return false;
            _disk.Write(Path.Combine(staging, file.Name), file.Content);
        }
        _disk.FlushFolder(staging);
        return !stopped();
    }

    private static void Complete(string folder, IReadOnlyList<OutputFile> files)
    {
        foreach (OutputFile file in files)
        {
            var info = new FileInfo(Path.Combine(folder, file.Name));
            if (!info.Exists || info.Length != file.Content.Length)
                throw new IOException($"{info.FullName} was changed by another program while it was written");
        }
    }

    private void ClearStaging(string staging)
    {
        foreach (string name in _ownNames)
            _disk.Delete(Path.Combine(staging, name));
        _disk.RemoveFolder(staging);
    }

    private static string? FirstMissing(string folder)
    {
        string? missing = null;
        for (string? at = folder; at is not null && !Directory.Exists(at); at = Path.GetDirectoryName(at))
            missing = at;
        return missing;
    }

    /// <summary>Takes away the folders that this run made, where they stayed empty.</summary>
    private static void RemoveEmpty(string folder, string upTo)
    {
        for (string at = folder; at.Length >= upTo.Length; at = Path.GetDirectoryName(at)!)
        {
            try
            {
                if (Directory.Exists(at))
                    Directory.Delete(at, recursive: false);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return;
            }
        }
    }
}
