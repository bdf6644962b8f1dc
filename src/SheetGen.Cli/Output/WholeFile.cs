namespace SheetGen.Cli;

/// <summary>Files outside of a set of results: each is written whole beside its name, down to the disk, and then renamed, so that none is ever seen in part.</summary>
public static class WholeFile
{
    /// <summary>Writes a file in place of an older one.</summary>
    /// <exception cref="OutputException">It cannot be written; the older one stays.</exception>
    public static void Replace(string path, byte[] content, OutputDisk? disk = null)
    {
        disk ??= new OutputDisk();
        try
        {
            disk.Delete(PartOf(path));
            disk.Write(PartOf(path), content);
            disk.Rename(PartOf(path), path);
        }
        catch (Exception e) when (IsOfDisk(e))
        {
            Discard([PartOf(path)], disk);
            throw new OutputException($"cannot write {path}: {e.Message}");
        }
    }

    /// <summary>Writes new files into a folder, all or none of them; the folder is made where it is missing. The first one takes its name last.</summary>
    /// <exception cref="OutputException">One is there already, or the folder cannot be written; nothing of this call stays.</exception>
    public static void AddNew(string folder, IReadOnlyList<OutputFile> files, OutputDisk? disk = null)
    {
        disk ??= new OutputDisk();
        string[] paths = [.. files.Select(f => Path.Combine(folder, f.Name))];
        if (paths.FirstOrDefault(OutputDisk.Exists) is { } there)
            throw new OutputException($"cannot write {there}: it is there already, and this command never overwrites");
        bool isNew = !Directory.Exists(folder);
        var made = new List<string>();
        try
        {
            disk.MakeFolder(folder);
            for (int i = 0; i < paths.Length; i++)
            {
                disk.Delete(PartOf(paths[i]));
                made.Add(PartOf(paths[i]));
                disk.Write(PartOf(paths[i]), files[i].Content);
            }
            foreach (string path in paths.Reverse())
            {
                disk.RenameNew(PartOf(path), path);
                made.Add(path);
            }
        }
        catch (Exception e) when (IsOfDisk(e))
        {
            Discard(made, disk);
            if (isNew && Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
                Directory.Delete(folder);
            throw new OutputException($"cannot write {made.LastOrDefault() ?? folder}: {e.Message}");
        }
    }

    private static string PartOf(string path) => FormattableString.Invariant($"{path}.{Environment.ProcessId}.new");

    private static bool IsOfDisk(Exception e) => e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    private static void Discard(IEnumerable<string> paths, OutputDisk disk)
    {
        foreach (string path in paths)
        {
            try
            {
                disk.Delete(path);
            }
            catch (Exception e) when (IsOfDisk(e))
            {
                // The fault that is told is the first one.
            }
        }
    }
}
