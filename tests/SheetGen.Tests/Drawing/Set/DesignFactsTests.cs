using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>What one sheet prints of the design no other sheet of the set leaves as a blank.</summary>
public class DesignFactsTests
{
    /// <summary>The facts of the design in the project's own words.</summary>
    private static readonly Regex Facts = new(@"^design:\n(  .*\n)+", RegexOptions.Multiline);

    /// <summary>The engineer's values of a design section.</summary>
    private static readonly Regex Values = new(@"^        design:\n(          .*\n)+", RegexOptions.Multiline);

    private static string Given { get; } = GivenProject.Yaml.ReplaceLineEndings("\n");

    /// <summary>The given project without words for the design: all that its sheets print of it comes from the values of its design sections, alike in both, and from the rates.</summary>
    private static string Valued { get; } = Facts.Replace(Given, "").Replace("        corner_rows: shifted\n", "        corner_rows: shifted\n" + Values.Match(Given).Value, StringComparison.Ordinal);

    /// <summary>Labels in front of the words of a fact in the details, by its key; learnt where every fact has words of its own.</summary>
    private static readonly Lazy<ILookup<string, string>> Labels = new(() =>
    {
        var found = Regex.Matches(new Printed(Given).Details, @"^(?:\(\d+\) )?([A-Z][A-Z ]*[A-Z]):\s+ZZ\s+([A-Z\s]+?)\s+WORD\b", RegexOptions.Multiline)
            .Select(m => (Label: m.Groups[1].Value, Key: m.Groups[2].Value.ToLowerInvariant().Replace(' ', '_').Replace('\n', '_'))).Distinct().ToArray();
        // A label of two facts, such as COVER, tells nothing.
        return found.GroupBy(f => f.Label).Where(g => g.Count() == 1).SelectMany(g => g).ToLookup(f => f.Key, f => f.Label);
    });

    /// <summary>Facts that the notes print.</summary>
    private static string[] Noted { get; } = [.. TemplateReader.Default().Notes.SelectMany(b => b.Notes).SelectMany(n => Regex.Matches(n, "{([a-z_]+)}")).Select(m => m.Groups[1].Value).Distinct()];

    /// <summary>What a set says.</summary>
    private sealed class Printed
    {
        private readonly DrawingContext _context;

        public Printed(string yaml)
        {
            _context = PlacedWall.Context(yaml);
            SheetSet set = PlacedWall.Sheets(_context);
            Details = string.Join("\n", set.Sheets.Where(s => s.Title.Contains("DETAIL", StringComparison.Ordinal)).SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<Text>().Select(t => t.Value));
            Notes = string.Join("\n", _context.Templates.Notes.SelectMany(b => b.Notes).Select(n => NoteFields.Fill(n, _context)));
        }

        /// <summary>Texts of the sheets of details, each in lines of its own.</summary>
        public string Details { get; }

        public string Notes { get; }

        /// <summary>What the sheets have for a fact, in the notes and behind its labels in the details: true for words, false for a blank.</summary>
        public bool[] Filled(string key) =>
        [
            .. Noted.Contains(key) ? [!NoteFields.Fill("{" + key + "}", _context).StartsWith("__", StringComparison.Ordinal)] : Array.Empty<bool>(),
            .. Labels.Value[key].SelectMany(l => Regex.Matches(Details, $@"^(?:\(\d+\) )?{Regex.Escape(l)}:\s+(\S+)", RegexOptions.Multiline).Select(m => !m.Groups[1].Value.StartsWith("__", StringComparison.Ordinal))),
        ];
    }

    [Fact]
    public void Facts_of_the_notes_are_known_again_in_the_details()
    {
        string[] both = [.. Noted.Where(Labels.Value.Contains)];

        Assert.All(new[] { "mesh", "waler_bars", "bearing_bars", "plate", "studs", "nut_and_washer", "grout_strength", "verification_load", "concrete_strength" }, k => Assert.Contains(k, both));
    }

    [Fact]
    public void Values_of_the_design_sections_stand_where_the_project_has_no_words()
    {
        var printed = new Printed(Valued);
        string written = printed.Notes;

        Assert.All(
            new[] { "mesh", "waler_bars", "bearing_bars", "plate", "studs", "shotcrete_strength", "bond", "nail_load", "centralizers", "leveling_pad" },
            k => Assert.True(printed.Filled(k) is { Length: > 0 } f && f.All(x => x), $"{k} is a blank"));
        Assert.Matches(@"WIRE MESH: 0\.089 IN2/FT EACH WAY", written);
        Assert.Matches(@"WALER BARS: 2 #4\b", written);
        Assert.Matches("BEARING BARS: 2 #5, 2\\.9' LONG", written);
        Assert.Matches("BEARING PLATE: 8\\.5\" x 8\\.5\" x 0\\.77\"", written);
        Assert.Matches("SHOTCRETE STRENGTH: 4100 PSI", written);
        Assert.Matches("STRENGTH OF THE PERMANENT FACING: 4200 PSI", written);
        Assert.Matches("DESIGN LOAD OF A NAIL: 17\\.3, 19\\.1 KIP BY ROW FROM THE TOP", written);
        Assert.Matches("BOND: ZZ CLAY WORD 8\\.3 PSI, ELSEWHERE 13\\.7 PSI", written);
    }

    [Fact]
    public void Design_sections_that_differ_are_told_apart()
    {
        string written = new Printed(Facts.Replace(Given, "")).Notes;

        Assert.Matches(@"WIRE MESH: ZREACH ZA: 0\.089 IN2/FT EACH WAY; ZREACH ZB: ____", written);
    }

    /// <summary>Values taken away here and there: what is left stands everywhere, what is gone nowhere.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void No_sheet_has_a_blank_for_what_another_prints(int seed)
    {
        // The same in both design sections, whose lines are alike.
        bool IsTaken(string text) => new Random(seed * 31 + text.Length).Next(2) == 0;
        string yaml = Regex.Replace(Valued, @"(?<=[{,] ?)(mesh|waler_bars|bearing_bars|concrete_strength|bar_yield|design_bond|centralizer_end|bearing_bar_length|test_bonded_length|test_free_length): (\{[^}]*\}|[^,{}]+)(, |(?=\}))",
            m => IsTaken(m.Value) ? "" : m.Value);
        yaml = Regex.Replace(yaml, "^          (plate|studs|bond|bond_by_layer|t_max): .*\n", m => IsTaken(m.Value) ? "" : m.Value, RegexOptions.Multiline).Replace(", }", "}", StringComparison.Ordinal);
        var printed = new Printed(yaml);

        Assert.All(Labels.Value.Select(l => l.Key), k =>
        {
            bool[] filled = printed.Filled(k);
            Assert.True(filled.Distinct().Count() <= 1, $"{k} is a blank on one sheet and printed on another: {string.Join(", ", Labels.Value[k])}");
        });
    }

    [Theory]
    [InlineData("quarry-lane")]
    [InlineData("heron-street-bridge")]
    public void No_sheet_of_a_demo_has_a_blank_for_what_another_prints(string demo)
    {
        var printed = new Printed(Repository.Read("demo", demo, "wall.yaml"));

        Assert.All(Labels.Value.Select(l => l.Key), k => Assert.True(printed.Filled(k).Distinct().Count() <= 1, k));
    }

    /// <summary>The lengths and the load of a test nail are in its detail what they are in the table.</summary>
    [Fact]
    public void The_detail_of_a_test_nail_has_the_tables_lengths_and_load()
    {
        string written = new Printed(Repository.Read("demo", "quarry-lane", "wall.yaml")).Details;

        Assert.DoesNotMatch("BONDED LENGTH ____", written);
        Assert.DoesNotMatch("TEST LOAD: ____", written);
    }
}
