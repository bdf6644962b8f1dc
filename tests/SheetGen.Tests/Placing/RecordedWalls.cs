using SheetGen.Layout.Placing;
using SheetGen.Tests.Walls;

namespace SheetGen.Tests.Placing;

/// <summary>A wall whose results are recorded.</summary>
/// <param name="Name">Without a colon.</param>
internal sealed record RecordedWall(string Name, string Yaml, PlacingOptions Options);

/// <summary>Small walls of many kinds, each laid out in about a tenth of a second, since most of them turn nails in steps of five degrees.</summary>
internal static class RecordedWalls
{
    private const string Coarse = "redirect: {field_tolerance: 10, step: 5, maximum: 30, inclination: [5, 25]}";

    private static readonly PlacingOptions Usual = new(), Proving = new(true);

    public static IReadOnlyList<RecordedWall> All { get; } =
    [
        .. ((ulong[])[9006, 9007, 9010, 9013, 9021, 9036, 9057]).Select(s => Mixed(s, Usual)),
        .. ((ulong[])[9039, 9047, 9055]).Select(s => Mixed(s, Proving)),
        .. ((ulong[])[9201, 9206, 9213, 9216, 9218, 9220, 9224]).Select(s => Crowded(s, Usual)),
        .. ((ulong[])[9223, 9230]).Select(s => Crowded(s, Proving)),
        Named("corner-at-section-limit", Proving),
        Named("back-to-back", Usual),
        .. ((ulong[])[9304, 9306]).Select(s => new RecordedWall($"two rows {s}", new SmallRow(s, 2).Yaml, Proving)),
        .. ((ulong[])[9304, 9308, 9310]).Select(s => new RecordedWall($"corner with a pin {s}", new SmallRow(s, 1, corner: true, pin: true).Yaml, Proving)),
        new("outside corner of 90 degrees", new PlacingWall { Length = 20, CornerAt = 9, Deflection = 90, Top = "[[0, 110], [END, 110]]", Blocks = ["rules:", "  " + Coarse] }.Yaml, Usual),
        new("best columns", Columned(ColumnPhaseTests.InTheWay(28)), Usual),
        new("by the designer's hand", Handmade, Usual),
        new("pinned here and there", Pinned, Usual),
        .. ((ulong[])[1, 2, 3, 4, 5]).Select(s => new RecordedWall($"closed stretches {s}", Closed(s), Usual)),
    ];

    private static string Handmade => new PlacingWall
    {
        Length = 35,
        Top = "[[0, 112], [20, 117], [END, 117]]",
        Bottom = "[[0, 100], [14, 102.5]]",
        Pattern = "staggered",
        Tests = "{verification: 1, proof: 5 %, proof_marks: spread}",
        WallKeys = ["no_nails: [{stations: [22, 26], bottom: 108, top: 113}]"],
        Blocks =
        [
            "fixed:",
            "  - {wall: Wall 1, section: A, row: 2, station: 9.25, splay: 10, inclination: 10, length: 23}",
            "  - {wall: Wall 1, section: A, row: 3, station: 16, leave_out: true}",
            "  - {wall: Wall 1, section: A, row: 3, station: 28.6, add: true}",
            "  - {wall: Wall 1, section: A, row: 4, length: 24}",
            "obstructions:",
            "  - {name: S1, kind: shaft, at: {station: 10, offset: 5}, diameter: 3, top: 120, bottom: 80}",
            "  - {name: S2, kind: shaft, at: {station: 30, offset: 3}, diameter: 2, top: 120, bottom: 80}",
            "rules:",
            "  " + Coarse,
        ],
    }.Yaml;

    /// <summary>Pins half way between two grid stations, at another elevation, of a whole row, of a length alone, and one whose station is taken.</summary>
    private static string Pinned => new PlacingWall
    {
        Length = 28,
        Top = "[[0, 112], [END, 112]]",
        Tests = "{verification: 2, proof: 10 %, proof_marks: spread}",
        Lengths = "[24, 20, 18]",
        Blocks =
        [
            "fixed:",
            "  - {wall: Wall 1, row: 1, station: 7}",
            "  - {wall: Wall 1, row: 1, station: 7.5, splay: 5}",
            "  - {wall: Wall 1, row: 2, station: 12.25, elevation: 106.25, inclination: 20}",
            "  - {wall: Wall 1, row: 2, station: 20, elevation: 106, length: 30}",
            "  - {wall: Wall 1, row: 2, station: 24.5, add: true, splay: -10}",
            "  - {wall: Wall 1, row: 3, splay: 5}",
            "obstructions:",
            "  - {name: S1, kind: shaft, at: {station: 5, offset: 5}, diameter: 2, top: 120, bottom: 80}",
            "  - {name: S2, kind: shaft, at: {station: 22, offset: 4}, diameter: 3, top: 120, bottom: 80}",
            "rules:",
            "  " + Coarse,
        ],
    }.Yaml;

    /// <summary>A stretch closed to nails beside a step, so that heads are moved for cover, and two shafts.</summary>
    private static string Closed(ulong seed)
    {
        var random = new WallRandom(seed * 433);
        double start = random.Between(6, 20, 0.25), bottom = random.Between(101, 107, 0.25);
        return new PlacingWall
        {
            Length = 31.5,
            Top = seed % 2 == 0 ? "[[0, 112], [END, 112]]" : "[[0, 109], [END, 114]]",
            Bottom = FormattableString.Invariant($"[[0, 100], [{random.Between(8, 24, 0.5)}, {100 + random.Between(-2, 2, 0.25)}]]"),
            Pattern = seed % 3 == 0 ? "staggered" : "square",
            WallKeys = [FormattableString.Invariant($"no_nails: [{{stations: [{start}, {start + random.Between(2.5, 7, 0.25)}], bottom: {bottom}, top: {bottom + random.Between(2, 8, 0.25)}}}]")],
            Blocks =
            [
                "obstructions:",
                FormattableString.Invariant($"  - {{name: S1, kind: shaft, at: {{station: {start - random.Between(0, 4, 0.25)}, offset: {random.Between(3, 8, 0.5)}}}, diameter: 2, top: 120, bottom: 80}}"),
                FormattableString.Invariant($"  - {{name: S2, kind: shaft, at: {{station: {start + random.Between(2, 9, 0.25)}, offset: {random.Between(3, 8, 0.5)}}}, diameter: 3, top: 120, bottom: 80}}"),
                "rules:",
                "  " + Coarse,
            ],
        }.Yaml;
    }

    private static RecordedWall Mixed(ulong seed, PlacingOptions options) => Of("random", RandomWall.Scenario(seed, new RandomWallOptions { Nails = 20, Obstructions = 25 }), seed, options);

    internal static RecordedWall Crowded(ulong seed, PlacingOptions options) => Of("crowded", RandomWall.Scenario(seed, new RandomWallOptions { Nails = 35, Plain = true, Obstructions = 25 }), seed, options);

    private static RecordedWall Of(string kind, WallScenario scenario, ulong seed, PlacingOptions options) => new($"{kind} {seed}", InSteps(scenario), options);

    private static RecordedWall Named(string name, PlacingOptions options) => new(name, InSteps(NamedWalls.All.First(w => w.Name == name).Scenario), options);

    private static string Columned(PlacingWall wall) => (wall with { Columns = "best" }).Yaml;

    private static string InSteps(WallScenario scenario) =>
        ScenarioYaml.Print(scenario with { Rules = [.. scenario.Rules.Where(r => !r.StartsWith("redirect", StringComparison.Ordinal)), Coarse] });
}
