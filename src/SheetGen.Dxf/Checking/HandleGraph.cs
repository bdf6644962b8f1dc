using System.Globalization;

namespace SheetGen.Dxf;

/// <summary>Checks what programs with a strict reader check in a finished file: handles, owners, pointers and names.</summary>
/// <remarks>For files of release 2000 or later. It reads the file as any stranger would, not the document it was made of.</remarks>
public static class HandleGraph
{
    /// <summary>All faults found, by line; none means that every handle is unique and every reference leads to the right kind of thing.</summary>
    /// <param name="bytes">All of the file.</param>
    public static IReadOnlyList<DxfProblem> Problems(byte[] bytes)
    {
        var log = new ReadLog();
        var file = RawFile.Read(bytes, log);
        if (log.Error is not null)
            return [log.Error];
        var problems = new List<DxfProblem>();
        var nodes = GraphNodes.Of(file, (line, message) => problems.Add(new(line, message)));
        new OwnerCheck(nodes, (line, message) => problems.Add(new(line, message))).Run();
        new NameCheck(file, nodes, (line, message) => problems.Add(new(line, message))).Run();
        Seed(file, nodes, problems);
        if (log.Error is not null)
            problems.Add(log.Error);
        return [.. problems.OrderBy(p => p.Line)];
    }

    private static void Seed(RawFile file, GraphNodes nodes, List<DxfProblem> problems)
    {
        var seed = file.Header.TryGetValue("$HANDSEED", out var record) ? ToNumber(record.Raw(5) ?? "") : null;
        var greatest = nodes.All.Select(n => ToNumber(n.Handle)).Max() ?? 0;
        if (seed is null || seed <= greatest)
            problems.Add(new(record?.Line ?? 0, $"$HANDSEED is not above the greatest handle {greatest:X}"));
    }

    private static long? ToNumber(string handle) =>
        long.TryParse(handle, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value) ? value : null;
}
