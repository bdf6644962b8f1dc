using System.Security.Cryptography;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs;

/// <summary>The files of other programs that a project file names: each is opened once, and its bytes count for the input's hash.</summary>
internal sealed class ForeignFiles(string folder, ReadOptions options, ProblemList problems)
{
    private readonly SortedDictionary<string, InputFile> _opened = new(StringComparer.Ordinal);

    public ProblemList Problems => problems;

    /// <summary>The file named under a key; null where it cannot be read, which is reported.</summary>
    /// <param name="most">Most bytes that are read.</param>
    public ForeignFile? Open(MapItem source, string key, long most)
    {
        if (source.Value(key) is not TextItem name)
            return null;
        SourceSpot spot = name.Spot;
        if (!options.AllowOutside && FolderFence.Fault(folder, name.Text) is { } fault)
        {
            problems.Add(ProblemCodes.OutsideFolder, spot, $"\"{Shown.Short(name.Text)}\" is not read: {fault}", "copy it beside the project file, or run with --allow-outside");
            return null;
        }
        string path = Path.Combine(folder, name.Text);
        if (!_opened.TryGetValue(path, out InputFile? file))
            _opened[path] = file = InputFile.Read(path, most);
        if (file.Bytes is { } bytes)
            return new ForeignFile(path, name.Text, bytes, spot);
        problems.Add(file.IsTooLarge ? ProblemCodes.TooLarge : ProblemCodes.CannotRead, spot, $"\"{Shown.Short(name.Text)}\" cannot be read: {file.Why}", "check the path: it is counted from the project file's folder");
        return null;
    }

    /// <summary>The hash of the project file with that of every file opened, in order of their names; the project file's own where there are none.</summary>
    public string Hash(string own)
    {
        if (_opened.Count == 0)
            return own;
        using var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        all.AppendData(Convert.FromHexString(own));
        foreach (InputFile file in _opened.Values)
            all.AppendData(SHA256.HashData(file.Bytes ?? []));
        return Convert.ToHexStringLower(all.GetHashAndReset());
    }
}

/// <summary>A file of another program.</summary>
/// <param name="Path">Its path, for places in it.</param>
/// <param name="Name">Its name as the project file gives it.</param>
/// <param name="Spot">Where the project file names it.</param>
internal sealed record ForeignFile(string Path, string Name, byte[] Bytes, SourceSpot Spot)
{
    public SourceSpot At(int line, int column = 1) => new(Path, Math.Max(1, line), Math.Max(1, column));
}
