using System.Text;
using SheetGen.Review;

namespace SheetGen.Cli.Watching;

/// <summary>A project file that is being edited: its last good page, what is wrong with it now, and whether it was saved since.</summary>
public sealed class WatchedWall(string file)
{
    private const int MostFiles = 500;

    private readonly Lock _lock = new();
    private Snapshot _now = new(0, 0, null, [], false);
    private string _built = "";

    /// <summary>What there is at a moment.</summary>
    /// <param name="Version">Grows with each build that begins or ends.</param>
    /// <param name="PageNumber">Grows with each page.</param>
    /// <param name="Page">The last good page, to be served; null before the first.</param>
    /// <param name="Faults">What the last build said of the file, a line each.</param>
    /// <param name="Building">True while a build runs.</param>
    public sealed record Snapshot(int Version, int PageNumber, byte[]? Page, IReadOnlyList<string> Faults, bool Building);

    public Snapshot Now
    {
        get
        {
            lock (_lock)
                return _now;
        }
    }

    /// <summary>True where a file beside the project file was saved since the last build began.</summary>
    public bool HasChanged => Stamp() != _built;

    /// <summary>Builds the wall in memory. Faults are kept for the page and printed.</summary>
    public void Build(Screen screen)
    {
        _built = Stamp();
        Change(s => s with { Building = true });
        using var told = new StringWriter { NewLine = "\n" };
        var own = new Screen(TextWriter.Null, told, live: false);
        byte[]? page = null;
        try
        {
            if (FinishedWall.Make(file, new RunOptions(false, false, null, false) { Only = [OutputSet.Review] }, own) is { } run)
                page = ReviewPage.Served(run.Files.First(f => f.Name == OutputSet.Review).Content, Now.PageNumber + 1);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            told.Write($"the program is at fault, not your file: {e.Message}\n");
        }
        own.Close();
        string[] faults = [.. told.ToString().Split('\n').Where(l => l.Length > 0 && (!l.StartsWith("sheetgen: ", StringComparison.Ordinal) || page is null))];
        if (page is null && faults.Length == 0)
            faults = ["the wall could not be built"];
        foreach (string fault in faults)
            screen.Error.WriteLine(fault);
        screen.Out.WriteLine(page is null ? "built nothing: the page still shows the last good wall" : "built; the page follows");
        screen.Out.Flush();
        Change(s => page is null ? s with { Faults = faults, Building = false } : new Snapshot(s.Version, s.PageNumber + 1, page, faults, false));
    }

    private void Change(Func<Snapshot, Snapshot> change)
    {
        lock (_lock)
        {
            Snapshot next = change(_now);
            _now = next with { Version = _now.Version + 1 };
        }
    }

    /// <summary>Sizes and times of the files beside the project file, where those that it names must lie.</summary>
    private string Stamp()
    {
        var stamp = new StringBuilder();
        try
        {
            string folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
            foreach (FileInfo f in new DirectoryInfo(folder).EnumerateFiles().OrderBy(f => f.Name, StringComparer.Ordinal).Take(MostFiles).Append(new FileInfo(file)))
                stamp.Append(f.Name).Append(f.Exists ? f.Length : -1).Append(' ').Append(f.LastWriteTimeUtc.Ticks).Append('\n');
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            stamp.Append("gone");
        }
        return stamp.ToString();
    }
}
