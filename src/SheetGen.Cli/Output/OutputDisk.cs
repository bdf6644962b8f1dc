namespace SheetGen.Cli;

/// <summary>What the output folder does to the disk, one operation a call, so that a test can let each of them fail or be the last.</summary>
public class OutputDisk
{
    /// <summary>Called before every operation that changes something.</summary>
    /// <param name="operation">open, write, flush, close, rename, delete, make folder, remove folder, link, exchange or flush folder.</param>
    protected virtual void Before(string operation, string path)
    {
    }

    /// <summary>True for a file, a folder or a link, one that leads nowhere too.</summary>
    public static bool Exists(string path) => Path.Exists(path) || IsLink(path);

    public static bool IsLink(string path) => new FileInfo(path).LinkTarget is not null;

    /// <summary>Writes a file that is not there yet, down to the disk.</summary>
    public void Write(string path, byte[] content)
    {
        Before("open", path);
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        Before("write", path);
        stream.Write(content);
        Before("flush", path);
        stream.Flush(flushToDisk: true);
        Before("close", path);
    }

    /// <summary>Moves a file over what has the new name.</summary>
    public void Rename(string from, string to)
    {
        Before("rename", from);
        File.Move(from, to, overwrite: true);
    }

    /// <summary>Moves a file to a name that must be free.</summary>
    public void RenameNew(string from, string to)
    {
        Before("rename", from);
        File.Move(from, to, overwrite: false);
    }

    /// <summary>Deletes a file or a link; what is not there is no fault.</summary>
    public void Delete(string path)
    {
        if (!Exists(path))
            return;
        Before("delete", path);
        File.Delete(path);
    }

    public void MakeFolder(string path)
    {
        if (Directory.Exists(path))
            return;
        Before("make folder", path);
        Directory.CreateDirectory(path);
    }

    /// <summary>Removes an empty folder; what is not there is no fault.</summary>
    public void RemoveFolder(string path)
    {
        if (!Directory.Exists(path))
            return;
        Before("remove folder", path);
        Directory.Delete(path, recursive: false);
    }

    /// <summary>Makes a link to a path relative to the link's folder.</summary>
    public void LinkTo(string target, string link)
    {
        Before("link", link);
        File.CreateSymbolicLink(link, target);
    }

    /// <summary>Gives a file a second name.</summary>
    public bool TrySecondName(string file, string name)
    {
        Before("link", name);
        return UnixFiles.TryLink(file, name);
    }

    /// <summary>Exchanges two folders at one moment; false, with nothing changed, where that is not possible here.</summary>
    public virtual bool TryExchange(string first, string second)
    {
        Before("exchange", first);
        return UnixFiles.TryExchange(first, second);
    }

    /// <summary>Brings the names in a folder to the disk.</summary>
    public void FlushFolder(string path)
    {
        Before("flush folder", path);
        if (!OperatingSystem.IsWindows())
            UnixFiles.Flush(path);
    }
}
