using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Drawing.Sections;

/// <summary>What the words of a section say, and where they stand.</summary>
public class SectionWordTests
{
    private const string Blocked = """
        format: 1
        project: {title: Wide shafts, number: WS-1, units: ft}
        layout_lines:
          - name: L1
            start: {station: 5+00, northing: 100, easting: 100, azimuth: 0}
            elements: [{line: 80}]
        walls:
          - name: Wall 5
            layout_line: L1
            retained_side: right
            stations: [5+10, 5+60]
            top: [[5+10, 118], [5+60, 118]]
            existing_ground: [[5+10, 120], [5+60, 120]]
            bottom: {steps: [[5+10, 100]]}
            sections:
              - {name: A, stations: [5+10, 5+60], horizontal_spacing: 3.5, vertical_spacing: 3.5, rows: level, top_row_depth: 2, inclination: 12, lengths: [24, 22, 20, 18], bar: {size: "#8", grade: 75}, hole: 6 in}
        obstructions:
          - {name: S1, kind: shaft, at: {station: 5+30, offset: 3}, diameter: 60 in, top: 125, bottom: 60}
        """;

    /// <summary>Every section with its words, in a view of so many units to the millimetre.</summary>
    private static IEnumerable<(SectionView View, Viewport Viewport, ViewLabels Labels)> Written(DrawingContext context, double unitsPerMillimetre)
    {
        foreach (SectionCut cut in SectionCut.Choose(context))
        {
            var view = new SectionView(context, cut, default);
            var viewport = new Viewport(new Box(0, 0, 400, 300), view.Extent.Center, unitsPerMillimetre);
            var labels = new ViewLabels(context, viewport, viewport.Frame, "SN-03", cut.Wall);
            new SectionLabels(context, view, labels, new SheetScale(5, context.Project.Unit).DimensionStyle).Write();
            yield return (view, viewport, labels);
        }
    }

    [Fact]
    public void Lifts_too_near_each_other_for_their_words_are_named_in_their_order()
    {
        DrawingContext context = PlacedWall.Context(Blocked.Replace("[5+10, 100]", "[5+10, 108]", StringComparison.Ordinal));
        int pairs = 0;
        foreach ((SectionView view, Viewport viewport, ViewLabels labels) in Written(context, 1.2))
        {
            double[] levels = [.. view.Lifts().Select(l => viewport.ToPaper.Apply(view.At(view.LiftEnd, l.Level)).Y).OrderDescending()];
            double[] words = [.. labels.Paper.OfType<Text>().Where(t => t.Value.StartsWith("LIFT", StringComparison.Ordinal)).OrderBy(t => t.Value, StringComparer.Ordinal).Select(t => t.Position.Y)];
            Assert.Equal(2, levels.Length);
            Assert.Equal(2, words.Length);
            Assert.InRange(levels[0] - levels[1], 0.1, context.StyleOf(TextRole.Label).Height * 1.7);
            Assert.InRange(words[0] - words[1], context.StyleOf(TextRole.Label).Height, levels[0]);
            pairs++;
        }
        Assert.True(pairs > 0);
    }

    [Fact]
    public void A_nail_that_may_not_be_drilled_is_forbidden_in_its_sections_too_and_says_how_far_it_runs_into_what()
    {
        DrawingContext context = PlacedWall.Context(Blocked);
        int stopped = 0;
        foreach ((SectionView view, Viewport viewport, ViewLabels labels) in Written(context, 0.2))
        {
            string[] words = [.. labels.Paper.OfType<Text>().Select(t => t.Value)];
            Assert.DoesNotContain(words, w => w.StartsWith('-'));
            foreach (Nail nail in view.Nails)
            {
                bool isForbidden = labels.Paper.OfType<Text>().Any(t => t.Nail == nail.Mark && t.Value.StartsWith("DO NOT DRILL", StringComparison.Ordinal));
                Assert.Equal(nail.Status == NailStatus.Unresolved, isForbidden);
                Assert.Equal(isForbidden, view.Draw().OfType<Line>().Any(l => l.Nail == nail.Mark && l.Layer == LayerRole.NailUnresolved));
                stopped += isForbidden ? 1 : 0;
            }
            if (view.Nails.Any(n => n.Status == NailStatus.Unresolved))
                Assert.Contains(words, w => w.EndsWith("' INTO S1", StringComparison.Ordinal));
        }
        Assert.True(stopped > 3, $"{stopped} nails");
    }

    [Theory]
    [InlineData("english")]
    [InlineData("spanish")]
    public void The_clear_distance_in_a_plan_of_a_passing_nail_stands_on_no_line_of_the_nail(string language)
    {
        DrawingContext context = PlacedWall.Context(Repository.Read("demo", "quarry-lane", "wall.yaml"), language);
        double label = context.StyleOf(TextRole.Label).Height;
        int seen = 0;
        foreach (SectionCut cut in SectionCut.Choose(context))
        {
            foreach (PassingPlan plan in PassingPlan.All(context, new SectionView(context, cut, default)))
            {
                var scale = new SheetScale(50, context.Project.Unit);
                double units = scale.UnitsPerMillimetre;
                var frame = new Box(0, 0, plan.Extent.Width / units + 10 * label - 6, plan.Extent.Height / units + 5 * label);
                var labels = new ViewLabels(context, new Viewport(frame, plan.Extent.Center, units), frame, "SN-05", cut.Wall);
                plan.Write(labels, default, scale.DimensionStyle);
                Dimension clear = Assert.Single(labels.Paper.OfType<Dimension>());
                string words = clear.Words!.Replace(DimensionPlacer.Measured, new DimensionPlacer(context, labels, scale.DimensionStyle).Written((clear.To - clear.From).Length * units), StringComparison.Ordinal);
                Box box = DimensionPicture.TextBox(clear.TextPoint, clear.Angle, words, context.StyleOf(TextRole.Dimension));
                PlaneTransform toPaper = labels.Viewport.ToPaper;
                Assert.All(plan.Draw(default).OfType<Line>().Where(l => l.Nail is not null), l => Assert.False(box.Crosses(toPaper.Apply(l.From), toPaper.Apply(l.To)), words));
                Assert.True(frame.Contains(box));
                seen++;
            }
        }
        Assert.True(seen > 0);
    }

    [Theory]
    [InlineData("")]
    [InlineData("half_size: true, ")]
    public void The_height_of_the_wall_is_a_dimension_beside_the_chain_of_rows_at_every_lettering(string half)
    {
        WallProject project = SampleLayout.Read(Blocked + $"\nsheets: {{{half}size: ANSI D, date: 2026-01-15}}");
        SheetSet set = SampleSheets.Compose(project, Placer.Place(project, new PlacingOptions()));

        Assert.Contains(set.Model.OfType<Dimension>(), d => d.Angle == 90 && Math.Abs(d.To.Y - d.From.Y - 18) < 1e-6);
        Assert.DoesNotContain(set.Model.OfType<Text>(), t => t.Value == "18.00'");
    }

    /// <summary>The face alone, and with a facing before it whose front is the closing side of its outline.</summary>
    [Theory]
    [InlineData("", 0.1)]
    [InlineData("    facing: {shotcrete: 4 in, kind: sculpted shotcrete, thickness: 14 in}\n    batter: {angle: 6 deg, elevation: 100}\n", 0.1)]
    [InlineData("    facing: {shotcrete: 4 in, kind: cast in place, thickness: 18 in}\n", 0.06)]
    public void Bubbles_of_details_stand_off_the_lines_of_the_face(string facing, double units)
    {
        DrawingContext context = PlacedWall.Context(Blocked.Replace("    sections:\n", facing + "    sections:\n", StringComparison.Ordinal));
        var view = new SectionView(context, SectionCut.Choose(context)[0], default);
        foreach (double share in new[] { 0.2, 0.35, 0.5, 0.65, 0.8 })
        {
            var viewport = new Viewport(new Box(0, 0, 400, 300), view.Extent.Center, units);
            var labels = new ViewLabels(context, viewport, viewport.Frame, "SN-03", view.Wall);
            new SectionLabels(context, view, labels, new SheetScale(5, context.Project.Unit).DimensionStyle).Write();
            double at = view.Bottom + (view.Top - view.Bottom) * share;
            Point2 face = viewport.ToPaper.Apply(view.At(view.Face.OffsetAt(at), at));

            Assert.True(Bubble.TryPoint(context, labels, [face], Math.PI, "6", "SN-04"));
            Circle bubble = Assert.Single(labels.Paper.OfType<Circle>(), c => c.Layer == LayerRole.Title);
            Assert.All(view.Build.Draw().Where(p => p is Line or Polyline).SelectMany(Sides),
                side => Assert.True(Off(bubble.Center, viewport.ToPaper.Apply(side.From), viewport.ToPaper.Apply(side.To)) >= bubble.Radius, $"bubble on {side.From} {side.To} at {share}"));
        }

        static double Off(Point2 point, Point2 a, Point2 b)
        {
            Point2 way = b - a, off = point - a;
            return (off - way * Math.Clamp((off.X * way.X + off.Y * way.Y) / (way.Length * way.Length), 0, 1)).Length;
        }

        static IEnumerable<(Point2 From, Point2 To)> Sides(Primitive primitive)
        {
            Point2[] points = primitive is Polyline p ? [.. p.Vertices.Select(v => v.Point), p.Vertices[0].Point] : [((Line)primitive).From, ((Line)primitive).To];
            for (int i = 1; i < points.Length; i++)
                yield return (points[i - 1], points[i]);
        }
    }

    [Fact]
    public void Words_of_a_section_stand_off_the_front_of_its_facing_where_there_is_room()
    {
        const string Facing = "    facing: {shotcrete: 4 in, kind: sculpted shotcrete, thickness: 14 in}\n    lifts: {below_row: 1.5, max_exposed: 6, max_hours: 24}\n    finished_grade: [[5+10, 101], [5+60, 101]]\n";
        DrawingContext context = PlacedWall.Context(Blocked.Replace("    sections:\n", Facing + "    sections:\n", StringComparison.Ordinal));
        int seen = 0;
        foreach ((SectionView view, Viewport viewport, ViewLabels labels) in Written(context, 0.1))
        {
            Point2 low = viewport.ToPaper.Apply(view.At(view.Build.FrontAt(view.Bottom), view.Bottom)), high = viewport.ToPaper.Apply(view.At(view.Build.FrontAt(view.Top), view.Top));
            foreach (Text text in labels.Paper.OfType<Text>())
            {
                Assert.False(TextMeasure.BoxOf(text, context.StyleOf(text.Role)).Crosses(low, high), $"{view.Cut.Number}: \"{text.Value}\" stands on the front of the facing");
                seen++;
            }
        }
        Assert.True(seen > 10, $"{seen} texts");
    }

    /// <summary>Words wider than usual, of turned nails, stand at their tips: a sheet keeps room for what is written and not for a usual width.</summary>
    [Fact]
    public void The_words_of_turned_nails_have_room_at_their_tips()
    {
        WallProject project = SampleLayout.Read(Blocked.Replace("offset: 3}, diameter: 60 in", "offset: 9}, diameter: 42 in", StringComparison.Ordinal));
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        Assert.Contains(layout.Nails, n => n.Splay != 0);
        SheetSet set = SampleSheets.Compose(project, layout);
        Primitive[] shown = [.. set.Model, .. set.Sheets.SelectMany(s => s.Paper)];
        Text[] data = [.. shown.OfType<Text>().Where(t => t.Nail is not null && t.Value.Contains("LEFT, PROJ.", StringComparison.Ordinal))];
        Assert.NotEmpty(data);
        Assert.DoesNotContain(shown.OfType<Leader>(), l => l.Obstruction is null && data.Any(d => d.Nail == l.Nail && (l.To - d.Position).Length < 20));
        Assert.DoesNotContain(shown.OfType<Text>(), t => t.Nail is null && t.Value.Contains("PROJ. ", StringComparison.Ordinal) && t.Value.StartsWith('('));
    }

    [Fact]
    public void Names_of_structures_stand_in_no_other_structure()
    {
        DrawingContext context = PlacedWall.Context(Repository.Read("demo", "heron-street-bridge", "wall.yaml"));
        int seen = 0;
        foreach (SectionCut cut in SectionCut.Choose(context))
        {
            var view = new SectionView(context, cut, default);
            var viewport = new Viewport(new Box(0, 0, 400, 300), view.Extent.Center, 5 / 25.4);
            var labels = new ViewLabels(context, viewport, viewport.Frame, "SN-04", cut.Wall);
            new SectionLabels(context, view, labels, new SheetScale(5, context.Project.Unit).DimensionStyle).Write();
            foreach (Obstruction o in view.Obstructions.Where(o => o.Kind is ObstructionKind.Solid or ObstructionKind.Beam && view.Outline(o).Any()))
            {
                Box own = Box.Around(view.Outline(o).SelectMany(Extents.Points).Select(viewport.ToPaper.Apply));
                foreach (Text name in labels.Paper.OfType<Text>().Where(t => t.Obstruction is not null && t.Value.StartsWith(t.Obstruction.ToUpperInvariant(), StringComparison.Ordinal)))
                {
                    Box box = TextMeasure.BoxOf(name, context.StyleOf(name.Role));
                    Assert.True(name.Obstruction == o.Name || !own.Overlaps(box), $"{cut.Number}: {name.Value} stands in {o.Name}");
                    seen++;
                }
            }
        }
        Assert.True(seen > 10, $"{seen} names");
    }

    /// <summary>What has no room in a small section stands in the words below it: nothing is lost, and no finding asks for a larger sheet.</summary>
    [Fact]
    public void What_has_no_room_in_a_section_stands_below_it()
    {
        WallProject project = SampleLayout.Read(Repository.Read("demo", "quarry-lane", "wall.yaml"));
        SheetSet set = SampleSheets.Compose(project, Placer.Place(project, new PlacingOptions()));
        string[] words = [.. set.Sheets.SelectMany(s => s.Paper).Concat(set.Model).OfType<Text>().Select(t => t.Value)];
        foreach (string layer in new[] { "DRAINAGE STRIP", "PERMANENT SHOTCRETE 150 mm", "SHOTCRETE 100 mm", "BATTER 5°" })
            Assert.Contains(words, w => w.Contains(layer, StringComparison.Ordinal));
        Assert.DoesNotContain(set.Findings, f => f.Code == FindingCode.Sheet);
    }

    /// <summary>A pipe that runs out of the face in the plane of a cut is drawn as long as it is, and named.</summary>
    [Fact]
    public void A_pipe_along_a_cut_is_drawn()
    {
        DrawingContext context = PlacedWall.Context(Blocked.Replace("- {name: S1, kind: shaft, at: {station: 5+30, offset: 3}, diameter: 60 in, top: 125, bottom: 60}",
            "- {name: Culvert, kind: pipe, points: [{station: 5+30, offset: 0.5, elevation: 106}, {station: 5+30, offset: 40, elevation: 107}], diameter: 48 in}", StringComparison.Ordinal));
        SectionView view = Assert.Single(SectionCut.Choose(context).Select(c => new SectionView(context, c, default)), v => v.Obstructions.Count > 0);
        Line[] edges = [.. view.Draw().OfType<Line>().Where(l => l.Obstruction == "Culvert")];
        Assert.Equal(2, edges.Length);
        Assert.Equal(4, Math.Abs(edges[0].From.Y - edges[1].From.Y) * Math.Cos(Math.Atan2(1, 39.5)), 0.05);
        Assert.All(edges, e => Assert.True(Math.Abs(e.To.X - e.From.X) > 20));
    }
}
