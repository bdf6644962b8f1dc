using System.IO.Compression;

namespace SheetGen.Exchange.Common;

/// <summary>A zip in which every entry has one fixed time, so that the same content gives the same bytes.</summary>
internal static class FixedZip
{
    private static readonly DateTimeOffset Time = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static byte[] Of(IEnumerable<(string Name, byte[] Content)> entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string name, byte[] content) in entries)
            {
                ZipArchiveEntry entry = zip.CreateEntry(name, CompressionLevel.Optimal);
                entry.LastWriteTime = Time;
                using Stream output = entry.Open();
                output.Write(content);
            }
        }
        return stream.ToArray();
    }
}
