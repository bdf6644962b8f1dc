using System.IO.Compression;

namespace SheetGen.Writers.Workbook;

/// <summary>Rewrites a zip with sorted entries and one fixed time, so that the same content gives the same bytes.</summary>
internal static class FixedZip
{
    private static readonly DateTimeOffset Time = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <param name="instead">Contents that are written in place of what an entry holds, by its full name.</param>
    public static void Rewrite(Stream from, Stream to, IReadOnlyDictionary<string, Action<Stream>>? instead = null)
    {
        using var source = new ZipArchive(from, ZipArchiveMode.Read, leaveOpen: true);
        using var target = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        IEnumerable<ZipArchiveEntry> sorted = source.Entries
            .OrderBy(e => e.FullName == "[Content_Types].xml" ? 0 : 1).ThenBy(e => e.FullName, StringComparer.Ordinal);
        foreach (ZipArchiveEntry entry in sorted)
        {
            ZipArchiveEntry copy = target.CreateEntry(entry.FullName, CompressionLevel.Optimal);
            copy.LastWriteTime = Time;
            using Stream output = copy.Open();
            if (instead is not null && instead.TryGetValue(entry.FullName, out Action<Stream>? content))
            {
                content(output);
                continue;
            }
            using Stream input = entry.Open();
            input.CopyTo(output);
        }
    }
}
