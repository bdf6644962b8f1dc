namespace SheetGen.Dxf;

/// <summary>Writes a document as ASCII DXF: the same document always gives the same bytes.</summary>
public static class DxfWriter
{
    /// <summary>Writes a document.</summary>
    /// <param name="document">A document in which <see cref="DxfDocumentCheck.Problems"/> finds nothing.</param>
    /// <param name="stream">Where to write; it is left open.</param>
    /// <param name="version">Version of the format.</param>
    /// <exception cref="ArgumentException">The document has problems; the message lists the first of them.</exception>
    public static void Write(DxfDocument document, Stream stream, DxfVersion version = DxfVersion.AC1015)
    {
        var problems = DxfDocumentCheck.Problems(document);
        if (problems.Count > 0)
            throw new ArgumentException(Describe(problems), nameof(document));

        var unicode = version == DxfVersion.AC1032;
        var plan = new FilePlan(document);
        var extents = document.Header.Extents ?? DxfBounds.Of(document.Model, document) ?? new(new(0, 0), new(1, 1));

        // The header names a handle above all others, so what follows it is printed first.
        var body = new GroupWriter(unicode);
        var job = new WriteJob(document, body, plan, version, extents);
        TablesSection.Write(job);
        BlocksSection.Write(job);
        EntitiesSection.Write(job);
        ObjectsSection.Write(job);
        body.Coded(0, "EOF");

        var head = new GroupWriter(unicode);
        HeaderSection.Write(job with { Out = head });
        head.CopyTo(stream);
        body.CopyTo(stream);
    }

    private static string Describe(IReadOnlyList<DxfProblem> problems)
    {
        const int Shown = 5;
        var more = problems.Count > Shown ? $" and {problems.Count - Shown} more" : "";
        return "The document cannot be written: " + string.Join("; ", problems.Take(Shown).Select(p => p.Message)) + more;
    }
}
