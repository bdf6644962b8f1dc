using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Forms.Xlsx;

/// <summary>Reads a stream and fails when it gives more than it may, whatever the file says of its own size.</summary>
internal sealed class BoundedStream(Stream inner, Func<int, bool> spend) : Stream
{
    private readonly TagCounter _tags = new();

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        int read = inner.Read(buffer, offset, count);
        if (!spend(read))
            throw new WorkbookException("unpacks to more than a form ever holds") { IsTooLarge = true };
        return _tags.IsWithin(buffer.AsSpan(offset, read)) ? read : throw new WorkbookException(FormattableString.Invariant($"has more than {TagCounter.Most} bytes in one tag")) { IsTooLarge = true };
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            inner.Dispose();
        base.Dispose(disposing);
    }
}

/// <summary>Why a workbook is not read, to stand behind "the workbook".</summary>
internal sealed class WorkbookException(string message) : Exception(message)
{
    public bool IsTooLarge { get; init; }
}
