using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Dxf;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Writers.Dxf;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>What the project file gives stands on the elevation.</summary>
public class GivenThingsTests
{
    private const string Yaml = """
        format: 1
        project: {title: Depot cut, number: GT-1, units: ft}
        design: {proof_load: 30 kip, verification_load: 60 kip}
        layout_lines:
          - name: L
            start: {station: 1+00, northing: 0, easting: 0, azimuth: 90}
            elements: [{line: 60}]
        walls:
          - name: W
            layout_line: L
            retained_side: left
            stations: [1+00, 1+60]
            top: [[1+00, 118], [1+60, 118]]
            bottom: {steps: [[1+00, 102]]}
            openings: [{name: Inlet, stations: [1+41, 1+45], bottom: 106, top: 111}]
            no_nails: [{stations: [1+22, 1+26], bottom: 102, top: 106, reason: future drain}]
            sections:
              - {name: A, stations: [1+00, 1+60], horizontal_spacing: 5, vertical_spacing: 5, rows: level, top_row_depth: 2, inclination: 15, lengths: 20, bar: {size: "#8", grade: 75}, hole: 6 in, test_nails: {verification: 1, proof: 10 %, proof_marks: spread}}
        obstructions:
          - {name: Gas 6, kind: pipe, points: [{station: 1+00, offset: -9, elevation: 105.5}, {station: 1+60, offset: -9, elevation: 105.5}], diameter: 6 in, quality_level: B}
        fixed:
          - {section: A, row: 2, station: 1+07.5, splay: 5}
        accept:
          - {code: cover, stations: [1+00, 1+60], reason: bar mat there, by: "C. D., 2026-01-15"}
        sheets: {size: ANSI D}
        """;

    private static readonly Lazy<(SheetSet Set, NailLayout Layout)> Drawn = new(() =>
    {
        WallProject project = SampleLayout.Read(Yaml);
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        return (SheetComposer.Compose(project, layout, Checker.Check(project, layout), TakeOff.Measure(project, layout), [], new RunInfo("0"), TemplateReader.Default()), layout);
    });

    private static string Elevation => string.Join(" ", Drawn.Value.Set.Model.OfType<Text>().Select(t => t.Value)
        .Concat(Drawn.Value.Set.Sheets.Where(s => s.IsView).SelectMany(s => s.Paper).OfType<Text>().Select(t => t.Value)));

    [Theory]
    [InlineData("OPENING INLET")]
    [InlineData("4' x 5', EL 106.00 TO 111.00")]
    [InlineData("FRAMING: BY THE ENGINEER")]
    [InlineData("NO NAILS")]
    [InlineData("FUTURE DRAIN")]
    [InlineData("GAS 6 6\" DIA, QL B")]
    [InlineData("LOAD 60 KIP")]
    [InlineData("LOAD 30 KIP")]
    public void It_stands_there(string words) => Assert.Contains(words, Elevation, StringComparison.Ordinal);

    [Fact]
    public void The_words_of_an_opening_stand_in_the_elevation_and_not_among_the_notes() =>
        Assert.Contains(Drawn.Value.Set.Model.OfType<Text>(), t => t.Value == "OPENING INLET");

    [Fact]
    public void A_pinned_nail_has_its_symbol_and_the_legend_names_it()
    {
        string[] pinned = [.. Drawn.Value.Set.Model.OfType<BlockReference>().Where(b => b.Block.EndsWith("-PINNED", StringComparison.Ordinal)).Select(b => b.Nail!)];

        Assert.Equal(Drawn.Value.Layout.Nails.Where(n => n.IsFixed).Select(n => n.Mark).Order(), pinned.Order());
        Assert.NotEmpty(pinned);
        Assert.Contains(Drawn.Value.Set.Sheets[0].Paper.OfType<Text>(), t => t.Value.StartsWith("PLACE OR DIRECTION HELD", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_mark_is_unmistakable() => Assert.Equal("", string.Join("\n", DrawnMarks.Of(Drawn.Value.Set, Drawn.Value.Layout).Wrong.Take(20)));

    /// <summary>Arrowheads are 2 mm long on paper in every space, by the dimension style of their leader.</summary>
    [Fact]
    public void Leaders_point_with_arrowheads_of_one_size()
    {
        SheetSet set = Drawn.Value.Set;
        using var stream = new MemoryStream();
        DxfSheetWriter.Write(set, stream);
        stream.Position = 0;
        DxfDocument document = DxfReader.Read(stream).Document!;
        double[] scales = [.. set.Sheets.SelectMany(s => s.Viewports).Select(v => v.UnitsPerMillimetre).Distinct()];
        DxfLeader[] inModel = [.. document.Model.OfType<DxfLeader>().Where(l => l.Arrow)], onPaper = [.. document.Layouts.SelectMany(l => l.Entities).OfType<DxfLeader>().Where(l => l.Arrow)];

        Assert.NotEmpty(inModel);
        double Arrow(DxfLeader l) => document.DimStyles[l.Style] is var s ? s.ArrowSize * s.Scale : 0;
        Assert.All(inModel, l => Assert.Contains(scales, s => Math.Abs(Arrow(l) - 2 * s) < 1e-6));
        Assert.All(onPaper, l => Assert.Equal(2 / 25.4, Arrow(l), 6));
        Assert.All(inModel.Concat(onPaper), l => Assert.True((l.Points[^1] - l.Points[0]).Length > Arrow(l)));
    }
}
