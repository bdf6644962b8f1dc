using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace SheetGen.Writers.Pdf;

/// <summary>Puts fixed values of the same length where the PDF package writes random ones.</summary>
internal static partial class PdfBytes
{
    public static byte[] Normalise(byte[] file, string seed)
    {
        string text = Encoding.Latin1.GetString(file);
        string hash = Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(seed)));
        string uuid = $"{hash[..8]}-{hash[8..12]}-{hash[12..16]}-{hash[16..20]}-{hash[20..32]}".ToLowerInvariant();
        text = Uuid().Replace(text, "uuid:" + uuid);
        text = Ids().Replace(text, m => m.Groups[1].Value + Stretch(hash, m.Groups[2].Length) + m.Groups[3].Value + Stretch(hash, m.Groups[4].Length));
        var tags = new Dictionary<string, string>();
        text = Subset().Replace(text, m =>
        {
            if (!tags.TryGetValue(m.Groups[1].Value, out string? tag))
                tags[m.Groups[1].Value] = tag = "SHEET" + (char)('A' + tags.Count % 26);
            return "/" + tag + "+";
        });
        return Encoding.Latin1.GetBytes(text);
    }

    private static string Stretch(string hash, int length) =>
        string.Concat(Enumerable.Repeat(hash, length / hash.Length + 1))[..length].ToUpper(CultureInfo.InvariantCulture);

    [GeneratedRegex("uuid:[0-9A-Fa-f-]{36}")]
    private static partial Regex Uuid();

    [GeneratedRegex("(/ID\\s*\\[\\s*<)([0-9A-Fa-f]+)(>\\s*<)([0-9A-Fa-f]+)")]
    private static partial Regex Ids();

    [GeneratedRegex("/([A-Z]{6})\\+")]
    private static partial Regex Subset();
}
