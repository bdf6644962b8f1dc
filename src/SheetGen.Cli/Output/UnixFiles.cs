using System.Runtime.InteropServices;

namespace SheetGen.Cli;

/// <summary>The three calls of Unix that the platform's library lacks: exchanging two names in one step, a second name for a file, and a folder's flush.</summary>
internal static class UnixFiles
{
    private const int AtCurrentFolder = -100;
    private const uint Exchanging = 2;

    /// <summary>Exchanges two folders' names at one moment.</summary>
    /// <returns>False, with nothing changed, where the system or the file system cannot.</returns>
    public static bool TryExchange(string first, string second)
    {
        try
        {
            if (OperatingSystem.IsLinux())
                return RenameLinux(AtCurrentFolder, first, AtCurrentFolder, second, Exchanging) == 0;
            return OperatingSystem.IsMacOS() && RenameMac(first, second, Exchanging) == 0;
        }
        catch (Exception e) when (e is EntryPointNotFoundException or DllNotFoundException)
        {
            return false;
        }
    }

    /// <summary>Gives a file a second name.</summary>
    /// <returns>False where the file system has no such thing.</returns>
    public static bool TryLink(string file, string name) => LinkUnix(file, name) == 0;

    /// <summary>Brings a folder's names to the disk; a file system that does not know of this keeps its own order.</summary>
    public static void Flush(string folder)
    {
        int opened = OpenUnix(folder, 0);
        if (opened < 0)
            return;
        _ = FlushUnix(opened);
        _ = CloseUnix(opened);
    }

    [DllImport("libc", EntryPoint = "renameat2")]
    private static extern int RenameLinux(
        int fromFolder, [MarshalAs(UnmanagedType.LPUTF8Str)] string from, int toFolder, [MarshalAs(UnmanagedType.LPUTF8Str)] string to, uint flags);

    [DllImport("libc", EntryPoint = "renamex_np")]
    private static extern int RenameMac([MarshalAs(UnmanagedType.LPUTF8Str)] string from, [MarshalAs(UnmanagedType.LPUTF8Str)] string to, uint flags);

    [DllImport("libc", EntryPoint = "link")]
    private static extern int LinkUnix([MarshalAs(UnmanagedType.LPUTF8Str)] string file, [MarshalAs(UnmanagedType.LPUTF8Str)] string name);

    [DllImport("libc", EntryPoint = "open")]
    private static extern int OpenUnix([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync")]
    private static extern int FlushUnix(int opened);

    [DllImport("libc", EntryPoint = "close")]
    private static extern int CloseUnix(int opened);
}
