using System.Globalization;
using System.IO.Compression;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Quantities;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Keys;
using SheetGen.Tests.ProjectFile;
using SheetGen.Writers.Workbook;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>The table of docs/on-the-sheets.md has every key of the project file, and what it says stands on the sheets stands there.</summary>
public class OnTheSheetsTests
{
    private const string NotPrinted = "not printed";

    private static readonly Dictionary<string, string> Titles = new()
    {
        ["any"] = "",
        ["notes"] = "NOTES, LEGEND",
        ["views"] = "PLAN AND ELEVATION",
        ["sections"] = "SECTION|NOTES, LEGEND",
        ["details"] = "DETAIL",
        ["tables"] = "TABLES",
    };

    private static readonly Lazy<SheetSet> Set = new(() =>
    {
        DrawingContext context = PlacedWall.Context(GivenProject.Yaml);
        PayItemSet items = PayItemFile.Read(PayItemFile.BuiltIn(context.Project.PayItems)!, "pay", context.Project.Unit, [])!;
        return PlacedWall.Sheets(context with { Tables = [SummaryTables.Bid(BidQuantities.Make(context.Quantities, items, context.Project.Rates))] });
    });

    private sealed record Row(string Key, string Sheets, string Shown)
    {
        public bool Covers(string key) => Key == key || (Key.EndsWith(": *", StringComparison.Ordinal) && key.StartsWith(Key[..^1], StringComparison.Ordinal));
    }

    private static Row[] Rows { get; } = [.. Repository.Read("docs", "on-the-sheets.md").Split('\n')
        .Where(l => l.StartsWith("| ", StringComparison.Ordinal) && !l.StartsWith("| key |", StringComparison.Ordinal) && !l.StartsWith("| ---", StringComparison.Ordinal))
        .Select(l => l.Split('|').Select(c => c.Trim(' ')).ToArray()).Select(c => new Row(c[1], c[2], c[3]))];

    /// <summary>Every key that takes a value, with those of the blocks that it stands in: walls: openings: name.</summary>
    private static IEnumerable<string> Leaves(Key key, string path)
    {
        Key block = key.Kind == ValueKind.List ? key.Item! : key;
        Key[] children = [.. block.Children, .. block.Variants.Values.SelectMany(v => v).DistinctBy(c => c.Name)];
        // A block that many keys share is a point or a step: its values stand where its key does.
        bool isPlace = block.Shared is not null && block.Shared != "section defaults";
        return children.Length == 0 || isPlace ? [path] : children.SelectMany(c => Leaves(c, path.Length == 0 ? c.Name : $"{path}: {c.Name}"));
    }

    private static string[] Keys { get; } = [.. Leaves(KeyTable.Root, "").Distinct()];

    [Fact]
    public void Every_key_has_a_row_and_every_row_a_key()
    {
        Assert.True(Keys.Length > 250, $"{Keys.Length} keys");
        string[] missing = [.. Keys.Where(k => !Rows.Any(r => r.Covers(k)))], idle = [.. Rows.Where(r => !Keys.Any(r.Covers)).Select(r => r.Key)];
        Assert.True(missing.Length == 0, string.Join("\n", missing));
        Assert.True(idle.Length == 0, string.Join("\n", idle));
    }

    [Fact]
    public void What_is_not_printed_has_its_reason_and_all_else_something_to_look_for() => Assert.All(Rows, r =>
    {
        bool says = Regex.IsMatch(r.Shown, "`[^`]+`|layer [A-Z]");
        Assert.True(r.Sheets == NotPrinted ? r.Shown.Length > 10 && !says : says && Titles.ContainsKey(r.Sheets), r.Key);
    });

    /// <summary>The values of a project that has most keys, each unlike any other.</summary>
    [Fact]
    public void What_the_project_gives_stands_on_its_sheets()
    {
        var seen = Titles.ToDictionary(t => t.Key, t => Set.Value.Sheets.Where(s => t.Value.Split('|').Any(w => s.Title.Contains(w, StringComparison.Ordinal)))
            .SelectMany(s => SheetPicture.Of(Set.Value, s)).Select(p => p.Primitive).ToArray());
        var written = seen.ToDictionary(s => s.Key, s => string.Join(" ", s.Value.OfType<Text>().Select(t => t.Value)));
        var wrong = new List<string>();
        foreach (Row row in Rows.Where(r => r.Sheets != NotPrinted))
        {
            string[] words = [.. Regex.Matches(row.Shown, "`([^`]+)`").Select(m => m.Groups[1].Value)
                .SelectMany(w => w.Contains("<key>", StringComparison.Ordinal) ? Keys.Where(row.Covers).Select(k => w.Replace("<key>", k[(k.LastIndexOf(' ') + 1)..].Replace('_', ' ').ToUpperInvariant(), StringComparison.Ordinal)) : [w])];
            wrong.AddRange(words.Where(w => !written[row.Sheets].Contains(w, StringComparison.Ordinal)).Select(w => $"{row.Key}: \"{w}\" is not on the sheets of {row.Sheets}"));
            wrong.AddRange(Regex.Matches(row.Shown, "layer ([A-Za-z]+)").Select(m => Enum.Parse<LayerRole>(m.Groups[1].Value))
                .Where(l => !seen[row.Sheets].Any(p => p.Layer == l)).Select(l => $"{row.Key}: nothing on {l}"));
        }
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    /// <summary>Values of the engineer that stand in the workbook, as they do there: feet, square inches.</summary>
    private static readonly Dictionary<string, double> InWorkbook = new()
    {
        ["t_max"] = 17.3,
        ["head_load"] = 11.9,
        ["load_factor"] = 1.37,
        ["factors: pullout"] = 0.63,
        ["factors: bar"] = 0.77,
        ["factors: flexure"] = 0.91,
        ["factors: punching"] = 0.89,
        ["factors: studs"] = 0.71,
        ["bond"] = 13.7,
        ["bond_by_layer"] = 8.3,
        ["slip_surface: angle"] = 53,
        ["bar_yield"] = 79,
        ["facing: thickness"] = 4.3 / 12,
        ["facing: concrete_strength"] = 4100,
        ["facing: steel_depth"] = 2.2 / 12,
        ["facing: mesh"] = 0.089,
        ["facing: mesh_yield"] = 61,
        ["facing: waler_bars: size"] = 2 * 0.20,
        ["facing: waler_bars: count"] = 2 * 0.20,
        ["facing: bearing_bars: size"] = 2 * 0.31,
        ["facing: bearing_bars: count"] = 2 * 0.31,
        ["facing: bar_yield"] = 62,
        ["facing: pressure_factor"] = 1.9,
        ["facing: soil_reaction"] = 1.1,
        ["permanent_facing: concrete_strength"] = 4200,
        ["permanent_facing: steel_depth"] = 2.9 / 12,
        ["permanent_facing: mesh"] = 0.31,
        ["permanent_facing: mesh_yield"] = 63,
        ["permanent_facing: pressure_factor"] = 1.05,
        ["plate: width"] = 8.5 / 12,
        ["plate: thickness"] = 0.77 / 12,
        ["studs: count"] = 4,
        ["studs: diameter"] = Math.PI / 4 * 0.51 * 0.51,
        ["studs: area"] = Math.PI / 4 * 0.51 * 0.51,
        ["studs: length"] = 4.13 / 12,
        ["studs: head_thickness"] = 0.33 / 12,
        ["studs: spacing"] = 6.2 / 12,
        ["studs: yield"] = 59,
        ["least_ratio"] = 1.03,
        ["area_share"] = 0.17,
    };

    /// <summary>Keys of the engineer's values that enter no figure of the workbook by themselves, or that the project leaves out, with why.</summary>
    private static readonly Dictionary<string, string> NotInWorkbook = new()
    {
        ["service_load: factor"] = "head_load goes before it",
        ["service_load: active_pressure"] = "head_load goes before it",
        ["service_load: unit_weight"] = "head_load goes before it",
        ["service_load: height"] = "head_load goes before it",
        ["method"] = "a word",
        ["slip_surface: name"] = "a word",
        ["slip_surface: points: behind"] = "the lengths that it leaves of each hole stand there instead",
        ["slip_surface: points: elevation"] = "the lengths that it leaves of each hole stand there instead",
        ["permanent_facing: thickness"] = "punching of the permanent facing is reckoned from the studs",
        ["permanent_facing: waler_bars: size"] = "left out",
        ["permanent_facing: waler_bars: count"] = "left out",
        ["permanent_facing: bearing_bars: size"] = "left out",
        ["permanent_facing: bearing_bars: count"] = "left out",
        ["permanent_facing: bar_yield"] = "left out",
        ["permanent_facing: soil_reaction"] = "left out",
        ["studs: head_diameter"] = "drawn, not reckoned with",
    };

    /// <summary>What the row of the engineer's values says of the workbook holds for every one of them.</summary>
    [Fact]
    public void The_engineers_values_stand_in_the_workbook()
    {
        const string Design = "walls: sections: design: ";
        string[] keys = [.. Keys.Where(k => k.StartsWith(Design, StringComparison.Ordinal)).Select(k => k[Design.Length..])];
        Assert.Equal([], keys.Except(InWorkbook.Keys).Except(NotInWorkbook.Keys));
        Assert.Equal([], InWorkbook.Keys.Concat(NotInWorkbook.Keys).Except(keys));
        DrawingContext context = PlacedWall.Context(GivenProject.Yaml);
        PayItemSet items = PayItemFile.Read(PayItemFile.BuiltIn(context.Project.PayItems)!, "pay", context.Project.Unit, [])!;
        using var stream = new MemoryStream();
        WorkbookWriter.Write(context.Project, context.Layout, context.Report, context.Quantities, BidQuantities.Make(context.Quantities, items, context.Project.Rates), context.Run, stream);
        using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
        var parts = zip.Entries.Where(e => e.FullName.EndsWith(".xml", StringComparison.Ordinal)).Select(e =>
        {
            using var reader = new StreamReader(e.Open());
            return reader.ReadToEnd();
        }).ToList();
        double[] figures = [.. parts.SelectMany(x => Regex.Matches(x, @"<(?:x:)?v>(-?[\d.E+-]+)</").Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)))];
        string words = string.Concat(parts);

        string[] missing = [.. InWorkbook.Where(k => !figures.Any(f => Math.Abs(f - k.Value) < 1e-6)).Select(k => k.Key)];
        Assert.True(missing.Length == 0, string.Join("\n", missing));
        Assert.Contains("LRFD", words, StringComparison.Ordinal);
        Assert.Contains("Zcircle", words, StringComparison.Ordinal);
        Assert.Contains("Zplane", words, StringComparison.Ordinal);
    }
}
