namespace SheetGen.Dxf;

/// <summary>All that the parts of the writer need.</summary>
internal sealed record WriteJob(
    DxfDocument Document, GroupWriter Out, FilePlan Plan, DxfVersion Version, DxfExtents Extents)
{
    /// <summary>Whether the version has what release 2010 added.</summary>
    internal bool IsModern => Version == DxfVersion.AC1032;

    /// <summary>Starts a section.</summary>
    internal void Begin(string section)
    {
        Out.Coded(0, "SECTION");
        Out.Coded(2, section);
    }

    /// <summary>Ends a section.</summary>
    internal void End() => Out.Coded(0, "ENDSEC");
}
