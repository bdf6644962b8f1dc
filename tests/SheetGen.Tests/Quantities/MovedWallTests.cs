using System.Globalization;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Tests.Quantities.Effect;
using Xunit;

namespace SheetGen.Tests.Quantities;

/// <summary>
/// What is measured does not depend on where a wall stands: begun later along its line and lifted, or with its line run the other way,
/// every figure and list is the same, its places apart.
/// </summary>
public sealed class MovedWallTests
{
    internal const double Later = 13.75, Higher = 8.5;

    public static TheoryData<string> Names => [.. Walls.Keys];

    private static IReadOnlyDictionary<string, TestWall> Walls { get; } = new Dictionary<string, TestWall>(StrangeWallTests.Walls.Where(w => w.Key != "one nail"))
    {
        ["much at once"] = Rich,
        ["outside corner, battered"] = Rich with { Elements = [new LayoutElement.Tangent(55), new LayoutElement.Bend(Turn.Left, 62), new LayoutElement.Tangent(45)], FaceOffset = -1.5, Batter = new Batter(8, 103) },
        ["inside corner, battered"] = Rich with { Elements = [new LayoutElement.Tangent(55), new LayoutElement.Bend(Turn.Right, 40), new LayoutElement.Tangent(45)], FaceOffset = 0.75, Batter = new Batter(5, 118), Side = Turn.Right },
        ["arcs"] = Rich with { Elements = [new LayoutElement.Tangent(30), new LayoutElement.Arc(90, 40, Turn.Right), new LayoutElement.Arc(120, 30, Turn.Left)], FaceOffset = 2, Batter = new Batter(4, 100) },
        ["designed"] = Rich with
        {
            Panels = null,
            Design = EffectWall.Lrfd with
            {
                Bond = null,
                BondByLayer = new Dictionary<string, double> { ["clay"] = 5, ["sand"] = 15, ["fill"] = 1 },
                Surfaces = [new SlipSurface("1", [new(0, 99), new(4, 108), new(9, 130)], null), new SlipSurface("2", [], 55)],
            },
        },
    };

    private static TestWall Rich => new()
    {
        Top = [new(0, 118), new(30, 121.5), new(64, 121.5), new(100, 116)],
        Steps = [new(0, 100), new(20, 101.25), new(50, 99.5), new(80, 102)],
        Grade = [new(0, 102), new(50, 103), new(100, 103.5)],
        Panels = new Panels(10, 5, 0),
        Openings = [new Opening("Culvert", 22, 29, 104, 110, TestWall.Spot), new Opening("Sign", 71, 74, 108, 109.5, TestWall.Spot)],
        Limits = [35, 80],
        Stages = ["1", "2", "1"],
        Drainage = new Drainage(1, 9),
        Lifts = new Lifts(1.5, 6, 24),
        CrossSections = [new CrossSection(0, [new(0, 119), new(20, 119), new(40, 98)]), new CrossSection(100, [new(0, 118), new(10, 110), new(14, 96)])],
        Borings = [Boring("B-1", 20, -8, 108), Boring("B-2", 85, -14, 111, "fill")],
        Rates = new Rates { GroutOverrun = 1.25, ShotcreteLoss = 0.1, StockLengths = [20, 30], CentralizerSpacing = 8, Drilling = new Dictionary<string, double> { ["clay"] = 60, ["sand"] = 45 } },
        From = PayLengthFrom.BackOfShotcrete,
    };

    private static Boring Boring(string name, double along, double north, double change, string? upper = null) => new(
        name, new Vector2D(north, along), 124, 92, null, upper is null ? [new BoringLayer(change, "clay", null), new BoringLayer(92, "sand", null)] : [new BoringLayer(116, upper, null), new BoringLayer(change, "clay", null), new BoringLayer(92, "sand", null)]);

    [Theory]
    [MemberData(nameof(Names))]
    public void Begun_later_along_its_line_and_lifted_everything_is_the_same(string name)
    {
        TestWall wall = Walls[name];
        (QuantityTable first, QuantityTable second) = (Measure(wall), Measure(Moved(wall)));
        List<(string What, double Value)> a = [.. Lines(first, 0, 0)], b = [.. Lines(second, Later, Higher)];
        AssertSame(a, b);
        Assert.NotEmpty(first.Lifts);
    }

    /// <summary>The line run the other way, with the soil on its other hand: sums by section and what stands where, in the other order.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Run_the_other_way_everything_is_the_same(string name)
    {
        // A verification test nail stands beside the first nail of a section, whichever end that is.
        TestWall wall = Walls[name] with { Tests = TestNails.None, Borings = [] };
        (QuantityTable first, QuantityTable second) = (Measure(wall), Measure(Reversed(wall)));
        AssertSame([.. Mirrored(first, 0, wall).Order()], [.. Mirrored(second, wall.End, wall).Order()]);
    }

    private static QuantityTable Measure(TestWall wall)
    {
        (WallProject project, NailLayout layout) = wall.Make();
        return TakeOff.Measure(project, layout);
    }

    /// <summary>The wall begun later along its line, and lifted.</summary>
    internal static TestWall Moved(TestWall wall)
    {
        ProfilePoint[] Points(IEnumerable<ProfilePoint> points) => [.. points.Select(p => new ProfilePoint(p.Along + Later, p.Elevation + Higher))];
        return wall with
        {
            Elements = wall.Elements[0] is LayoutElement.Tangent t ? [new LayoutElement.Tangent(t.Length + Later), .. wall.Elements.Skip(1)] : [new LayoutElement.Tangent(Later), .. wall.Elements],
            Start = wall.Start + Later,
            End = wall.End + Later,
            Top = Points(wall.Top),
            Steps = Points(wall.Steps),
            Grade = wall.Grade is null ? null : Points(wall.Grade),
            Batter = wall.Batter is { } batter ? new Batter(batter.Angle, batter.Elevation + Higher) : null,
            Panels = wall.Panels is { } panels ? panels with { FirstBreak = panels.FirstBreak + Later } : null,
            Breaks = [.. wall.Breaks.Select(b => b + Later)],
            Openings = [.. wall.Openings.Select(o => o with { Start = o.Start + Later, End = o.End + Later, Bottom = o.Bottom + Higher, Top = o.Top + Higher })],
            Limits = [.. wall.Limits.Select(l => l + Later)],
            CrossSections = [.. wall.CrossSections.Select(c => new CrossSection(c.Along + Later, [.. c.Ground.Select(g => g with { Elevation = g.Elevation + Higher })]))],
            Borings = [.. wall.Borings.Select(b => new Boring(b.Name, b.At + new Vector2D(0, Later), b.Top + Higher, b.Bottom + Higher, b.Water, [.. b.Layers.Select(l => l with { To = l.To + Higher })]))],
            Design = wall.Design is { } design ? design with { Surfaces = [.. design.Surfaces.Select(s => s with { Points = [.. s.Points.Select(p => p with { Elevation = p.Elevation + Higher })] })] } : null,
        };
    }

    private static TestWall Reversed(TestWall wall)
    {
        double Place(double along) => wall.End - along;
        static Turn Other(Turn turn) => turn == Turn.Left ? Turn.Right : Turn.Left;
        return wall with
        {
            Side = Other(wall.Side),
            Elements =
            [
                .. wall.Elements.Reverse().Select(e => e switch
                {
                    LayoutElement.Bend bend => bend with { Turn = Other(bend.Turn) },
                    LayoutElement.Arc arc => arc with { Turn = Other(arc.Turn) },
                    _ => e,
                }),
            ],
            Top = [.. wall.Top.Reverse().Select(p => p with { Along = Place(p.Along) })],
            Steps = [.. wall.Steps.Select((s, i) => new ProfilePoint(i + 1 < wall.Steps.Count ? Place(wall.Steps[i + 1].Along) : 0, s.Elevation)).Reverse()],
            Grade = wall.Grade is null ? null : [.. wall.Grade.Reverse().Select(p => p with { Along = Place(p.Along) })],
            Breaks = [.. wall.Breaks.Reverse().Select(Place)],
            Openings = [.. wall.Openings.Select(o => o with { Start = Place(o.End), End = Place(o.Start) })],
            Limits = [.. wall.Limits.Reverse().Select(Place)],
            Stages = [.. wall.Stages.Reverse()],
            CrossSections = [.. wall.CrossSections.Reverse().Select(c => c with { Along = Place(c.Along) })],
        };
    }

    /// <summary>All that a table says, places less a shift.</summary>
    private static IEnumerable<(string What, double Value)> Lines(QuantityTable t, double along, double up)
    {
        foreach (SectionQuantities s in t.Sections)
        {
            foreach ((string name, Quantity q) in s.Amounts)
                yield return ($"{s.Section.Name} {name} {q.State} {q.Note.Length}", q.Amount ?? -1);
            yield return ($"{s.Section.Name} heights", s.LeastHeight * 1000 + s.GreatestHeight);
            yield return ($"{s.Section.Name} areas {s.GreatestAreaMark}", (s.MeanArea ?? 0) + 3 * (s.GreatestArea ?? 0));
            yield return ($"{s.Section.Name} rows {string.Join(' ', s.Rows)} {string.Join(' ', s.Lengths)} {string.Join(' ', s.Grid.Select(g => (g.Row, g.GridStations, g.LeftOut, g.Added)))}", s.Gaps.Count);
            foreach (NonTypicalGap gap in s.Gaps)
                yield return ($"gap {gap.ToString().Split("Gap =")[0]}", s.Gaps.Count);
        }
        foreach (Quantity q in t.Totals.Values)
            yield return ($"total {q.Name} {q.State} {q.Missing.Count} {q.NotAsked.Count}", q.Amount ?? -1);
        foreach (NailQuantity n in t.Nails)
            yield return ($"nail {n.Nail.Mark} {n.Centralizers}", (n.Area ?? 0) + 100 * n.PayLength);
        foreach (PanelCount p in t.Panels)
            yield return ($"panels {p.Mark} {p.Section.Name} {p.Course} {p.Size} {p.Places.Count} {string.Join(',', p.CutBy)} {p.Width:0.00} {p.StartHeight:0.00} {p.EndHeight:0.00}", p.Area);
        foreach (Panel p in t.PanelPieces)
            yield return ($"panel {p.Mark} {p.Section.Name} {p.Leg} {p.Column} {p.Course} {p.Size} {string.Join(',', p.CutBy)} {p.Outline.Count}", p.Start - along + 3 * (p.End - along) + 7 * p.Area + 11 * p.Outline[0].Max(o => o.Elevation - up));
        foreach (PadRun p in t.Pad)
            yield return ($"pad {p.Section.Name} {Math.Round(p.StepsUp ?? -9, 6)}", p.Start - along + 3 * (p.End - along) + 7 * p.Length + 11 * (p.Elevation - up));
        foreach (DrainStrip s in t.Strips)
            yield return ($"strip {s.Section.Name} {string.Join(',', s.Touches)} {s.Spacing}", s.Along - along + 3 * s.Length);
        foreach (ExcavationLift l in t.Lifts)
        {
            yield return ($"lift {l.Section.Name} {l.Leg} {l.Number} {l.Row} {string.Join(',', l.Rows)} {l.BelowRow} {l.Limit} {l.IsTooHigh} {l.Outline.Count}",
                l.Start - along + 3 * (l.End - along) + 7 * l.CutArea + 11 * l.Exposed + 13 * (l.Volume ?? 0));
            yield return ("below the lower edge", l.LowerEdge.Zip(l.LowerEdge.Skip(1)).Sum(p => (p.Second.Along - p.First.Along) * ((p.First.Elevation + p.Second.Elevation) / 2 - up)));
        }
        foreach (BarCut b in t.Bars)
            yield return (b.ToString(), 0);
        foreach (CutPattern p in t.Cutting?.Patterns ?? [])
            yield return ($"pattern {p.Count} {string.Join(' ', p.Pieces)}", p.StockLength);
        foreach (SoilLength s in t.Soils)
            yield return ($"soil {s.Section.Name} {s.Lift} {s.Layer}", s.Length + 3 * (s.Hours ?? 0));
        foreach (CheckLine c in t.Checks)
            yield return ($"check {c.Text} {c.Source}", c.First + 3 * (c.Second ?? 0));
        foreach (TestPlan p in t.Tests)
            yield return ($"tests {p.Asked} {p.Verification} {p.Proof} {string.Join(' ', p.VerificationMarks)} {string.Join(' ', p.ProofMarks)} {p.Note.Length}", 0);
        foreach (NailEffect n in t.Effect.Nails)
        {
            yield return ($"effect {n.Nail.Mark} {n.Zone} {n.IsChanged} {n.Grid is null} {string.Join(' ', n.Drawn.Checks.Select(c => (c.State, c.Surface)))} {string.Join(' ', n.Drawn.Layers.Select(l => l.Layer))}",
                n.Drawn.Area + 3 * n.Drawn.Square + 7 * n.Drawn.Width + 11 * n.Drawn.Checks.Sum(c => c.Ratio) + n.Drawn.Layers.Sum(l => 13 * l.From + 17 * l.To) + n.Drawn.Cuts.Sum(c => c.At + (c.Front ?? 0) + 3 * (c.Behind ?? 0)));
        }
        yield return ("bare", t.Effect.AreaWithoutNails);
        foreach (SoilTest s in t.Effect.Tests)
            yield return ($"test {s.Soil} {s.IsProof}", s.Load + 3 * s.Bonded);
    }

    /// <summary>What is the same when the line runs the other way; places are told from where the first line began.</summary>
    /// <param name="end">0 for the first line, its end for the other.</param>
    private static IEnumerable<(string What, double Value)> Mirrored(QuantityTable t, double end, TestWall wall)
    {
        double Place(double along) => end > 0 ? end - along : along;
        string Text(double along) => Place(along).ToString("0.0000", CultureInfo.InvariantCulture).Replace("-0.0000", "0.0000", StringComparison.Ordinal);
        string Span(double start, double to) => end > 0 ? Text(to) + " to " + Text(start) : Text(start) + " to " + Text(to);
        // Panels and courses of less than a whole width stand at the end, the middle of a panel on a section limit belongs to the section after it, and of two
        // sets of drainage strips that are as good the first is taken.
        string[] ofPlaces = [QuantityName.PanelCount, QuantityName.PanelsFull, QuantityName.PanelsPartial, QuantityName.PanelsSpecial, QuantityName.PanelArea, QuantityName.PadSteps, QuantityName.StripLength, QuantityName.StripCount];
        foreach (SectionQuantities s in t.Sections)
        {
            string name = Span(s.Section.Start, s.Section.End);
            foreach ((string what, Quantity q) in s.Amounts.Where(a => !ofPlaces.Contains(a.Key)))
                yield return ($"{name} {what} {q.State}", q.Amount ?? -1);
            yield return ($"{name} heights", s.LeastHeight * 1000 + s.GreatestHeight);
            yield return ($"{name} areas", (s.MeanArea ?? 0) + 3 * (s.GreatestArea ?? 0));
            yield return ($"{name} rows {string.Join(' ', s.Rows)} {string.Join(' ', s.Lengths)}", s.Gaps.Count);
        }
        yield return ("panels in all", t.PanelPieces.Sum(p => p.Area));
        yield return ("strips in all", t.Strips.Count);
        foreach (NailQuantity n in t.Nails)
            yield return ($"nail {n.Nail.Row} {Text(n.Nail.Along)}", (n.Area ?? 0) + 100 * n.PayLength);
        foreach (PadRun p in t.Pad)
            yield return ($"pad {Span(p.Start, p.End)}", 7 * p.Length + 11 * p.Elevation);
        foreach (ExcavationLift l in t.Lifts)
            yield return ($"lift {Span(l.Start, l.End)} {string.Join(',', l.Rows)} {l.IsTooHigh}", 7 * l.CutArea + 11 * l.Exposed + 13 * (l.Volume ?? 0));
        foreach (NailEffect n in t.Effect.Nails)
            yield return ($"effect {n.Nail.Row} {Text(n.Nail.Along)} {n.Zone} {n.IsChanged} {wall.Design is null}", n.Drawn.Area + 3 * n.Drawn.Square + 7 * n.Drawn.Width + 11 * n.Drawn.Checks.Sum(c => c.Ratio) + n.Drawn.Cuts.Sum(c => c.At));
        yield return ("bare", t.Effect.AreaWithoutNails);
    }

    private static void AssertSame(List<(string What, double Value)> a, List<(string What, double Value)> b)
    {
        string[] differ =
        [
            .. a.Zip(b).Where(p => p.First.What != p.Second.What || Math.Abs(p.First.Value - p.Second.Value) > 2e-6 * Math.Max(1, Math.Abs(p.First.Value)))
                .Take(12).Select(p => $"{p.First} -> {p.Second}"),
        ];
        Assert.True(differ.Length == 0 && a.Count == b.Count, $"{a.Count} and {b.Count}\n" + string.Join('\n', differ));
    }
}
