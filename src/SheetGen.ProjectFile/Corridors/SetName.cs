namespace SheetGen.ProjectFile.Corridors;

/// <summary>Names that can be those of folders on every system.</summary>
internal static class SetName
{
    public const int Longest = 80;
    private static readonly string[] Devices = ["con", "prn", "aux", "nul", .. Enumerable.Range(0, 10).SelectMany(i => new[] { $"com{i}", $"lpt{i}" })];

    /// <summary>What keeps a text from being such a name; null where nothing does.</summary>
    public static string? Fault(string name)
    {
        if (name.Length > Longest)
            return FormattableString.Invariant($"it has more than {Longest} characters");
        foreach (char c in name)
        {
            if (!IsPlain(c))
                return $"\"{c}\" cannot stand in the name of a folder";
        }
        if (name[0] is '.' or ' ' or '-' || name[^1] is '.' or ' ')
            return "it begins or ends with a dot, a blank or a dash";
        return Devices.Contains(name.Split('.')[0].ToLowerInvariant()) ? "some systems keep that name for a device" : null;
    }

    /// <summary>The name that a path suggests: of the file, or of its folder where the file has the usual name.</summary>
    public static string Of(string path)
    {
        string name = Path.GetFileNameWithoutExtension(path);
        if (name.Equals(Path.GetFileNameWithoutExtension(StarterProject.FileName), StringComparison.OrdinalIgnoreCase)
            && Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(path))) is { Length: > 0 } folder)
            name = folder;
        name = new string([.. name.Select(c => IsPlain(c) ? c : '-')]).Trim('.', ' ', '-');
        return name.Length == 0 ? "wall" : name.Length > Longest ? name[..Longest].TrimEnd('.', ' ') : name;
    }

    private static bool IsPlain(char c) => char.IsLetterOrDigit(c) || c is ' ' or '-' or '_' or '.' or '(' or ')' or '#' or '&' or ',' or '\'';
}
