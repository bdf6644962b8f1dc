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
        Dictionary<string, QuantityDefinition> known = QuantityCatalog.For(unit).ToDictionary(d => d.Name);
        var numbers = new HashSet<string>();
        var items = new List<PayItem>();
        foreach (MapItem map in root.Maps("items"))
        {
            string number = map.Text("number") ?? "";
            if (number.Length > 0 && !numbers.Add(number))
                problems.Add(ProblemCodes.PayItem, map.SpotOf("number"), $"the pay item number {number} is used twice", "change one of the two");
            PayRounding? rounding = Rounding(map.Map("rounding"), problems);
            string? expression = Pick(map, "quantity", unit, out string key), measure = Pick(map, "unit", unit, out string unitKey);
            if (expression is null)
                continue;
            PayExpression? quantity = PayExpression.Parse(expression, out PayExpressionFault? fault);
            if (quantity is null)
                problems.Add(ProblemCodes.PayItem, map.SpotOf(key), $"quantity \"{expression}\": {fault!.Message}", fault.Hint);
            if (quantity is { References.Count: > 0 } && rounding is { Scope: not RoundingScope.Total } each && quantity.Evaluate(_ => 0, out _) is { } constant and not 0)
            {
                problems.Add(
                    ProblemCodes.PayItem, map.SpotOf(key),
                    FormattableString.Invariant($"quantity \"{expression}\" is {constant} where nothing is counted, so that it would count that for every {(each.Scope == RoundingScope.Nail ? "nail" : "wall")} of the project"),
                    "leave out each, or make the number an item of its own");
                quantity = null;
            }
            if (quantity is null || !Known(quantity, map.SpotOf(key), known, rounding?.Scope, problems) || measure is null)
                continue;
            var item = new PayItem(
                number, map.Text("description") ?? "", measure, quantity, rounding ?? default, map.Text("measured") ?? "",
                [.. map.List("subsidiary")?.Items.OfType<TextItem>().Select(t => t.Text) ?? []])
            {
                Spot = map.SpotOf(key),
            };
            item = PayItemUnits.Checked(item, map.Flag("convert") ?? false, map.SpotOf(unitKey), known, unit, problems);
            if (rounding is not null)
                items.Add(item);
        }
        return items;
    }

    /// <summary>True where all names of an expression are known, and are a nail's own where each nail is rounded.</summary>
    private static bool Known(
        PayExpression quantity, SourceSpot spot, Dictionary<string, QuantityDefinition> known, RoundingScope? scope, ProblemList problems)
    {
        bool all = true;
        foreach (string name in quantity.References.Select(r => r.Name).Distinct())
        {
            if (!known.ContainsKey(name))
            {
                string near = Suggestion.Nearest(name, [.. known.Keys]) is { } meant ? $"did you mean \"{meant}\"?" : "the workbook's sheet \"Quantities\" lists the names";
                problems.Add(ProblemCodes.PayItem, spot, $"no quantity is named \"{name}\"", near);
                all = false;
            }
            else if (scope == RoundingScope.Nail && !NailAmounts.Names.Contains(name))
            {
                problems.Add(ProblemCodes.PayItem, spot, $"\"{name}\" is no quantity of a single nail, so that it cannot be rounded nail by nail", "a nail has " + string.Join(", ", NailAmounts.Names));
                all = false;
            }
        }
        return all;
    }

    private static PayRounding? Rounding(MapItem? map, ProblemList problems)
    {
        if (map is null)
            return null;
        if (!map.Gives("decimals") && !map.Gives("step"))
            problems.Add(ProblemCodes.PayItem, map.Spot, "rounding gives neither decimals nor a step", "write decimals: 0, or step: 0.25");
        if (map.Gives("decimals") && map.Gives("step"))
            problems.Add(ProblemCodes.PayItem, map.SpotOf("step"), "rounding gives decimals and a step", "keep one of the two");
        double? step = map.Number("step") ?? (map.Number("decimals") is { } decimals ? Math.Round(Math.Pow(10, -decimals), 6) : null);
        if (step is null)
            return null;
        RoundingDirection direction = map.Text("direction") switch { "up" => RoundingDirection.Up, "down" => RoundingDirection.Down, _ => RoundingDirection.Nearest };
        RoundingScope scope = map.Text("each") switch { "nail" => RoundingScope.Nail, "wall" => RoundingScope.Wall, _ => RoundingScope.Total };
        return new PayRounding(direction, step.Value, scope);
    }

    private static string? Pick(MapItem map, string key, LengthUnit unit, out string chosen)
    {
        chosen = unit == LengthUnit.Metre && map.Gives(key + "_metric") ? key + "_metric" : key;
        return map.Text(chosen);
    }
}
