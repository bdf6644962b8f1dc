using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace SheetGen.ProjectFile;

/// <summary>The bytes of a file that the user names, or the reason why there are none. Only plain files up to a size are read: a pipe would let the run wait for ever, a device feed it for ever.</summary>
/// <param name="Bytes">Null where the file was not read.</param>
/// <param name="Why">The reason, to stand behind the file's name; empty where it was read.</param>
public sealed record InputFile(byte[]? Bytes, string Why)
{
    /// <summary>Most bytes of a text that the program reads as a whole.</summary>
    public const long MostText = 16_000_000;

    /// <summary>Most bytes of a drawing.</summary>
    public const long MostDrawing = 64_000_000;

    /// <summary>True where the file is there but larger than asked.</summary>
    public bool IsTooLarge { get; private init; }

    /// <summary>Who is told of each file read in this flow of work; every file that a user names comes through here, so that none can be forgotten.</summary>
    private static readonly AsyncLocal<Action<string, byte[]>?> Watch = new();

    /// <summary>Reads a file. Never throws for what the path names.</summary>
    /// <param name="most">Most bytes that are read.</param>
    public static InputFile Read(string path, long most)
    {
        InputFile file = ReadPlain(path, most);
        if (file.Bytes is { } bytes)
            Watch.Value?.Invoke(path, bytes);
        return file;
    }

    /// <summary>Runs work and tells of every file that it reads.</summary>
    /// <param name="read">Gets path and bytes of each.</param>
    public static T Watching<T>(Action<string, byte[]> read, Func<T> work)
    {
        Action<string, byte[]>? outer = Watch.Value;
        Watch.Value = read;
        try
        {
            return work();
        }
        finally
        {
            Watch.Value = outer;
        }
    }

    private static InputFile ReadPlain(string path, long most)
    {
        try
        {
            if (Directory.Exists(path))
                return new(null, "it is a folder");
            if (OddKind(path) is { } kind)
                return new(null, kind);
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (stream.CanSeek && stream.Length > most)
                return TooLarge(stream.Length.ToString("N0", CultureInfo.InvariantCulture) + " bytes", most);
            using var memory = new MemoryStream();
            var part = new byte[64 * 1024];
            for (int read = stream.Read(part); read > 0; read = stream.Read(part))
            {
                memory.Write(part, 0, read);
                if (memory.Length > most)
                    return TooLarge("more bytes than that", most);
            }
            return new(memory.ToArray(), "");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or System.Security.SecurityException)
        {
            return new(null, e switch
            {
                FileNotFoundException or DirectoryNotFoundException => "there is no such file",
                UnauthorizedAccessException => "the rights to read it are missing",
                PathTooLongException => "the path is too long",
                ArgumentException => "that is no path",
                _ => "it cannot be opened: " + e.Message.ReplaceLineEndings(" "),
            });
        }
    }

    /// <summary>The text of the file; null where it was not read or is not UTF-8, and then the reason is given.</summary>
    public string? Text(out string why)
    {
        why = Why;
        if (Bytes is null)
            return null;
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(Bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            why = "it is not UTF-8 text";
            return null;
        }
    }

    private static InputFile TooLarge(string size, long most) =>
        new(null, $"it has {size}; the limit is {most.ToString("N0", CultureInfo.InvariantCulture)}") { IsTooLarge = true };

    /// <summary>What the path names where it is no plain file; null for a plain file, for nothing, and where the system does not tell.</summary>
    private static string? OddKind(string path) => (ModeOf(path) & 0xF000) switch
    {
        0x1000 => "it is a pipe; save what comes through it as a file",
        0x2000 or 0x6000 => "it is a device",
        0xC000 => "it is a socket",
        _ => null,
    };

    /// <summary>The mode word of the system's own record of the file, links followed; 0 where there is none.</summary>
    private static int ModeOf(string path)
    {
        const int CurrentFolder = -100, OfLinuxMode = 28, OfMacMode = 4;
        const uint Type = 1;
        var record = new byte[512];
        try
        {
            if (OperatingSystem.IsLinux())
                return StatLinux(CurrentFolder, path, 0, Type, record) == 0 ? BitConverter.ToUInt16(record, OfLinuxMode) : 0;
            if (OperatingSystem.IsMacOS())
                return StatMac(path, record) == 0 ? BitConverter.ToUInt16(record, OfMacMode) : 0;
        }
        catch (Exception e) when (e is EntryPointNotFoundException or DllNotFoundException)
        {
            // An old system: the size limit still holds.
        }
        return 0;
    }

    [DllImport("libc", EntryPoint = "statx")]
    private static extern int StatLinux(int folder, [MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags, uint mask, [Out] byte[] record);

    [DllImport("libc", EntryPoint = "stat")]
    private static extern int StatMac([MarshalAs(UnmanagedType.LPUTF8Str)] string path, [Out] byte[] record);
}
