using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>Pay item sets: the program's own by name, or the user's own JSON text.</summary>
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
        using Stream? stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + name + ".json");
        if (stream is null)
            return null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Reads a set for a length unit. All faults are reported; the set is null where there is any.</summary>
    /// <param name="file">Name of the file, for the problems.</param>
    public static PayItemSet? Read(string json, string file, LengthUnit unit, ICollection<Problem> problems)
    {
        SetText? text;
        try
        {
            text = JsonSerializer.Deserialize<SetText>(json, Options);
        }
        catch (JsonException fault)
        {
            problems.Add(Fault(file, (int)(fault.LineNumber ?? 0) + 1, (int)(fault.BytePositionInLine ?? 0) + 1,
                "not a pay item set: " + fault.Message.Split(" Path:")[0]));
            return null;
        }
        if (text is null || text.Format != 1)
        {
            problems.Add(Fault(file, 1, 1, "a pay item set needs \"format\": 1"));
            return null;
        }
        HashSet<string> known = [.. QuantityCatalog.For(unit).Select(d => d.Name)];
        var numbers = new HashSet<string>();
        var items = new List<PayItem>();
        int before = problems.Count;
        foreach (ItemText item in text.Items)
        {
            void Wrong(string what) => problems.Add(Fault(file, LineOf(json, item.Number), 1, $"pay item {item.Number}: {what}"));
            if (!numbers.Add(item.Number))
                Wrong("the number is used twice");
            string? measure = Pick(item.Unit, unit), formula = Pick(item.Quantity, unit);
            if (measure is null || formula is null)
            {
                Wrong("\"unit\" and \"quantity\" are a text, or an object with \"ft\" and \"m\"");
                continue;
            }
            PayExpression? expression = PayExpression.Parse(formula, out string error);
            if (expression is null)
            {
                Wrong($"quantity \"{formula}\": {error}");
                continue;
            }
            foreach (string name in expression.Names.Where(n => !known.Contains(n)))
                Wrong($"no quantity is named \"{name}\"");
            if (item.Rounding.Direction is not ("up" or "nearest"))
                Wrong("\"direction\" of the rounding is \"up\" or \"nearest\"");
            if (item.Rounding.Decimals is < -3 or > 6)
                Wrong("\"decimals\" of the rounding are between -3 and 6");
            items.Add(new PayItem(
                item.Number, item.Description, measure, expression, new PayRounding(item.Rounding.Direction == "up", item.Rounding.Decimals),
                item.Measured, item.Subsidiary));
        }
        return problems.Count > before ? null : new PayItemSet(text.Name, text.Notice, items);
    }

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
        ReadCommentHandling = JsonCommentHandling.Skip,
    };

    private static Problem Fault(string file, int line, int column, string message) =>
        new(Severity.Error, "Q01", message, new SourceSpot(file, line, column), "see templates/pay-items for complete sets");

    private static string? Pick(JsonElement value, LengthUnit unit)
    {
        if (value.ValueKind == JsonValueKind.String)
            return value.GetString();
        bool has = value.ValueKind == JsonValueKind.Object;
        return has && value.TryGetProperty(Lengths.IsFoot(unit) ? "ft" : "m", out JsonElement chosen) && chosen.ValueKind == JsonValueKind.String
            ? chosen.GetString() : null;
    }

    private static int LineOf(string json, string number)
    {
        int at = json.IndexOf(JsonSerializer.Serialize(number), StringComparison.Ordinal);
        return at < 0 ? 1 : json.AsSpan(0, at).Count('\n') + 1;
    }

    private sealed record SetText(int Format, string Name, string Notice, IReadOnlyList<ItemText> Items);

    private sealed record ItemText(
        string Number, string Description, JsonElement Unit, JsonElement Quantity, RoundingText Rounding, string Measured,
        IReadOnlyList<string> Subsidiary);

    private sealed record RoundingText(string Direction, int Decimals);
}
