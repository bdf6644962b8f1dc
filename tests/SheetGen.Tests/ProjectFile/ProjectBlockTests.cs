using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Blocks of the whole project: rules, rates, sheets, facts, the designer's decisions.</summary>
public sealed class ProjectBlockTests
{
    private static readonly string Metric = BaseWall.Text[..BaseWall.Text.IndexOf("walls:", StringComparison.Ordinal)]
        .Replace("units: ft", "units: m", StringComparison.Ordinal)
        .Replace("10+00", "1+000", StringComparison.Ordinal) + """
        walls:
          - name: W1
            retained_side: left
            stations: [1+000, 1+060.5]
            top: [[1+000, 118], [1+100, 120]]
            bottom: {steps: [[1+000, 112]]}
            drainage: {}
            sections:
              - {name: A, stations: [1000, 1060.5], horizontal_spacing: 1.5, vertical_spacing: 5 ft, top_row_depth: 600 mm, inclination: 15 deg, lengths: 24 ft, bar: {size: "No. 8", grade: 75}, hole: 150 mm}
        """;

    [Fact]
    public void Rules_left_out_take_the_defaults_of_the_unit_and_are_named_as_defaults()
    {
        Rules feet = BaseWall.Read(BaseWall.Text).Rules, metres = BaseWall.Read(Metric).Rules;

        Assert.Equal(Rules.Default(LengthUnit.Foot) with { Defaulted = feet.Defaulted }, feet);
        Assert.Equal(Rules.Default(LengthUnit.Metre) with { Defaulted = metres.Defaulted }, metres);
        Assert.Equal(
            ["bar_projection", "bottom_max", "clearance.boundary", "clearance.nail", "corner_clear", "drift", "edge_min", "heads_below_grade", "length_increment", "moved_gap_max", "redirect.lengthen", "redirect.step", "shift_step", "top_max"],
            feet.Defaulted.Order());
        Assert.Equal(19, metres.Defaulted.Count);
    }

    [Fact]
    public void Values_in_feet_are_exact_in_a_metric_project()
    {
        WallProject project = BaseWall.Read(Metric);
        Section section = project.Walls[0].Sections[0];

        Assert.Equal(LengthUnit.Metre, project.Unit);
        Assert.Equal((1.524, 0.6, 7.3152, 0.15), (section.VerticalSpacing, section.TopRowDepth, section.Lengths[0], section.HoleDiameter));
        Assert.Equal(60.5, project.Walls[0].End);
        Assert.Equal(new Drainage(null, null), project.Walls[0].Drainage);
    }

    [Fact]
    public void Every_block_of_the_project_reaches_the_model()
    {
        string text = BaseWall.With("sheets: {size: ANSI D, scale: 10}\n", """
            sheets: {size: ARCH D, scale: "1:240", revision: 0, date: 2026-01-15, view: from_behind, title_block: tb.dxf, layers: other, revisions: [{number: 1, date: 2026-02-01, text: moved}]}
            pay_items: items.yaml
            pay_length_from: back_of_shotcrete
            rates: {grout_overrun: 1.3, shotcrete_loss: 15 %, stock_length: 60, centralizer_spacing: 8 ft, design_bond: 2.2, test_bonded_length: 10, test_free_length: 5, contingency: 10 %}
            prices: {SN-1: 52.5, "206": 1}
            design: {design_loads: 250 psf, grout_strength: 3000 psi, mesh: 4x4}

            """);
        text = BaseWall.Replace(text, "number: T-1,", "number: T-1, vertical_datum: NAVD 88, owner: County, checked: E. F.,");
        WallProject project = BaseWall.Read(text);

        Assert.Equal([new("owner", "County"), new("vertical_datum", "NAVD 88"), new("checked", "E. F."), new("design_loads", "250 psf"), new("grout_strength", "3000 psi"), new("mesh", "4x4")], project.Info.Facts);
        SheetSettings sheets = project.Sheets;
        Assert.Equal(("ARCH D", 20.0, "0", "2026-01-15", true, "tb.dxf", "other"), (sheets.Size, sheets.Scale, sheets.Revision, sheets.Date, sheets.FromBehind, sheets.TitleBlock, sheets.Layers));
        Assert.Equal(["1", "2026-02-01", "moved"], Assert.Single(sheets.Revisions));
        Assert.Equal(("items.yaml", PayLengthFrom.BackOfShotcrete), (project.PayItems, project.PayLengthFrom));
        Rates rates = project.Rates;
        Assert.Equal((1.3, 0.15, 60.0, 8.0, 2.2, 10.0, 5.0, 0.1), (rates.GroutOverrun, rates.ShotcreteLoss, rates.StockLength, rates.CentralizerSpacing, rates.DesignBond, rates.TestBondedLength, rates.TestFreeLength, rates.Contingency));
        Assert.Equal([new("SN-1", 52.5), new("206", 1)], rates.Prices);
    }

    [Fact]
    public void Decisions_of_the_designer_reach_the_model()
    {
        WallProject project = BaseWall.Read(BaseWall.Text);

        FixedNail nail = Assert.Single(project.FixedNails);
        Assert.Equal(("W1", "A", "2", 30.0, 5.0, null), (nail.Wall, nail.Section, nail.Row, nail.Along, nail.Splay, nail.Inclination));
        Acceptance accepted = Assert.Single(project.Acceptances);
        Assert.Equal(("nail-obstruction", "S1", "shaft is cut down", "the engineer"), (accepted.Code, accepted.Obstruction, accepted.Reason, accepted.By));
        Assert.Equal(["A-1-03"], accepted.Nails);
        Assert.Equal(50, nail.Spot.Line + 2);
    }

    [Fact]
    public void A_boring_keeps_its_layers()
    {
        Boring boring = Assert.Single(BaseWall.Read(BaseWall.Text).Borings);

        Assert.Equal((-12.0, 45.0), (Math.Round(boring.At.N, 9), Math.Round(boring.At.E, 9)));
        Assert.Equal([new BoringLayer(108, "clay", null), new BoringLayer(78, "sand", null)], boring.Layers);
        Assert.Null(boring.Water);
    }

    [Fact]
    public void The_input_hash_is_of_the_files_bytes()
    {
        string path = Path.Combine(Directory.CreateTempSubdirectory("sheetgen").FullName, "wall.yaml");
        File.WriteAllText(path, BaseWall.Text);

        Assert.Equal(ProjectReader.ReadText(BaseWall.Text, "x").Project!.InputHash, ProjectReader.Read(path).Project!.InputHash);
        Assert.NotEqual(BaseWall.Read(BaseWall.Text + "\n").InputHash, BaseWall.Read(BaseWall.Text).InputHash);
        Assert.Matches("^[0-9a-f]{64}$", BaseWall.Read(BaseWall.Text).InputHash);
        Directory.Delete(Path.GetDirectoryName(path)!, true);
    }
}
