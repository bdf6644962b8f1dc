namespace SheetGen.Dxf;

/// <summary>Reads DXF, as text or binary, of any release from R12 on, also what other programs write.</summary>
/// <remarks>
/// Entities come out in the plane: X and Y of world coordinates. What the document model does not know
/// (splines, 3D bodies, colours of single entities) is left out; whole entities left out are told as warnings.
/// </remarks>
public static class DxfReader
{
    /// <summary>Reads a file.</summary>
    /// <param name="stream">The file, from its first byte; it is read to its end and left open.</param>
    /// <returns>The document and warnings, or an error. Never throws for what is in the file.</returns>
    public static DxfReadResult Read(Stream stream)
    {
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return Read(copy.ToArray());
    }

    /// <summary>Reads a file.</summary>
    /// <param name="bytes">All of the file.</param>
    /// <returns>The document and warnings, or an error. Never throws for what is in the file.</returns>
    public static DxfReadResult Read(byte[] bytes)
    {
        var log = new ReadLog();
        var raw = RawFile.Read(bytes, log);
        if (log.Error is not null)
            return new() { Error = log.Error };
        var document = DocumentBuilder.Build(raw, log);
        return log.Error is not null
            ? new() { Error = log.Error }
            : new() { Document = document, Warnings = log.Warnings };
    }
}
