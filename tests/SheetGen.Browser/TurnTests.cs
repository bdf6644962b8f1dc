using System.Text.Json;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Browser;

/// <summary>The room to turn that the page draws is what the program itself measures: every kind of solid, corner, batter, with and without drift.</summary>
[Trait("Category", "Outside")]
public sealed class TurnTests
{
    [Theory]
    [InlineData("0 %")]
    [InlineData("1 %")]
    public void Each_direction_is_as_clear_as_the_program_says(string drift)
    {
        string yaml = $$$"""
            format: 1
            project: {title: Turn, number: T-2, units: ft}
            rules: {drift: {{{drift}}}}
            layout_lines:
              - {name: WL-1, start: {station: 10+00, northing: 51234.25, easting: 98765.5, azimuth: 200}, elements: [{line: 24}, {corner: {turn: left, angle: 25}}, {line: 24}]}
            walls:
              - name: W
                layout_line: WL-1
                retained_side: left
                stations: [10+00, 10+48]
                batter: {angle: 4 deg, elevation: 100}
                top: [[10+00, 112], [10+48, 113]]
                bottom: {steps: [[10+00, 100]]}
                sections:
                  - {name: A, stations: [10+00, 10+48], horizontal_spacing: 6, vertical_spacing: 5, top_row_depth: 2, inclination: 15, lengths: 18, bar: {size: "#8", grade: 75}, hole: 6 in}
            obstructions:
              - {name: Shaft, kind: shaft, at: {station: 10+10, offset: 9}, diameter: 36 in, top: 111, bottom: 80}
              - {name: Cap, kind: solid, footprint: [[10+28, 7], [10+36, 8], [10+34, 12], [10+27, 11]], bottom: 99, top: 104}
              - {name: Pipe, kind: pipe, points: [{station: 10+00, offset: 16, elevation: 104}, {station: 10+48, offset: 14, elevation: 101}], diameter: 2}
              - {name: ROW, kind: boundary, points: [{station: 10+00, offset: 22}, {station: 10+48, offset: 19}]}
            """;
        using var walls = new Walls();
        using var browser = new Browser();
        browser.OpenFile(walls.Build(yaml, "turn"));
        WallProject project = ProjectReader.ReadText(yaml, "turn.yaml").Project!;
        NailLayout layout = Placer.Place(project, new PlacingOptions(false));
        var face = new Face(project.Walls[0]);
        int compared = 0;
        foreach (Nail nail in layout.Nails.Where((_, i) => i % 5 == 1))
        {
            var scene = new ClearanceScene(project, [.. layout.Nails.Where(n => n != nail).Select(n => n.Hole)]);
            int k = 0;
            foreach (JsonElement cell in browser.Run("return sheetgenReview.roomToTurn(arguments[0]).cells.map(c => [c.splay, c.inclination, c.excess])", nail.Mark).EnumerateArray())
            {
                if (k++ % 23 != 0)
                    continue;
                double splay = cell[0].GetDouble(), inclination = cell[1].GetDouble();
                double length = LengthAt(project.Rules, nail, splay, inclination);
                Hole hole = face.HoleAt(nail.Along, nail.Elevation, splay, inclination, length, nail.HoleDiameter, project.Rules.Drift);
                double least = scene.Holes.Select(h => HoleDistance.Between(hole, h).Clear - project.Rules.NailClearance)
                    .Concat(scene.Obstacles.Where(o => o.Obstruction is not null).Select(o => HoleDistance.ToSolid(hole, o.Solid).Clear - o.Required)).Min();
                // What is far away the page need not look at.
                if (least < 2)
                {
                    // The page has coordinates to a hundred thousandth.
                    Assert.InRange(cell[2].GetDouble(), least - 1e-4, least + 1e-4);
                    compared++;
                }
            }
        }
        Assert.True(compared > 100, $"only {compared} compared");
    }

    /// <summary>The contract's own words: a redirect beyond the field tolerance keeps its reach, rounded up to the increment.</summary>
    private static double LengthAt(Rules rules, Nail nail, double splay, double inclination)
    {
        double grid = nail.Section.Inclination, length = nail.Section.Lengths[0];
        if (Math.Abs(splay) <= rules.Redirect.FieldTolerance && Math.Abs(inclination - grid) <= rules.Redirect.FieldTolerance)
            return length;
        double kept = length * Math.Cos(grid * Math.PI / 180) / (Math.Cos(inclination * Math.PI / 180) * Math.Cos(splay * Math.PI / 180));
        return Math.Max(length, Math.Ceiling(kept / rules.LengthIncrement - 1e-9) * rules.LengthIncrement);
    }
}
