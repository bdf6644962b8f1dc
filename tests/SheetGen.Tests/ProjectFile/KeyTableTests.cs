using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Documents;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>The key table, and the editor's schema that is made from it.</summary>
public sealed class KeyTableTests
{
    private static readonly string[] Cases = ["base-wall.yaml", "bridge-wall.yaml"];

    private static readonly JsonNode Schema = JsonNode.Parse(EditorSchema.Text())!;

    [Fact]
    public void Every_example_is_taken_by_its_key()
    {
        var problems = new ProblemList();
        foreach (Key key in All(KeyTable.Root).Where(k => k.Example.Length > 0))
        {
            if (YamlLoader.Load("x: " + key.Example, key.Name, problems) is not MapNode node)
                continue;
            Node value = node.Entries[0].Value;
            new TreeReader(LengthUnit.Foot, problems).Read(value, key, new SourceSpot(key.Name, 1, 1));
        }

        Assert.Equal([], problems.Sorted().Select(ProblemPrinter.Plain));
        Assert.True(All(KeyTable.Root).Count(k => k.Example.Length > 0) > 100);
    }

    [Fact]
    public void Every_key_says_what_it_means_and_keys_of_a_block_differ()
    {
        Assert.All(All(KeyTable.Root), k => Assert.EndsWith(".", k.Meaning));
        Assert.All(All(KeyTable.Root), k => Assert.Equal(k.Children.Count, k.Children.Select(c => c.Name).Distinct().Count()));
        Assert.Equal([], KeyTable.ProjectFacts.Select(k => k.Name).Intersect(KeyTable.DesignFacts.Select(k => k.Name)));
    }

    [Fact]
    public void Scalars_without_example_or_default_are_none() =>
        Assert.Equal([], All(KeyTable.Root).Where(k => k.Children.Count == 0 && k.Item is null && k.Example.Length == 0).Select(k => k.Name));

    [Fact]
    public void The_schema_takes_good_files()
    {
        foreach (string file in Cases)
            Assert.Equal([], Faults(Json(Repository.Read("tests", "SheetGen.Tests", "Cases", file)), Schema, "").Distinct());
        Assert.Equal([], Faults(Json(StarterProject.Text), Schema, "").Distinct());
    }

    [Theory]
    [InlineData("min_gap: 2", "min_gapp: 2")]
    [InlineData("number: T-1, units: ft", "number: T-1")]
    [InlineData("retained_side: right", "retained_side: up")]
    [InlineData("line: 60", "line: 60 yards")]
    [InlineData("line: 60", "line: -60")]
    [InlineData("diameter: 3, top", "width: 3, top")]
    [InlineData("stations: [10+00, 11+00]", "stations: [10+00]")]
    [InlineData("lengths: [24, 20]", "lengths: long")]
    [InlineData("- line: 60", "- {line: 60, corner: {turn: left, angle: 5}}")]
    public void The_schema_refuses_what_the_reader_refuses(string from, string to)
    {
        string text = BaseWall.With(from, to);

        Assert.NotEmpty(BaseWall.Problems(text));
        Assert.NotEmpty(Faults(Json(text), Schema, ""));
    }

    private static IEnumerable<Key> All(Key key) =>
        [key, .. key.Children.SelectMany(All), .. key.Item is null ? [] : All(key.Item), .. key.Variants.Values.SelectMany(v => v).SelectMany(All)];

    /// <summary>A YAML text as JSON, plain numbers and flags by the JSON rules.</summary>
    private static JsonNode? Json(string text) => Json(YamlLoader.Load(text, "f", new ProblemList())!);

    private static JsonNode? Json(Node node) => node switch
    {
        MapNode map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Text, Json(e.Value)))),
        ListNode list => new JsonArray([.. list.Items.Select(Json)]),
        ScalarNode { Quoted: false } s when Regex.IsMatch(s.Text, "^-?(0|[1-9][0-9]*)(\\.[0-9]+)?$|^(true|false)$") => JsonNode.Parse(s.Text),
        ScalarNode s => JsonValue.Create(s.Text),
        _ => null,
    };

    /// <summary>Checks the keywords of JSON Schema that the schema uses.</summary>
    private static IEnumerable<string> Faults(JsonNode? value, JsonNode schema, string path)
    {
        foreach ((string word, JsonNode? said) in schema.AsObject())
        {
            IEnumerable<string> faults = word switch
            {
                "type" => Says(Types(said!).Contains(TypeOf(value)) || (TypeOf(value) == "integer" && Types(said!).Contains("number")), $"{path}: type"),
                "enum" => Says(said!.AsArray().Any(c => JsonNode.DeepEquals(c, value)), $"{path}: enum"),
                "pattern" => Says(TypeOf(value) != "string" || Regex.IsMatch((string)value!, (string)said!), $"{path}: pattern"),
                "minimum" => Says(!IsNumber(value) || (double)value! >= (double)said!, $"{path}: minimum"),
                "maximum" => Says(!IsNumber(value) || (double)value! <= (double)said!, $"{path}: maximum"),
                "exclusiveMinimum" => Says(!IsNumber(value) || (double)value! > (double)said!, $"{path}: minimum"),
                "exclusiveMaximum" => Says(!IsNumber(value) || (double)value! < (double)said!, $"{path}: maximum"),
                "minItems" => Says(value is not JsonArray a || a.Count >= (int)said!, $"{path}: too few"),
                "maxItems" => Says(value is not JsonArray a || a.Count <= (int)said!, $"{path}: too many"),
                "minProperties" => Says(value is not JsonObject o || o.Count >= (int)said!, $"{path}: too few keys"),
                "maxProperties" => Says(value is not JsonObject o || o.Count <= (int)said!, $"{path}: too many keys"),
                "required" => value is JsonObject o ? said!.AsArray().Where(k => !o.ContainsKey((string)k!)).Select(k => $"{path}: {k} is missing") : [],
                "anyOf" => Says(said!.AsArray().Any(s => !Faults(value, s!, path).Any()), $"{path}: any"),
                "oneOf" => Says(said!.AsArray().Count(s => !Faults(value, s!, path).Any()) == 1, $"{path}: one"),
                "items" => value is not JsonArray list ? [] : said is JsonArray each
                    ? list.Zip(each, (v, s) => Faults(v, s!, path + "[]")).SelectMany(f => f)
                    : list.SelectMany(v => Faults(v, said!, path + "[]")),
                "properties" => value is JsonObject o ? said!.AsObject().Where(p => o.ContainsKey(p.Key)).SelectMany(p => Faults(o[p.Key], p.Value!, $"{path}.{p.Key}")) : [],
                "additionalProperties" => value is not JsonObject o ? [] : said is JsonObject
                    ? o.SelectMany(p => Faults(p.Value, said, $"{path}.{p.Key}"))
                    : o.Where(p => !schema["properties"]!.AsObject().ContainsKey(p.Key)).Select(p => $"{path}: {p.Key} is unknown"),
                "allOf" => said!.AsArray().SelectMany(s => Faults(value, s!, path)),
                "if" => Faults(value, said!, path).Any() ? [] : Faults(value, schema["then"]!, path),
                "const" => Says(JsonNode.DeepEquals(said, value), $"{path}: other value"),
                "then" or "examples" or "default" or "$schema" or "title" or "description" => [],
                _ => [$"unknown word {word}"],
            };
            foreach (string fault in faults)
                yield return fault;
        }
    }

    private static IEnumerable<string> Says(bool good, string fault) => good ? [] : [fault];

    private static string[] Types(JsonNode said) => said is JsonArray list ? [.. list.Select(t => (string)t!)] : [(string)said!];

    private static bool IsNumber(JsonNode? value) => TypeOf(value) is "number" or "integer";

    private static string TypeOf(JsonNode? value) => value switch
    {
        JsonObject => "object",
        JsonArray => "array",
        null => "null",
        _ => value.GetValueKind() switch
        {
            System.Text.Json.JsonValueKind.Number => (double)value == Math.Floor((double)value) ? "integer" : "number",
            System.Text.Json.JsonValueKind.String => "string",
            _ => "boolean",
        },
    };
}
