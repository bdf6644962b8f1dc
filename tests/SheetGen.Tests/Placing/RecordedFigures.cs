using System.Globalization;
using SheetGen.Layout.Placing;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Figures of named things as they were recorded, a line each so that versions of the file merge line by line; written anew where the environment asks for it.</summary>
internal sealed class RecordedFigures
{
    private readonly IReadOnlyList<string> _names;
    private readonly Func<string, string> _figures;
    private readonly Lazy<Dictionary<string, string>> _recorded;

    /// <param name="file">Name of the file in Cases.</param>
    /// <param name="names">Without a colon.</param>
    /// <param name="figures">The figures of one of them, on one line.</param>
    public RecordedFigures(string file, IReadOnlyList<string> names, Func<string, string> figures)
    {
        _names = names;
        _figures = figures;
        _recorded = new(() => ReadOrWrite(Repository.PathOf("tests", "SheetGen.Tests", "Cases", file)));
    }

    public void AssertAsRecorded(string name)
    {
        string recorded = _recorded.Value.GetValueOrDefault(name) ?? "not recorded", now = _figures(name);
        Assert.True(recorded == now, $"{name}: recorded\n{recorded}\nnow\n{now}\nwhere it is meant, record it anew (DEVELOPERS.md)");
    }

    public void AssertNoOthers() => Assert.Equal(_names.Order(StringComparer.Ordinal), _recorded.Value.Keys.Order(StringComparer.Ordinal));

    /// <summary>What a layout is judged by; what comes after the effort says nothing in a limit.</summary>
    public static string Of(Cost cost) => string.Create(CultureInfo.InvariantCulture, $"{cost.Unresolved} unresolved {cost.Noted} noted {cost.Effort / (double)Cost.Point:0.###} effort");

    private Dictionary<string, string> ReadOrWrite(string file)
    {
        if (Environment.GetEnvironmentVariable("SHEETGEN_UPDATE_EXPECTED") == "1")
        {
            string[] lines = [.. _names.Select(n => $"{n}: {_figures(n)}")];
            File.WriteAllText(file, string.Concat(lines.Select(l => l + "\n")));
        }
        return File.ReadLines(file).Select(l => l.Split(": ", 2)).ToDictionary(l => l[0], l => l[1], StringComparer.Ordinal);
    }
}
