using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SheetGen.Review.Data;

namespace SheetGen.Review;

/// <summary>
/// review.html: one file with its code, its looks and its data. Its content security policy lets run only the one script and the one style sheet whose hashes it
/// names, and forbids every request over a network.
/// </summary>
public static class ReviewPage
{
    private const string DataStart = "<script type=\"application/json\" id=\"data\">", DataEnd = "</script>";

    /// <summary>The page as it is written beside the other results.</summary>
    /// <param name="findings">findings.json of the same run.</param>
    public static byte[] Make(ReviewInput input, ReadOnlyMemory<byte> findings) => Compose(PageData.Make(input, findings), "'none'", "", null);

    /// <summary>A page that was made, as it is served while its project file is watched: it may ask the address that it came from, and no other, for news.</summary>
    /// <param name="number">Which page this is, so that it can tell when there is a newer one.</param>
    public static byte[] Served(ReadOnlySpan<byte> page, int number) =>
        Compose(DataOf(page), "'self'", number.ToString(CultureInfo.InvariantCulture), null);

    /// <summary>A page that was made, with an older page or saved review in it, which it takes when it opens: marks carry over, nails are compared.</summary>
    /// <param name="olderText">Of a page only the data are taken: its code and its looks are those of the new page.</param>
    public static byte[] Against(ReadOnlySpan<byte> page, string olderName, string olderText)
    {
        string data = Encoding.UTF8.GetString(DataOf(Encoding.UTF8.GetBytes(olderText)));
        string text = data.Length > 0 ? DataStart + data + DataEnd : olderText;
        return Compose(DataOf(page), "'none'", "", JsonSerializer.SerializeToUtf8Bytes(new JsonObject { ["name"] = olderName, ["text"] = text }));
    }

    /// <summary>True for a page of this program, or one that holds data as it does.</summary>
    public static bool IsPage(ReadOnlySpan<byte> page)
    {
        if (DataOf(page) is not { IsEmpty: false } data)
            return false;
        try
        {
            var reader = new Utf8JsonReader(data);
            using JsonDocument json = JsonDocument.ParseValue(ref reader);
            // What is put into a page again must not end the script that holds it; what is read before the first end cannot.
            return json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("nails", out _) && !data.Contains((byte)'<');
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>Why a text cannot be taken into a page as an older one; null where it is a page of this program or a saved review.</summary>
    public static string? WhyNotOlder(string text)
    {
        if (!text.TrimStart().StartsWith('{'))
            return IsPage(Encoding.UTF8.GetBytes(text)) ? null : "it is neither a review page nor a saved review";
        try
        {
            using JsonDocument json = JsonDocument.Parse(text);
            bool isReview = json.RootElement.TryGetProperty("kind", out JsonElement kind) && kind.ValueKind == JsonValueKind.String && kind.ValueEquals("sheetgen review")
                && IsList(json.RootElement, "marks") && IsList(json.RootElement, "columns") && IsList(json.RootElement, "nails");
            return isReview ? null : "it is not a saved review";
        }
        catch (JsonException fault)
        {
            return FormattableString.Invariant($"it is no JSON at line {fault.LineNumber + 1}, column {fault.BytePositionInLine + 1}");
        }
    }

    private static bool IsList(JsonElement of, string key) => of.TryGetProperty(key, out JsonElement list) && list.ValueKind == JsonValueKind.Array;

    /// <summary>The page's data; empty where it holds none.</summary>
    private static ReadOnlySpan<byte> DataOf(ReadOnlySpan<byte> page)
    {
        ReadOnlySpan<byte> start = Encoding.UTF8.GetBytes(DataStart);
        int at = page.IndexOf(start);
        if (at < 0)
            return [];
        ReadOnlySpan<byte> data = page[(at + start.Length)..];
        int end = data.IndexOf(Encoding.UTF8.GetBytes(DataEnd));
        return end < 0 ? [] : data[..end];
    }

    private static byte[] Compose(ReadOnlySpan<byte> data, string connect, string number, byte[]? older)
    {
        string policy = $"default-src 'none'; script-src '{Hash(PageBundle.Script)}'; style-src '{Hash(PageBundle.Style)}'; img-src data:; "
            + $"connect-src {connect}; base-uri 'none'; form-action 'none'";
        using var page = new MemoryStream();
        foreach (string part in PageBundle.Frame.Split("{{"))
        {
            int end = part.IndexOf("}}", StringComparison.Ordinal);
            if (end < 0)
            {
                Text(part);
                continue;
            }
            switch (part[..end])
            {
                case "policy": Text(policy); break;
                case "style": Text(PageBundle.Style); break;
                case "script": Text(PageBundle.Script); break;
                case "number": Text(number); break;
                case "data": page.Write(data); break;
                case "older": page.Write(older ?? "null"u8); break;
                default: throw new InvalidOperationException("the page's frame has no place " + part[..end]);
            }
            Text(part[(end + 2)..]);
        }
        return page.ToArray();

        void Text(string text) => page.Write(Encoding.UTF8.GetBytes(text));
    }

    private static string Hash(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
