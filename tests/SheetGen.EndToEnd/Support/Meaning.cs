using System.Globalization;
using System.Text.Json;
using Xunit;

namespace SheetGen.EndToEnd.Support;

/// <summary>Compares results by what they say: numbers as numbers, everything else letter by letter.</summary>
internal static class Meaning
{
    /// <summary>Slack for the last printed digits, which may differ between processors.</summary>
    private const double Slack = 1e-4;

    public static void Equal(string expectedPath, string actualPath)
    {
        List<string> differences = Path.GetExtension(expectedPath) switch
        {
            ".csv" => Differences(CsvTable.Read(expectedPath), CsvTable.Read(actualPath)),
            ".json" => Differences(expectedPath, actualPath),
            _ => LineDifferences(File.ReadAllLines(expectedPath), File.ReadAllLines(actualPath)),
        };
        Assert.True(differences.Count == 0, $"{actualPath} differs from {expectedPath}:\n" + string.Join("\n", differences.Take(20)));
    }

    private static List<string> Differences(CsvTable expected, CsvTable actual)
    {
        var found = new List<string>();
        if (!expected.Columns.SequenceEqual(actual.Columns))
            found.Add("columns: " + string.Join(",", actual.Columns));
        if (expected.Rows.Count != actual.Rows.Count)
            found.Add($"rows: {expected.Rows.Count} expected, {actual.Rows.Count} found");
        foreach ((IReadOnlyList<string> e, IReadOnlyList<string> a) in expected.Rows.Zip(actual.Rows))
        {
            if (e.Count != a.Count || !e.Zip(a).All(p => SameText(p.First, p.Second)))
                found.Add($"- {string.Join(",", e)}\n+ {string.Join(",", a)}");
        }
        return found;
    }

    private static List<string> Differences(string expectedPath, string actualPath)
    {
        using JsonDocument expected = JsonDocument.Parse(File.ReadAllText(expectedPath));
        using JsonDocument actual = JsonDocument.Parse(File.ReadAllText(actualPath));
        var found = new List<string>();
        Compare("$", expected.RootElement, actual.RootElement, found);
        return found;
    }

    private static void Compare(string path, JsonElement expected, JsonElement actual, List<string> found)
    {
        if (expected.ValueKind != actual.ValueKind)
        {
            found.Add($"{path}: {expected} expected, {actual} found");
        }
        else if (expected.ValueKind == JsonValueKind.Object)
        {
            foreach (string name in expected.EnumerateObject().Select(p => p.Name).Union(actual.EnumerateObject().Select(p => p.Name)))
            {
                if (!expected.TryGetProperty(name, out JsonElement e))
                    found.Add($"{path}.{name}: not expected");
                else if (!actual.TryGetProperty(name, out JsonElement a))
                    found.Add($"{path}.{name}: missing");
                else
                    Compare($"{path}.{name}", e, a, found);
            }
        }
        else if (expected.ValueKind == JsonValueKind.Array)
        {
            if (expected.GetArrayLength() != actual.GetArrayLength())
                found.Add($"{path}: {expected.GetArrayLength()} entries expected, {actual.GetArrayLength()} found");
            for (int i = 0; i < Math.Min(expected.GetArrayLength(), actual.GetArrayLength()); i++)
                Compare($"{path}[{i}]", expected[i], actual[i], found);
        }
        else if (!SameText(expected.ToString(), actual.ToString()))
        {
            found.Add($"{path}: {expected} expected, {actual} found");
        }
    }

    private static List<string> LineDifferences(string[] expected, string[] actual)
    {
        if (expected.Length != actual.Length)
            return [.. expected.Except(actual).Select(l => "- " + l), .. actual.Except(expected).Select(l => "+ " + l), "number of lines"];
        return [.. expected.Zip(actual).Where(p => !SameWords(p.First, p.Second)).Select(p => $"- {p.First}\n+ {p.Second}")];
    }

    private static bool SameWords(string expected, string actual)
    {
        string[] e = expected.Split(' ', ',', '='), a = actual.Split(' ', ',', '=');
        return e.Length == a.Length && e.Zip(a).All(p => SameText(p.First, p.Second));
    }

    private static bool SameText(string expected, string actual) =>
        expected == actual || (Number(expected) is { } e && Number(actual) is { } a && Math.Abs(e - a) <= Slack);

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : null;
}
