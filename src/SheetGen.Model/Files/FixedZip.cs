using System.Buffers.Binary;
using System.IO.Compression;

namespace SheetGen.Model.Files;

/// <summary>A zip that has the same bytes for the same content, on every day and system: one fixed time, and entries that are told to be of one system.</summary>
public static class FixedZip
{
    private const int EndLength = 22;
    private const int HeaderLength = 46;
    private const byte Unix = 3;
    private const uint UserWritesAllRead = 0x81A4_0000; // A plain file, rw-r--r--, in the upper half.

    private static readonly DateTimeOffset Time = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Makes a zip of entries in the order given.</summary>
    /// <param name="entries">Names, with / between folders and names, and what writes the content into a stream that is closed here; fewer than 65,535.</param>
    public static byte[] Of(IEnumerable<(string Name, Action<Stream> Write)> entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string name, Action<Stream> write) in entries)
            {
                ZipArchiveEntry entry = zip.CreateEntry(name, CompressionLevel.Optimal);
                entry.LastWriteTime = Time;
                using Stream content = entry.Open();
                write(content);
            }
        }
        byte[] bytes = stream.ToArray();
        SetSystem(bytes);
        return bytes;
    }

    /// <summary>
    /// Sets, in the directory at a zip's end, the system that made each entry and the file's rights there, which the framework takes from the machine
    /// it runs on ("version made by" and "external file attributes", ZIP file format 4.4.2 and 4.4.15; from memory).
    /// </summary>
    /// <exception cref="InvalidDataException">The zip ends with a comment, or its directory is not where its end says.</exception>
    internal static void SetSystem(Span<byte> zip)
    {
        Span<byte> end = zip.Length < EndLength ? [] : zip[^EndLength..];
        if (end.Length == 0 || BinaryPrimitives.ReadUInt32LittleEndian(end) != 0x06054b50)
            throw new InvalidDataException("no end of a zip's directory");
        int count = BinaryPrimitives.ReadUInt16LittleEndian(end[10..]);
        int at = BinaryPrimitives.ReadInt32LittleEndian(end[16..]);
        for (int i = 0; i < count; i++)
        {
            Span<byte> header = at < 0 || at > zip.Length - HeaderLength ? [] : zip[at..];
            if (header.Length == 0 || BinaryPrimitives.ReadUInt32LittleEndian(header) != 0x02014b50)
                throw new InvalidDataException($"no entry {i + 1} in a zip's directory of {count}");
            header[5] = Unix;
            BinaryPrimitives.WriteUInt32LittleEndian(header[38..], UserWritesAllRead);
            at += HeaderLength + BinaryPrimitives.ReadUInt16LittleEndian(header[28..])
                + BinaryPrimitives.ReadUInt16LittleEndian(header[30..]) + BinaryPrimitives.ReadUInt16LittleEndian(header[32..]);
        }
    }
}
