using System.Globalization;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Walls;

namespace SheetGen.Tests.Placing;

/// <summary>What a small wall has.</summary>
[Flags]
internal enum SmallKinds
{
    OneRow = 0,
    TwoRows = 1,
    OutsideCorner = 2,
    InsideCorner = 4,
    SlopingTop = 8,
    SteppedBottom = 16,
    FaceOffset = 32,
    Batter = 64,
    Pin = 128,
}

/// <summary>
/// A wall small enough for <see cref="EveryLayout"/>, of any kind: one row or two on each leg, straight or round an outside or inside corner, with shafts behind
/// it, and at random a sloping top, a bottom stepped at a panel break, a face offset, a batter, and a pinned nail in any row.
/// </summary>
internal sealed class SmallWall
{
    public SmallWall(ulong seed)
    {
        var random = new WallRandom(seed * 7919);
        bool corner = random.Chance(0.5), two = random.Chance(0.6);
        double first = corner ? random.Of(5.5, 6, 7) : two ? random.Of(6.0, 7, 9.5) : random.Of(7.0, 9.5, 12), second = corner ? random.Of(5.5, 6, 7) : 0;
        double length = first + second, bottom = two ? random.Of(95.0, 95.5) : 100;
        double deflection = corner ? random.Of(90.0, 75, 60, 45, -45, -60, -90) : 0;
        double slope = random.Chance(0.6) ? random.Of(-2.0, -1.5, -1, 1, 1.5, 2) : 0, step = random.Chance(0.5) ? random.Of(-2.0, -1, -0.5, 0.5, 1, 2) : 0;
        double offset = random.Chance(0.5) ? random.Of(-0.75, -0.5, 0.5, 0.75, 1) : 0, batter = random.Chance(0.4) ? random.Of(5.0, 8, 10) : 0;
        int count = random.Whole(1, 3);
        string[] shafts = [.. Enumerable.Range(1, count).Select(i => Text(
            $"  - {{name: S{i}, kind: shaft, at: {{station: {random.Between(0, length, 0.25)}, offset: {random.Between(3, 11, 0.25)}}}, diameter: {random.Of(1, 2, 3)}, top: 110, bottom: 80}}"))];
        string clear = random.Of("0.5", "0.5", "1.5", "2.25");
        double panel = random.Between(2.5, 5.5, 0.25);
        var wall = new PlacingWall
        {
            Length = length,
            CornerAt = corner ? first : null,
            Deflection = deflection,
            FaceOffset = offset,
            Top = Text($"[[0, {103 - Math.Min(0, slope)}], [END, {103 + Math.Max(0, slope)}]]"),
            Bottom = Text($"[[0, {bottom}]{(step == 0 ? "" : Text($", [{panel}, {bottom + step}]"))}]"),
            TopRowDepth = 1.5,
            Lengths = Text($"{random.Of(12, 16, 20)}"),
            WallKeys = [Text($"panels: {{width: {panel}, height: 5, first_break: 0}}"), batter == 0 ? "" : Text($"batter: {{angle: {batter}, elevation: 100}}")],
            Blocks =
            [
                "obstructions:",
                .. shafts,
                "rules:",
                $"  clearance: {{obstruction: 0.5, nail: {clear}, boundary: 1}}",
                "  redirect: {field_tolerance: 10, step: 5, maximum: 20, inclination: [10, 20]}",
                "  shift_step: 1",
            ],
        };
        bool pin = random.Chance(0.35);
        if (pin)
            wall = wall with { Blocks = [.. wall.Blocks, "fixed:", Pin(random, wall)] };
        Yaml = wall.Yaml;
        Project = PlacingWall.Read(Yaml);
        (bool Is, SmallKinds Kind)[] kinds =
        [
            (two, SmallKinds.TwoRows), (deflection > 0, SmallKinds.OutsideCorner), (deflection < 0, SmallKinds.InsideCorner), (slope != 0, SmallKinds.SlopingTop),
            (step != 0, SmallKinds.SteppedBottom), (offset != 0, SmallKinds.FaceOffset), (batter != 0, SmallKinds.Batter), (pin, SmallKinds.Pin),
        ];
        Kinds = kinds.Where(k => k.Is).Aggregate(SmallKinds.OneRow, (sum, k) => sum | k.Kind);
    }

    public string Yaml { get; }

    public WallProject Project { get; }

    public SmallKinds Kinds { get; }

    /// <summary>A nail of any row pinned on its grid station, or a shift step beside it.</summary>
    private static string Pin(WallRandom random, PlacingWall wall)
    {
        NailRow row = random.Of([.. Placer.Place(wall.Project, new PlacingOptions { Depth = SearchDepth.Insertion }).Rows]);
        double at = Math.Clamp(random.Of([.. row.GridStations]) + random.Of(-1.0, 0, 0, 0, 0, 1), 0.5, wall.Length - 0.5);
        return Text($"  - {{wall: Wall 1, row: \"{row.Number}\", station: {at:0.##}, splay: {random.Of(-15, 0, 0, 5, 20)}, inclination: {random.Of(15, 15, 20)}}}");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
