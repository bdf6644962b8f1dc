namespace SheetGen.Cli;

/// <summary>
/// Changes a folder's set of files where folders cannot be exchanged: the old files are set aside, a mark says that the new set is complete,
/// the new files move in. Old and new never stand mixed; a kill can leave gaps, which the next run closes.
/// </summary>
internal sealed class FileByFileSwap(string folder, IReadOnlyList<string> ownNames, OutputDisk disk)
{
    private const string ReadyName = "ready";
    private const string OldName = "old";

    private readonly string _staging = Path.Combine(folder, OutputFolder.StagingName);

    private string Ready => Path.Combine(_staging, ReadyName);

    private string Old => Path.Combine(_staging, OldName);

    /// <summary>True where a swap is neither finished nor undone.</summary>
    public static bool IsOpen(string staging) => OutputDisk.Exists(Path.Combine(staging, OldName));

    public void Swap()
    {
        try
        {
            disk.MakeFolder(Old);
            Move(folder, Old);
            disk.Write(Ready, []);
            disk.FlushFolder(_staging);
            Move(_staging, folder);
        }
        catch (Exception e) when (IsOfDisk(e))
        {
            Undo();
            throw;
        }
        try
        {
            Clear();
        }
        catch (Exception e) when (IsOfDisk(e))
        {
            // The set is in place and marked; the next run clears the rest.
        }
    }

    /// <summary>Finishes what has its mark, and puts back what has none.</summary>
    public void Repair()
    {
        if (OutputDisk.IsLink(Old))
            throw new OutputException($"{Old} is a link; remove it");
        if (OutputDisk.Exists(Ready))
            Move(_staging, folder);
        else if (Directory.Exists(Old))
            Move(Old, folder);
        Clear();
    }

    /// <summary>With the mark still there a kill is mended forwards, without it backwards.</summary>
    private void Undo()
    {
        if (OutputDisk.Exists(Ready))
            Move(folder, _staging);
        disk.Delete(Ready);
        Move(Old, folder);
        disk.RemoveFolder(Old);
    }

    /// <summary>The old files go before the mark: files of the old set without it would be put back.</summary>
    private void Clear()
    {
        foreach (string name in ownNames)
            disk.Delete(Path.Combine(Old, name));
        disk.RemoveFolder(Old);
        disk.Delete(Ready);
    }

    private static bool IsOfDisk(Exception e) => e is IOException or UnauthorizedAccessException;

    private void Move(string from, string to)
    {
        foreach (string name in ownNames)
        {
            if (OutputDisk.Exists(Path.Combine(from, name)))
                disk.Rename(Path.Combine(from, name), Path.Combine(to, name));
        }
    }
}
