using System.Reflection;
using System.Security.Cryptography;

namespace SheetGen.Cli;

/// <summary>The program's version, as printed in outputs: without the commit, so that the same source gives the same bytes.</summary>
public static class ProgramVersion
{
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetName().Version!.ToString(3);

    /// <summary>
    /// Fingerprint of the program's own code: the identifiers that the compiler makes from the source, so that a build of other source under
    /// the same version is another program.
    /// </summary>
    public static string Code => LazyCode.Value;

    /// <summary>Few commands ask for it, and it loads every assembly.</summary>
    private static readonly Lazy<string> LazyCode = new(() => CodeOf(typeof(ProgramVersion).Assembly));

    private static string CodeOf(Assembly program)
    {
        var own = new SortedDictionary<string, Assembly>(StringComparer.Ordinal);
        var waiting = new Stack<Assembly>([program]);
        while (waiting.TryPop(out Assembly? assembly))
        {
            if (!own.TryAdd(assembly.GetName().Name!, assembly))
                continue;
            foreach (AssemblyName used in assembly.GetReferencedAssemblies().Where(a => a.Name!.StartsWith("SheetGen.", StringComparison.Ordinal)))
                waiting.Push(Assembly.Load(used));
        }
        return Convert.ToHexStringLower(SHA256.HashData([.. own.Values.SelectMany(a => a.ManifestModule.ModuleVersionId.ToByteArray())]))[..16];
    }
}
