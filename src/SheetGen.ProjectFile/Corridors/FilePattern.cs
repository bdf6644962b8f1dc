using System.IO.Enumeration;

namespace SheetGen.ProjectFile.Corridors;

/// <summary>Paths with * and ?, and ** for any number of folders, for shells that do not write them out.</summary>
internal static class FilePattern
{
    private static readonly char[] Signs = ['*', '?'];

    public static bool IsPattern(string path) => path.IndexOfAny(Signs) >= 0;

    /// <summary>The folder before the first sign.</summary>
    public static string RootOf(string pattern)
    {
        string before = pattern[..pattern.IndexOfAny(Signs)];
        int slash = before.LastIndexOfAny(['/', Path.DirectorySeparatorChar]);
        return slash < 0 ? "." : slash == 0 ? before[..1] : before[..slash];
    }

    /// <summary>The files that fit, in order.</summary>
    public static IReadOnlyList<string> Find(string pattern)
    {
        string root = RootOf(pattern), rest = pattern[(root == "." && !pattern.StartsWith("./", StringComparison.Ordinal) ? 0 : root.Length)..];
        string[] parts = rest.Split(['/', Path.DirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries);
        return Directory.Exists(root) ? [.. Below(root, parts).Distinct().Order(StringComparer.Ordinal)] : [];
    }

    private static IEnumerable<string> Below(string folder, ReadOnlyMemory<string> parts)
    {
        string part = parts.Span[0];
        bool isLast = parts.Length == 1;
        if (part == "**")
        {
            IEnumerable<string> deeper = Directory.EnumerateDirectories(folder).SelectMany(d => Below(d, parts));
            return isLast ? deeper.Concat(Directory.EnumerateFiles(folder)) : deeper.Concat(Below(folder, parts[1..]));
        }
        return isLast
            ? Directory.EnumerateFiles(folder).Where(Fits)
            : Directory.EnumerateDirectories(folder).Where(Fits).SelectMany(d => Below(d, parts[1..]));

        bool Fits(string path) => FileSystemName.MatchesSimpleExpression(part, Path.GetFileName(path), ignoreCase: OperatingSystem.IsWindows());
    }
}
