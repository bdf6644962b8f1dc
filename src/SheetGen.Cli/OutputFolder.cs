namespace SheetGen.Cli;

/// <summary>
/// Writes a set of files into a folder, all or nothing. A kill at any moment leaves either the former set, no set with the new one ready
/// beside it, or the new set: old and new files never stand mixed, and the next run that writes finishes or clears what was left.
/// Only files under our own names are replaced; whatever else is in the folder stays.
/// </summary>
public sealed class OutputFolder
{
    private const string StagingName = ".sheetgen-new";
    private const string ReadyName = "ready";
    private const string LockName = "lock";
    private const string OldName = "old";

    private readonly string _folder;
    private readonly IReadOnlyList<string> _ownNames;

    /// <param name="folder">The output folder; need not exist.</param>
    /// <param name="ownNames">All file names that this program writes, those of this run included.</param>
    public OutputFolder(string folder, IReadOnlyList<string> ownNames)
    {
        _folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        _ownNames = ownNames;
    }

    /// <summary>Says early what would keep the set from being written, so that no one waits for a layout that cannot be kept.</summary>
    /// <exception cref="OutputException">The folder cannot take the files.</exception>
    public void CheckPossible()
    {
        if (File.Exists(_folder))
            throw new OutputException($"{_folder} is a file; --out needs a folder");
        foreach (string name in _ownNames)
        {
            if (Directory.Exists(Path.Combine(_folder, name)))
                throw new OutputException($"{Path.Combine(_folder, name)} is a folder; it stands where {name} must be written");
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
        try
        {
            return Directory.Exists(_folder) ? WriteInto(files, stopped) : WriteNew(files, stopped);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new OutputException($"cannot write to {_folder}: {e.Message}");
        }
    }

    /// <summary>A folder that is not there yet comes with its files in one rename.</summary>
    private bool WriteNew(IReadOnlyList<OutputFile> files, Func<bool> stopped)
    {
        string parent = Path.GetDirectoryName(_folder) ?? _folder;
        string? firstMade = FirstMissing(parent);
        string staging = Path.Combine(parent, "." + Path.GetFileName(_folder) + StagingName);
        Directory.CreateDirectory(staging);
        FileStream held = Hold(staging);
        try
        {
            RemoveLeftovers(staging);
            bool filled = Fill(staging, files, stopped);
            held.Dispose();
            File.Delete(Path.Combine(staging, LockName));
            if (filled)
                Directory.Move(staging, _folder);
            return filled;
        }
        finally
        {
            held.Dispose();
            Remove(staging);
            if (!Directory.Exists(_folder) && firstMade is not null)
                RemoveEmpty(parent, firstMade);
        }
    }

    private bool WriteInto(IReadOnlyList<OutputFile> files, Func<bool> stopped)
    {
        string staging = Path.Combine(_folder, StagingName);
        Directory.CreateDirectory(staging);
        FileStream held = Hold(staging);
        bool begun = false;
        try
        {
            Repair(staging);
            if (!Fill(staging, files, stopped))
                return false;
            SetOldAside(staging);
            WriteDurably(Path.Combine(staging, ReadyName), []);
            begun = true;
            MoveNewIn(staging);
            begun = false;
            return true;
        }
        finally
        {
            held.Dispose();
            if (!begun)
                Remove(staging);
        }
    }

    /// <summary>Finishes or undoes what a killed run left in the folder.</summary>
    private void Repair(string staging)
    {
        if (File.Exists(Path.Combine(staging, ReadyName)))
            MoveNewIn(staging);
        else
            PutOldBack(staging);
        RemoveLeftovers(staging);
    }

    private void RemoveLeftovers(string staging)
    {
        foreach (string name in _ownNames)
            File.Delete(Path.Combine(staging, name));
        Remove(Path.Combine(staging, OldName));
        File.Delete(Path.Combine(staging, ReadyName));
    }

    private void SetOldAside(string staging)
    {
        string old = Path.Combine(staging, OldName);
        Directory.CreateDirectory(old);
        try
        {
            foreach (string name in _ownNames)
            {
                if (File.Exists(Path.Combine(_folder, name)))
                    File.Move(Path.Combine(_folder, name), Path.Combine(old, name));
            }
        }
        catch
        {
            PutOldBack(staging);
            throw;
        }
    }

    private void PutOldBack(string staging)
    {
        foreach (string name in _ownNames)
        {
            string old = Path.Combine(staging, OldName, name);
            if (File.Exists(old))
                File.Move(old, Path.Combine(_folder, name), overwrite: true);
        }
    }

    private void MoveNewIn(string staging)
    {
        foreach (string name in _ownNames)
        {
            string made = Path.Combine(staging, name);
            if (File.Exists(made))
                File.Move(made, Path.Combine(_folder, name), overwrite: true);
        }
    }

    private static bool Fill(string staging, IReadOnlyList<OutputFile> files, Func<bool> stopped)
    {
        foreach (OutputFile file in files)
        {
            if (stopped())
                return false;
            WriteDurably(Path.Combine(staging, file.Name), file.Content);
        }
        return !stopped();
    }

    private static void WriteDurably(string path, byte[] content)
    {
        using var stream = new FileStream(path, FileMode.Create, FileAccess.Write);
        stream.Write(content);
        stream.Flush(flushToDisk: true);
    }

    /// <summary>Keeps a second run off the same folder; released when the process ends, however it ends.</summary>
    private FileStream Hold(string staging)
    {
        try
        {
            return new FileStream(Path.Combine(staging, LockName), FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
        }
        catch (IOException)
        {
            throw new OutputException($"another run is writing to {_folder}; wait until it has finished");
        }
    }

    private static void Remove(string folder)
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }

    private static string? FirstMissing(string folder)
    {
        string? missing = null;
        for (string? at = folder; at is not null && !Directory.Exists(at); at = Path.GetDirectoryName(at))
            missing = at;
        return missing;
    }

    private static void RemoveEmpty(string folder, string upTo)
    {
        for (string at = folder; at.Length >= upTo.Length; at = Path.GetDirectoryName(at)!)
        {
            if (Directory.Exists(at) && !Directory.EnumerateFileSystemEntries(at).Any())
                Directory.Delete(at);
        }
    }
}
