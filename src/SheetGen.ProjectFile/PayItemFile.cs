using System.Reflection;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile;

/// <summary>Pay item sets: the program's own by name, or the user's own YAML text.</summary>
public static class PayItemFile
{
    private const string Prefix = "pay-items/";

    /// <summary>Names of the sets that come with the program, in order.</summary>
    public static IReadOnlyList<string> BuiltInNames { get; } =
    [
        .. typeof(PayItemFile).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .Select(n => Path.GetFileNameWithoutExtension(n[Prefix.Length..])).Order(StringComparer.Ordinal),
    ];

    /// <summary>The text of a set that comes with the program; null where there is none of that name.</summary>
    public static string? BuiltIn(string name)
    {
        using Stream? stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + name + ".yaml");
        if (stream is null)
            return null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Reads a set for a length unit. All faults are reported; the set is null where there is any.</summary>
    /// <param name="file">Name of the file, for the problems.</param>
    public static PayItemSet? Read(string text, string file, LengthUnit unit, ICollection<Problem> problems)
    {
        var found = new ProblemList();
        PayItemSet? set = null;
        if (YamlLoader.Load(text.TrimStart('\uFEFF'), file, found) is { } node
            && new TreeReader(unit, found).Read(node, PayItemKeys.Root, new SourceSpot(file, 1, 1)) is MapItem root)
        {
            List<PayItem> items = Items(root, unit, found);
            set = new PayItemSet(root.Text("name") ?? "", root.Text("notice") ?? "", items);
        }
        foreach (Problem problem in found.Sorted())
            problems.Add(problem);
        return found.HasErrors ? null : set;
    }

    private static List<PayItem> Items(MapItem root, LengthUnit unit, ProblemList problems)
    {
        HashSet<string> known = [.. QuantityCatalog.For(unit).Select(d => d.Name)];
        var numbers = new HashSet<string>();
        var items = new List<PayItem>();
        foreach (MapItem map in root.Maps("items"))
        {
            string number = map.Text("number") ?? "";
            if (number.Length > 0 && !numbers.Add(number))
                problems.Add(ProblemCodes.PayItem, map.SpotOf("number"), $"the pay item number {number} is used twice", "change one of the two");
            string? expression = Pick(map, "quantity", unit, out string key);
            PayExpression? quantity = null;
            if (expression is not null)
            {
                quantity = PayExpression.Parse(expression, out string error);
                if (quantity is null)
                    problems.Add(ProblemCodes.PayItem, map.SpotOf(key), $"quantity \"{expression}\": {error}");
                foreach (string name in (quantity?.Names ?? []).Where(n => !known.Contains(n)))
                {
                    string near = Suggestion.Nearest(name, [.. known]) is { } meant ? $"did you mean \"{meant}\"?" : "the workbook's sheet \"Quantities\" lists the names";
                    problems.Add(ProblemCodes.PayItem, map.SpotOf(key), $"no quantity is named \"{name}\"", near);
                }
            }
            MapItem? rounding = map.Map("rounding");
            if (quantity is null || rounding?.Number("decimals") is not { } decimals)
                continue;
            items.Add(new PayItem(
                number, map.Text("description") ?? "", Pick(map, "unit", unit, out _) ?? "", quantity,
                new PayRounding(rounding.Text("direction") == "up", (int)decimals), map.Text("measured") ?? "",
                [.. map.List("subsidiary")?.Items.OfType<TextItem>().Select(t => t.Text) ?? []]));
        }
        return items;
    }

    private static string? Pick(MapItem map, string key, LengthUnit unit, out string chosen)
    {
        chosen = unit == LengthUnit.Metre && map.Gives(key + "_metric") ? key + "_metric" : key;
        return map.Text(chosen);
    }
}
