namespace SheetGen.ProjectFile.Inputs;

/// <summary>Whether a file that a project file names lies beside it or below its folder, links followed.</summary>
public static class FolderFence
{
    private const int MostLinks = 40;

    /// <summary>Why the file may not be read; null where it may. A file that does not exist may: that is told when it is opened.</summary>
    /// <param name="folder">Folder of the project file.</param>
    /// <param name="name">The file as the project file names it.</param>
    public static string? Fault(string folder, string name)
    {
        try
        {
            string root = Real(Path.GetFullPath(folder.Length == 0 ? "." : folder)), file = Real(Path.GetFullPath(Path.Combine(folder, name)));
            string inside = Path.TrimEndingDirectorySeparator(root) + Path.DirectorySeparatorChar;
            return file.StartsWith(inside, StringComparison.Ordinal) ? null : "it lies outside of the project file's folder";
        }
        catch (Exception e) when (e is ArgumentException or NotSupportedException or IOException or UnauthorizedAccessException)
        {
            return "that is no path";
        }
    }

    /// <summary>The path with every link on it followed.</summary>
    private static string Real(string path)
    {
        string done = Path.GetPathRoot(path) ?? "";
        var left = new Stack<string>(path[done.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse());
        int links = 0;
        while (left.Count > 0)
        {
            string next = Path.Combine(done, left.Pop());
            string? target = new FileInfo(next).LinkTarget;
            if (target is null)
            {
                done = next;
                continue;
            }
            if (++links > MostLinks)
                throw new IOException("too many links");
            string whole = Path.GetFullPath(target, done);
            done = Path.GetPathRoot(whole) ?? "";
            foreach (string part in whole[done.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse())
                left.Push(part);
        }
        return done;
    }
}
