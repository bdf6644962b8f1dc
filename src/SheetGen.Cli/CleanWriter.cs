using System.Globalization;
using System.Text;

namespace SheetGen.Cli;

/// <summary>
/// A stream of the process that shows text and nothing else: what would move the cursor, colour the screen or turn the direction of reading
/// comes from a file or a path and is replaced. A stream that is closed or full does not stop the run; what it would have shown is lost, and
/// <see cref="Failure"/> says why.
/// </summary>
public sealed class CleanWriter(TextWriter inner) : TextWriter(CultureInfo.InvariantCulture)
{
    private const char Replacement = '\uFFFD';

    /// <summary>Why text was lost; null where none was.</summary>
    public string? Failure { get; private set; }

    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => Write([value]);

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(string? value) => Write(value.AsSpan());

    public override void WriteLine(string? value) => Write((value + inner.NewLine).AsSpan());

    public override void Write(ReadOnlySpan<char> buffer)
    {
        string clean = IsClean(buffer) ? buffer.ToString() : Clean(buffer);
        Try(() => inner.Write(clean));
    }

    public override void Flush() => Try(inner.Flush);

    /// <summary>The text with every sign replaced that is not shown where it stands.</summary>
    public static string Clean(ReadOnlySpan<char> text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (char c in text)
            clean.Append(IsShown(c) ? c : Replacement);
        return clean.ToString();
    }

    private static bool IsClean(ReadOnlySpan<char> text)
    {
        foreach (char c in text)
        {
            if (!IsShown(c))
                return false;
        }
        return true;
    }

    private static bool IsShown(char c) => c is '\n' or '\t' or '\r'
        || c is >= ' ' and <= '~'
        || (!char.IsControl(c) && CharUnicodeInfo.GetUnicodeCategory(c) is not (UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator));

    private void Try(Action action)
    {
        if (Failure is not null)
            return;
        try
        {
            action();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ObjectDisposedException or NotSupportedException)
        {
            Failure = e.Message.ReplaceLineEndings(" ");
        }
    }
}
