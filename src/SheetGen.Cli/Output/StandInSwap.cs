namespace SheetGen.Cli;

/// <summary>
/// Changes a folder's set of files at one moment. A stand-in folder with the new set takes the folder's name while the folder itself, for
/// that time under the stand-in's name, gets the new files; then the names are exchanged back. Whoever looks sees one whole set, and the
/// folder stays the same one: shells in it, its rights and whatever else it holds. For the few milliseconds in between the stand-in has links
/// to what else the folder holds.
/// </summary>
internal sealed class StandInSwap(string folder, IReadOnlyList<string> ownNames, OutputDisk disk)
{
    private const string MarkName = ".sheetgen-stand-in";

    private readonly string _staging = Path.Combine(folder, OutputFolder.StagingName);
    private readonly string? _other = Path.GetDirectoryName(folder) is { } parent
        ? Path.Combine(parent, "." + Path.GetFileName(folder) + ".sheetgen-swap")
        : null;

    /// <summary>Swaps the staged files in.</summary>
    /// <returns>False, with nothing changed, where names cannot be exchanged here.</returns>
    public bool TrySwap(IReadOnlyList<OutputFile> files)
    {
        if (_other is null || OperatingSystem.IsWindows())
            return false;
        bool exchanged = false;
        try
        {
            if (!MakeStandIn(files))
                return false;
            disk.FlushFolder(_other);
            exchanged = disk.TryExchange(folder, _other);
            if (exchanged)
                FinishOrAgain();
            return exchanged;
        }
        catch (Exception e) when (!exchanged && IsOfDisk(e))
        {
            return false; // The folder's parent may not be written: file by file may still go.
        }
        finally
        {
            if (!exchanged)
                RemoveStandIn();
        }
    }

    /// <summary>Finishes or clears what a killed run left.</summary>
    public void Repair()
    {
        if (_other is null || !OutputDisk.Exists(_other))
            return;
        if (OutputDisk.IsLink(_other))
            throw new OutputException($"{_other} is a link; remove it");
        if (OutputDisk.Exists(Path.Combine(folder, MarkName)))
        {
            // This run's lock must be that of the folder itself once it has its name again.
            disk.Delete(Path.Combine(_other, OutputLock.FileName));
            disk.TrySecondName(Path.Combine(folder, OutputLock.FileName), Path.Combine(_other, OutputLock.FileName));
            Finish();
        }
        else if (OutputDisk.Exists(Path.Combine(_other, MarkName)) || !Directory.EnumerateFileSystemEntries(_other).Any())
        {
            RemoveStandIn();
        }
        else
        {
            throw new OutputException($"{_other} is not this program's; move it away");
        }
    }

    /// <summary>Both sets are whole and only names are left to put right: what failed once may go the second time.</summary>
    private void FinishOrAgain()
    {
        try
        {
            Finish();
        }
        catch (Exception e) when (IsOfDisk(e))
        {
            Finish();
        }
    }

    /// <summary>The folder itself, under the other name, gets the set that the stand-in shows; then both take their own names again.</summary>
    private void Finish()
    {
        foreach (string name in ownNames)
        {
            string staged = Path.Combine(_other!, OutputFolder.StagingName, name);
            if (OutputDisk.Exists(staged))
                disk.Rename(staged, Path.Combine(_other!, name));
            else if (!OutputDisk.Exists(Path.Combine(folder, name)))
                disk.Delete(Path.Combine(_other!, name));
        }
        disk.FlushFolder(_other!);
        if (!disk.TryExchange(folder, _other!))
            throw new IOException($"the new set is in place, but {_other} is left; the next run puts it right");
        try
        {
            RemoveStandIn();
        }
        catch (Exception e) when (IsOfDisk(e))
        {
            // The set is in place; the next run clears the rest.
        }
    }

    private bool MakeStandIn(IReadOnlyList<OutputFile> files)
    {
        disk.MakeFolder(_other!);
        disk.Write(Path.Combine(_other!, MarkName), []);
        foreach (OutputFile file in files)
        {
            if (!disk.TrySecondName(Path.Combine(_staging, file.Name), Path.Combine(_other!, file.Name)))
                return false;
        }
        if (!disk.TrySecondName(Path.Combine(folder, OutputLock.FileName), Path.Combine(_other!, OutputLock.FileName)))
            return false;
        foreach (string entry in Directory.EnumerateFileSystemEntries(folder).Select(e => Path.GetFileName(e)).Where(IsForeign))
            disk.LinkTo(Path.Combine("..", Path.GetFileName(_other!), entry), Path.Combine(_other!, entry));
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(_other!, File.GetUnixFileMode(folder));
        return true;
    }

    /// <summary>Removes the stand-in; what someone put there while it had the folder's name moves to the folder.</summary>
    private void RemoveStandIn()
    {
        if (!Directory.Exists(_other!) || OutputDisk.IsLink(_other!))
            return;
        foreach (string entry in Directory.EnumerateFileSystemEntries(_other!).Select(e => Path.GetFileName(e)).ToList())
        {
            string path = Path.Combine(_other!, entry);
            if (entry == MarkName)
                continue; // Goes last: it tells the next run what this folder is.
            if (!IsForeign(entry) || OutputDisk.IsLink(path))
                disk.Delete(path);
            else if (OutputDisk.Exists(Path.Combine(folder, entry)))
                throw new OutputException($"{path} is not this program's; move it away");
            else if (Directory.Exists(path))
                Directory.Move(path, Path.Combine(folder, entry));
            else
                disk.Rename(path, Path.Combine(folder, entry));
        }
        disk.Delete(Path.Combine(_other!, MarkName));
        disk.RemoveFolder(_other!);
    }

    private static bool IsOfDisk(Exception e) => e is IOException or UnauthorizedAccessException;

    private bool IsForeign(string entry) =>
        !ownNames.Contains(entry) && entry is not (OutputFolder.StagingName or OutputLock.FileName or MarkName);
}
