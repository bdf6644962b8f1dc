using System.Security.Cryptography;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.ProjectFile;
using SheetGen.Writers.Csv;

namespace SheetGen.Cli;

/// <summary>The program's version, as printed in outputs: without the commit, so that the same source gives the same bytes.</summary>
public static class ProgramVersion
{
    private static readonly Type[] OneOfEach =
        [typeof(Wall), typeof(ProjectReader), typeof(Placer), typeof(SheetSet), typeof(DxfDocument), typeof(NailCsv), typeof(ProgramVersion)];

    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetName().Version!.ToString(3);

    /// <summary>
    /// Fingerprint of the program's own code: the identifiers that the compiler makes from the source, so that a build of other source under
    /// the same version is another program.
    /// </summary>
    public static string Code { get; } =
        Convert.ToHexStringLower(SHA256.HashData([.. OneOfEach.SelectMany(t => t.Module.ModuleVersionId.ToByteArray())]))[..16];
}
