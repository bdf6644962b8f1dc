using System.Security.Cryptography;
using System.Text;
using SheetGen.Review.Data;

namespace SheetGen.Review;

/// <summary>
/// review.html: one file with its code, its looks and its data. Its content security policy lets run only the one script and the one style sheet whose hashes it
/// names, and forbids every request over a network.
/// </summary>
public static class ReviewPage
{
    /// <summary>The page as it is written beside the other results.</summary>
    /// <param name="findings">findings.json of the same run.</param>
    public static byte[] Make(ReviewInput input, ReadOnlyMemory<byte> findings) => Compose(PageData.Make(input, findings), "'none'");

    /// <summary>The page around its data.</summary>
    /// <param name="connect">What the page may talk to: <c>'none'</c>, or <c>'self'</c> for one that is served while its file is watched.</param>
    public static byte[] Compose(ReadOnlySpan<byte> data, string connect)
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
                case "data": page.Write(data); break;
                default: throw new InvalidOperationException("the page's frame has no place " + part[..end]);
            }
            Text(part[(end + 2)..]);
        }
        return page.ToArray();

        void Text(string text) => page.Write(Encoding.UTF8.GetBytes(text));
    }

    private static string Hash(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
