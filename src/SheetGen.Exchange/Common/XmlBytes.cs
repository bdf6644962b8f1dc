using System.Text;
using System.Xml;

namespace SheetGen.Exchange.Common;

/// <summary>XML as bytes: UTF-8 without a mark at the start, indented, line feeds.</summary>
internal static class XmlBytes
{
    public static byte[] Of(Action<XmlWriter> write)
    {
        using var stream = new MemoryStream();
        var settings = new XmlWriterSettings { Encoding = new UTF8Encoding(false), Indent = true, NewLineChars = "\n", CheckCharacters = true };
        using (var xml = XmlWriter.Create(stream, settings))
        {
            xml.WriteStartDocument();
            write(xml);
            xml.WriteEndDocument();
        }
        return stream.ToArray();
    }

    /// <summary>A text without the signs that XML 1.0 cannot hold.</summary>
    public static string Clean(string text) => string.Concat(text.EnumerateRunes().Where(r => IsAllowed(r.Value)).Select(r => r.ToString()));

    private static bool IsAllowed(int sign) => sign is '\t' or '\n' or '\r' or (>= 0x20 and <= 0xD7FF) or (>= 0xE000 and <= 0xFFFD) or >= 0x10000;
}
