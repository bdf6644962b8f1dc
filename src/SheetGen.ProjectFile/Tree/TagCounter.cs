namespace SheetGen.ProjectFile.Tree;

/// <summary>
/// Counts the bytes of the XML tag that a stream stands in. A reader keeps a whole tag in memory, some 300 bytes for an attribute of 7, and
/// can be asked to stop only behind it.
/// </summary>
internal sealed class TagCounter
{
    /// <summary>Most bytes from one angle bracket to the next.</summary>
    public const int Most = 1_000_000;

    private long _passed;
    private bool _inside;

    /// <summary>Where the last tag begins, in bytes from the first one seen.</summary>
    public long Start { get; private set; }

    /// <summary>False where the next part makes a tag longer than it may be.</summary>
    public bool IsWithin(ReadOnlySpan<byte> part)
    {
        while (part.Length > 0)
        {
            int next = part.IndexOf(_inside ? (byte)'>' : (byte)'<'), taken = next < 0 ? part.Length : next + 1;
            if (_inside && _passed + taken - Start > Most)
                return false;
            _passed += taken;
            part = part[taken..];
            if (next < 0)
                return true;
            _inside = !_inside;
            if (_inside)
                Start = _passed - 1;
        }
        return true;
    }
}
