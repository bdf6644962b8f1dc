using System.Globalization;
using System.Text;

namespace SheetGen.Dxf;

/// <summary>Finds out how the characters of a file are coded.</summary>
internal static class FileEncoding
{
    private const int Windows1252 = 1252;

    /// <summary>The coding: UTF-8 from release 2007 on or where the bytes are UTF-8 anyhow, else the file's code page.</summary>
    internal static Encoding Of(ReadOnlySpan<byte> bytes, ReadLog log)
    {
        if (!bytes.ContainsAnyExceptInRange((byte)0, (byte)127))
            return Encoding.ASCII;
        var head = Encoding.Latin1.GetString(bytes[..Math.Min(bytes.Length, 1 << 16)]);
        if (string.CompareOrdinal(Variable(head, "$ACADVER"), "AC1021") >= 0 || System.Text.Unicode.Utf8.IsValid(bytes))
            return Encoding.UTF8;
        var name = Variable(head, "$DWGCODEPAGE");
        var number = name[(name.LastIndexOf('_') + 1)..];
        if (name.Length > 0 && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var page)
            && CodePagesEncodingProvider.Instance.GetEncoding(page) is { } encoding)
        {
            return encoding;
        }
        log.Warn(1, $"code page {ReadLog.Quote(name)} is not known; ANSI_1252 is taken");
        return CodePagesEncodingProvider.Instance.GetEncoding(Windows1252)!;
    }

    private static string Variable(string head, string name)
    {
        var at = head.IndexOf(name, StringComparison.Ordinal);
        if (at < 0)
            return "";
        var lines = head[at..Math.Min(head.Length, at + 200)].Split('\n');
        return lines.Length > 2 ? lines[2].Trim() : "";
    }
}
