using System.Globalization;
using System.Text;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Figures of drawings written group by group, and what becomes of them.</summary>
public sealed class DxfFigureTests
{
    private const string Line = "start: {station: 10+00, northing: 0, easting: 0, azimuth: 90}\n    elements: [{line: 400}]";

    private static string Yaml(string from) => InputFolder.Yaml(Line, "[[10+00, 118], [14+00, 118]]", "[10+00, 14+00]", bottom: "100", more: $"obstructions:\n  - from_dxf: {{file: base.dxf, {from}}}\n");

    private static ReadResult Read(InputFolder folder, string entities, string from = "layer: A, kind: solid, bottom: 90, top: 118, error: 0.05", string blocks = "", string units = "2") =>
        folder.With("base.dxf", Dxf(entities, blocks, units)).Read(Yaml(from));

    /// <summary>A drawing: groups are written as "code value" parted by |.</summary>
    private static string Dxf(string entities, string blocks, string units)
    {
        var text = new StringBuilder($"0|SECTION|2|HEADER|9|$ACADVER|1|AC1015|9|$INSUNITS|70|{units}|0|ENDSEC|0|SECTION|2|BLOCKS|{blocks}0|ENDSEC|0|SECTION|2|ENTITIES|{entities}0|ENDSEC|0|EOF|");
        return text.Replace('|', '\n').ToString();
    }

    private static string Pairs(params double[] xy) => string.Concat(Enumerable.Range(0, xy.Length / 2).Select(i => FormattableString.Invariant($"10|{xy[2 * i]}|20|{xy[2 * i + 1]}|")));

    private static Obstruction Only(ReadResult read)
    {
        Assert.Equal([], read.Problems.Where(p => p.Severity == Severity.Error).Select(ProblemPrinter.Plain));
        return Assert.Single(read.Project!.Obstructions);
    }

    /// <summary>Greatest distance of points out of the body in plan; at or under 0 where the body holds them all.</summary>
    private static double Outside(Obstruction body, IEnumerable<(double X, double Y)> points) =>
        points.Max(p => body.Solids.Min(s => s.SignedDistance(new Vector3D(p.Y, p.X, 100))));

    [Fact]
    public void Ellipses_and_bulges_are_never_smaller_than_drawn_nor_much_larger()
    {
        using var folder = new InputFolder();
        Obstruction ellipse = Only(Read(folder, "0|ELLIPSE|5|1F|8|A|10|50|20|-20|30|0|11|12|21|4|31|0|40|0.4|41|0|42|6.283185307179586|"));
        (double X, double Y)[] on = [.. Enumerable.Range(0, 5000).Select(i => Ellipse(i * 2 * Math.PI / 5000, 1))];
        Assert.True(Outside(ellipse, on) <= 1e-9);
        Assert.True(Outside(ellipse, [.. Enumerable.Range(0, 500).Select(i => Ellipse(i * 2 * Math.PI / 500, 1.02))]) > 0);
        double least = Enumerable.Range(0, 500).Min(i => ellipse.Solids.Min(s => s.SignedDistance(At(Ellipse(i * 2 * Math.PI / 500, 1.02)))));
        Assert.True(least > 0.02, $"{least}");
        Assert.Contains(folder.Read(Yaml("layer: A, kind: solid, bottom: 90, top: 118")).Problems, p => p.Code == "I07" && p.Message.StartsWith("solid \"A1\" is the ellipse 1F on layer A at 10+", StringComparison.Ordinal));

        // A pill: two straight sides, a half circle outward and one inward.
        Obstruction pill = Only(Read(folder, "0|LWPOLYLINE|5|2|8|A|90|4|70|1|10|50|20|-20|10|70|20|-20|42|1|10|70|20|-10|10|50|20|-10|42|-1|"));
        Assert.True(Outside(pill, Enumerable.Range(0, 1000).Select(i => -Math.PI / 2 + Math.PI * i / 999).Select(a => (70 + 5 * Math.Cos(a), -15 + 5 * Math.Sin(a)))) <= 1e-9);
        Assert.True(pill.Solids.Min(s => s.SignedDistance(new Vector3D(-15, 53, 100))) > 1.9);
        Assert.True(Outside(pill, Enumerable.Range(20, 960).Select(i => -Math.PI / 2 + Math.PI * i / 999).Select(a => (50 + 5.001 * Math.Cos(a), -15 + 5.001 * Math.Sin(a)))) <= 1e-6);

        static (double, double) Ellipse(double t, double by) => (50 + by * (12 * Math.Cos(t) - 1.6 * Math.Sin(t)), -20 + by * (4 * Math.Cos(t) + 4.8 * Math.Sin(t)));
        static Vector3D At((double X, double Y) p) => new(p.Y, p.X, 100);
    }

    [Fact]
    public void A_rational_spline_circle_is_held_from_outside()
    {
        using var folder = new InputFolder();
        double w = Math.Sqrt(0.5);
        double[] x = [60, 60, 50, 40, 40, 40, 50, 60, 60], y = [-20, -10, -10, -10, -20, -30, -30, -30, -20], weights = [1, w, 1, w, 1, w, 1, w, 1];
        string knots = string.Concat(new[] { 0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4 }.Select(k => $"40|{k}|"));
        string spline = "0|SPLINE|5|7|8|A|70|12|71|2|72|12|73|9|" + knots + string.Concat(weights.Select(v => FormattableString.Invariant($"41|{v:R}|"))) + string.Concat(x.Zip(y, (a, b) => FormattableString.Invariant($"10|{a}|20|{b}|30|0|")));
        Obstruction body = Only(Read(folder, spline));
        Assert.True(Outside(body, Enumerable.Range(0, 3000).Select(i => i * Math.PI / 1500).Select(a => (50 + 10 * Math.Cos(a), -20 + 10 * Math.Sin(a)))) <= 1e-6);
        Assert.True(body.Solids.Min(s => s.SignedDistance(new Vector3D(-20, 60.25, 100))) > 0);
        Obstruction shaft = Only(Read(folder, spline, "layer: A, kind: shaft, bottom: 90, top: 118"));
        Assert.Equal(20, shaft.Diameter, 1e-6);
    }

    [Fact]
    public void Hatches_give_their_outer_outline_and_fill_their_holes()
    {
        using var folder = new InputFolder();
        string hatch = "0|HATCH|5|9|8|A|10|0|20|0|30|0|210|0|220|0|230|1|2|SOLID|70|1|71|0|91|2|92|3|72|0|73|1|93|4|" + Pairs(50, -30, 70, -30, 70, -10, 50, -10) + "97|0|92|2|72|0|73|1|93|4|" + Pairs(55, -25, 60, -25, 60, -20, 55, -20) + "97|0|75|0|76|1|98|0|";
        Obstruction body = Only(Read(folder, hatch));
        Assert.True(Outside(body, [(57, -22), (51, -29)]) < 0);
        // The same by edges: three lines and a half circle.
        string edges = "0|HATCH|5|9|8|A|10|0|20|0|30|0|2|SOLID|70|1|71|0|91|1|92|1|93|4|72|1|10|50|20|-30|11|70|21|-30|72|2|10|70|20|-20|40|10|50|270|51|90|73|1|72|1|10|70|20|-10|11|50|21|-10|72|1|10|50|20|-10|11|50|21|-30|97|0|75|0|76|1|98|0|";
        Assert.True(Outside(Only(Read(folder, edges)), Enumerable.Range(0, 500).Select(i => Math.PI * (i / 499.0 - 0.5)).Select(a => (70 + 10 * Math.Cos(a), -20 + 10 * Math.Sin(a)))) <= 1e-9);
    }

    [Fact]
    public void Lines_and_arcs_join_within_the_gap_and_no_further()
    {
        using var folder = new InputFolder();
        const string Loop = "0|LINE|5|1|8|A|10|50|20|-30|11|70|21|-30|0|ARC|5|2|8|A|10|70|20|-20|40|10|50|270|51|90|0|LINE|5|3|8|A|10|50|20|-10|11|70|21|-10|0|LINE|5|4|8|A|10|50|20|-10|11|50.006|21|-30|";
        Assert.Contains("4 joined lines from 1", Read(folder, Loop).Problems.Single(p => p.Message.Contains("\" is the ", StringComparison.Ordinal)).Message, StringComparison.Ordinal);
        ReadResult wide = Read(folder, Loop.Replace("50.006", "50.2", StringComparison.Ordinal));
        Assert.Contains(wide.Problems, p => p.Code == "I05" && p.Message.Contains("its outline is open by 0.2 ft; close it, or raise gap", StringComparison.Ordinal));
        Assert.Null(wide.Project);
        Only(Read(folder, Loop.Replace("50.006", "50.2", StringComparison.Ordinal), "layer: A, kind: solid, bottom: 90, top: 118, gap: 0.25"));
    }

    /// <summary>A number that none could read was once 0: a shaft with a decimal comma in its place stood on the drawing's axis.</summary>
    [Theory]
    [InlineData("0|CIRCLE|5|2|8|A|10|60|20|-12,5|40|1.5|", "circle 2 on layer A is left out: the value in line 68 is not a number")]
    [InlineData("0|LWPOLYLINE|5|2|8|A|70|1|10|60|20|-12|10|62|20|nan|10|62|20|-10|", "polyline 2 on layer A is left out: the value in line 74 is not a number")]
    [InlineData("0|INSERT|5|2|8|A|2|B|10|x|20|-12|", "insert 2 on layer A is left out: the value in line 68 is not a number")]
    public void A_thing_with_a_number_that_cannot_be_read_is_left_out_and_told(string entity, string told)
    {
        using var folder = new InputFolder();
        ReadResult read = Read(folder, "0|CIRCLE|5|1|8|A|10|50|20|-12|40|1.5|" + entity, "layer: A, kind: shaft, bottom: 90, top: 118", "0|BLOCK|2|B|10|0|20|0|0|CIRCLE|5|9|8|A|10|0|20|0|40|1|0|ENDBLK|");
        Only(read);
        Assert.Contains(read.Problems, p => p.Code == "I05" && p.Message.StartsWith(told, StringComparison.Ordinal));
    }

    [Fact]
    public void Arrays_scales_and_mirrors_of_nested_blocks_count()
    {
        using var folder = new InputFolder();
        string blocks = "0|BLOCK|8|0|2|PILE|70|0|10|1|20|0|30|0|0|CIRCLE|5|B1|8|0|10|1|20|0|30|0|40|0.5|0|ENDBLK|0|BLOCK|8|0|2|ROW|70|0|10|0|20|0|30|0|0|INSERT|5|B2|8|0|2|PILE|10|0|20|0|30|0|70|3|71|2|44|8|45|5|0|ENDBLK|";
        ReadResult read = Read(folder, "0|INSERT|5|C1|8|A|2|ROW|10|60|20|-20|30|0|41|2|42|2|50|90|", "block: PILE, kind: pile, bottom: 90, top: 118", blocks);
        Assert.Equal([], read.Problems.Where(p => p.Severity == Severity.Error).Select(ProblemPrinter.Plain));
        Assert.Equal(6, read.Project!.Obstructions.Count);
        Assert.All(read.Project.Obstructions, o => Assert.Equal(2, o.Diameter, 1e-9));
        // Columns run along the drawing's y after the turn, 16 apart; rows towards -x, 10 apart.
        Assert.Equal([(-20, 50), (-20, 60), (-4, 50), (-4, 60), (12, 50), (12, 60)],
            read.Project.Obstructions.Select(o => ((int)Math.Round(o.Shape[0].N), (int)Math.Round(o.Shape[0].E))).Order());
        Assert.Equal(6, Read(folder, "0|INSERT|5|C1|8|A|2|ROW|10|60|20|-20|30|0|41|2|42|2|50|90|", "layer: A, kind: pile, bottom: 90, top: 118", blocks).Project!.Obstructions.Count);
    }

    [Fact]
    public void What_nested_arrays_come_to_is_counted_before_anything_is_made()
    {
        using var folder = new InputFolder();
        var blocks = new StringBuilder("0|BLOCK|8|0|2|B0|70|0|10|0|20|0|30|0|0|CIRCLE|8|0|10|0|20|0|40|1|0|ENDBLK|");
        for (int i = 1; i <= 12; i++)
            blocks.Append(CultureInfo.InvariantCulture, $"0|BLOCK|8|0|2|B{i}|70|0|10|0|20|0|30|0|0|INSERT|8|0|2|B{i - 1}|10|0|20|0|30|0|70|30000|71|30000|0|ENDBLK|");
        ReadResult bomb = Read(folder, "0|INSERT|8|A|2|B12|10|0|20|0|30|0|", blocks: blocks.ToString());
        Assert.Contains(bomb.Problems, p => p.Code == "R04" && p.Message.Contains("entities; the limit is 400,000", StringComparison.Ordinal));
        ReadResult ring = Read(folder, "0|INSERT|8|A|2|X|10|0|20|0|30|0|", blocks: "0|BLOCK|8|0|2|X|70|0|10|0|20|0|30|0|0|INSERT|8|0|2|X|10|0|20|0|30|0|0|ENDBLK|");
        Assert.Contains(ring.Problems, p => p.Code == "R04" && p.Message.Contains("a number without end", StringComparison.Ordinal));
    }

    [Fact]
    public void Bodies_of_faces_become_prisms_around_them()
    {
        using var folder = new InputFolder();
        string Face(string handle, params double[] p) => $"0|3DFACE|5|{handle}|8|A|" + string.Concat(Enumerable.Range(0, 4).Select(i => FormattableString.Invariant($"1{i}|{p[3 * i]}|2{i}|{p[3 * i + 1]}|3{i}|{p[3 * i + 2]}|")));
        string box = Face("1", 50, -20, 95, 60, -20, 95, 60, -10, 95, 50, -10, 95) + Face("2", 50, -20, 110, 60, -20, 110, 60, -10, 110, 50, -10, 110) + Face("3", 50, -20, 95, 60, -20, 95, 60, -20, 110, 50, -20, 110);
        Obstruction body = Only(Read(folder, box, "layer: A, kind: solid"));
        Assert.Equal((95, 110), (body.Bottom, body.Top));
        Assert.True(body.Solids.Single().SignedDistance(new Vector3D(-15, 55, 100)) < 0);
    }

    /// <summary>An L in plan, as 3D faces, as a polyface mesh, as a MESH and as one that is smoothed: its inner corner stays free where the faces tell it.</summary>
    [Theory]
    [InlineData("faces", true)]
    [InlineData("polyface", true)]
    [InlineData("mesh", true)]
    [InlineData("smooth", false)]
    [InlineData("brace", false)]
    public void A_body_that_is_not_convex_keeps_its_outline(string form, bool keeps)
    {
        using var folder = new InputFolder();
        (double X, double Y)[] plan = [(50, -20), (70, -20), (70, -16), (54, -16), (54, -8), (50, -8)];
        // The floor and the roof in two pieces each, and a wall along each side.
        List<int[]> faces = [[0, 1, 2, 3], [0, 3, 4, 5], [6, 7, 8, 9], [6, 9, 10, 11]];
        faces.AddRange(Enumerable.Range(0, 6).Select(i => new[] { i, (i + 1) % 6, 6 + (i + 1) % 6, 6 + i }));
        if (form == "brace")
            faces.Add([2, 4, 10, 8]); // From corner to corner across the free place.
        (double X, double Y, double Z)[] at = [.. plan.Select(p => (p.X, p.Y, 95.0)), .. plan.Select(p => (p.X, p.Y, 110.0))];
        string Vertex((double X, double Y, double Z) p, int step = 0) => FormattableString.Invariant($"{10 + step}|{p.X}|{20 + step}|{p.Y}|{30 + step}|{p.Z}|");
        string drawn = form switch
        {
            "polyface" => "0|POLYLINE|5|9|8|A|66|1|10|0|20|0|30|0|70|64|71|12|72|10|" + string.Concat(at.Select(p => "0|VERTEX|8|A|" + Vertex(p) + "70|192|"))
                + string.Concat(faces.Select(f => "0|VERTEX|8|A|10|0|20|0|30|0|70|128|" + string.Concat(f.Select((v, i) => $"{71 + i}|{(i == 1 ? -1 : 1) * (v + 1)}|")))) + "0|SEQEND|8|A|",
            "mesh" or "smooth" => $"0|MESH|5|9|8|A|71|2|72|0|91|{(form == "smooth" ? 1 : 0)}|92|12|" + string.Concat(at.Select(p => Vertex(p))) + $"93|{faces.Sum(f => f.Length + 1)}|" + string.Concat(faces.Select(f => $"90|{f.Length}|" + string.Concat(f.Select(v => $"90|{v}|")))) + "94|0|95|0|",
            _ => string.Concat(faces.Select((f, i) => $"0|3DFACE|5|{i + 10:X}|8|A|" + string.Concat(f.Select((v, k) => Vertex(at[v], k))))),
        };
        ReadResult read = Read(folder, drawn, "layer: A, kind: solid");
        Obstruction body = Only(read);
        double At(double x, double y) => body.Solids.Min(s => s.SignedDistance(new Vector3D(y, x, 100)));
        Assert.True(Outside(body, plan) <= 1e-9);
        Assert.True(At(52, -10) < 0 && At(68, -18) < 0);
        Assert.Equal(keeps, At(56, -14) > 1.9);
        Assert.Contains(read.Problems, p => p.Code == "I07" && p.Message.Contains(keeps ? "6 corners, which is not convex: split into convex parts" : "upright prism over the convex outline of its", StringComparison.Ordinal));
    }

    /// <summary>A fan of faces around a middle, its rim at random distances: no point of any face lies out of the body.</summary>
    [Fact]
    public void A_body_holds_all_of_its_faces()
    {
        var random = new Random(161);
        using var folder = new InputFolder();
        int bent = 0;
        for (int round = 0; round < 40; round++)
        {
            int n = random.Next(5, 14);
            (double X, double Y, double Z)[] rim = [.. Enumerable.Range(0, n).Select(i => (Angle: 2 * Math.PI * i / n, R: 3 + 9 * random.NextDouble())).Select(p => (80 + p.R * Math.Cos(p.Angle), -30 + p.R * Math.Sin(p.Angle), 96 + 10 * random.NextDouble()))];
            (double X, double Y, double Z) middle = (80, -30, 108);
            string fan = string.Concat(Enumerable.Range(0, n).Select(i => $"0|3DFACE|5|{i + 10:X}|8|A|" + string.Concat(new[] { middle, rim[i], rim[(i + 1) % n], rim[(i + 1) % n] }.Select((p, k) => FormattableString.Invariant($"1{k}|{p.X}|2{k}|{p.Y}|3{k}|{p.Z}|")))));
            ReadResult read = Read(folder, fan, "layer: A, kind: solid");
            Obstruction body = Only(read);
            bent += read.Problems.Any(p => p.Message.Contains("not convex", StringComparison.Ordinal)) ? 1 : 0;
            for (int k = 0; k < 300; k++)
            {
                int i = random.Next(n);
                double a = random.NextDouble(), b = random.NextDouble() * (1 - a);
                (double X, double Y) p = (middle.X + a * (rim[i].X - middle.X) + b * (rim[(i + 1) % n].X - middle.X), middle.Y + a * (rim[i].Y - middle.Y) + b * (rim[(i + 1) % n].Y - middle.Y));
                Assert.True(Outside(body, [p]) <= 1e-6);
            }
        }
        Assert.True(bent > 30, $"{bent} bodies were split");
    }

    [Fact]
    public void Names_are_apart_over_all_blocks_and_a_thing_taken_twice_is_a_fault()
    {
        using var folder = new InputFolder();
        string drawn = "0|CIRCLE|5|A1|8|A|10|20|20|-12|40|1|0|TEXT|5|A2|8|A|10|20|20|-12|40|1|1|S1|0|CIRCLE|5|B1|8|B|10|60|20|-12|40|1|0|TEXT|5|B2|8|B|10|60|20|-12|40|1|1|S1|";
        string Two(string second) => Yaml("layer: A, kind: shaft, bottom: 90, top: 118") + $"  - from_dxf: {{file: base.dxf, layer: {second}, kind: shaft, bottom: 90, top: 118}}\n";
        folder.With("base.dxf", Dxf(drawn, "", "2"));
        Assert.Equal(["S1", "S1 (2)"], folder.Read(Two("B")).Project!.Obstructions.Select(o => o.Name));
        Assert.Contains(folder.Read(Two("A")).Problems, p => p.Code == "R20" && p.Message.Contains("the name \"S1\" is used twice", StringComparison.Ordinal));
    }

    [Fact]
    public void Pipes_take_their_elevations_from_the_drawing_and_curves_make_them_wider()
    {
        using var folder = new InputFolder();
        string pipe = "0|POLYLINE|5|8|8|A|66|1|10|0|20|0|30|0|70|8|0|VERTEX|8|A|10|10|20|-14|30|108|70|32|0|VERTEX|8|A|10|90|20|-15|30|107|70|32|0|SEQEND|8|A|";
        Obstruction straight = Only(Read(folder, pipe, "layer: A, kind: pipe, diameter: 24 in"));
        Assert.Equal([108, 107], straight.Shape.Select(p => p.Z));
        Assert.Equal(2, straight.Diameter);
        Obstruction bent = Only(Read(folder, "0|ARC|5|2|8|A|10|70|20|-40|40|30|50|10|51|170|", "layer: A, kind: pipe, diameter: 24 in, elevation: 108"));
        Assert.True(Enumerable.Range(0, 2000).Max(i => bent.Solids.Min(s => s.SignedDistance(new Vector3D(-40 + 31 * Math.Sin(0.175 + i * 0.0014), 70 + 31 * Math.Cos(0.175 + i * 0.0014), 108)))) < 1e-3);
        Assert.Contains(Read(folder, "0|LINE|5|2|8|A|10|0|20|-9|30|0|11|50|21|-9|31|0|", "layer: A, kind: pipe, diameter: 24 in").Problems, p => p.Message.Contains("it is drawn at elevation 0: give elevation", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_matching_points_place_a_drawing()
    {
        using var folder = new InputFolder();
        // Turned by 90 degrees and moved: x of the drawing runs north.
        Obstruction shaft = Only(Read(folder, "0|CIRCLE|5|1|8|A|10|-12|20|-55|40|1.5|", "layer: A, kind: shaft, bottom: 90, top: 118, match: [[0, 0, 0, 0], [10, 0, 10, 0]]"));
        Assert.Equal(new Vector3D(-12, 55, 118), shaft.Shape[0]);
        Obstruction turned = Only(Read(folder, "0|CIRCLE|5|1|8|A|10|-12|20|-55|40|1.5|", "layer: A, kind: shaft, bottom: 90, top: 118, rotate: 90, shift_northing: 2, shift_easting: 1"));
        Assert.Equal(-10, turned.Shape[0].N, 1e-9);
        Assert.Equal(56, turned.Shape[0].E, 1e-9);
    }

    [Theory]
    [InlineData("0|CIRCLE|5|1|8|A|10|50|20|-12|40|1.5|0|TEXT|5|2|8|T|10|50|20|-12|40|0.3|1|P-7|", "P-7")]
    [InlineData("0|CIRCLE|5|1|8|A|10|50|20|-12|40|1.5|0|MTEXT|5|2|8|T|10|50|20|-12|40|0.3|1|{\\fArial|b0;\\LP-8}|", "P-8")]
    [InlineData("0|CIRCLE|5|1|8|A|10|50|20|-12|40|1.5|0|TEXT|5|2|8|T|10|58|20|-12|40|0.3|1|P-7|", "A1")]
    public void A_text_inside_names_a_figure(string entities, string name)
    {
        using var folder = new InputFolder();
        Assert.Equal(name, Only(Read(folder, entities.Replace("Arial|b0", "Arial", StringComparison.Ordinal), "layer: A, kind: shaft, bottom: 90, top: 118")).Name);
    }

    [Fact]
    public void Unknown_units_other_kinds_and_empty_layers_are_told()
    {
        using var folder = new InputFolder();
        const string Circle = "0|CIRCLE|5|1|8|A|10|50|20|-12|40|1.5|";
        Assert.Contains(Read(folder, Circle, units: "0").Problems, p => p.Code == "I04" && p.Hint == "say it: units: ft");
        Assert.Contains(Read(folder, Circle, "layer: B, kind: shaft, bottom: 90, top: 118").Problems, p => p.Code == "I03" && p.Message == "the drawing has nothing on layer \"B\"" && p.Hint == "layers with figures: A");
        Assert.Contains(Read(folder, Circle, "layer: A, kind: shaft").Problems, p => p.Code == "I05" && p.Message.Contains("circle 1 on layer A is left out: the drawing gives it no height", StringComparison.Ordinal));
        Assert.Contains(Read(folder, Circle + "0|3DSOLID|5|2|8|A|0|CIRCLE|5|3|8|A|10|60|20|-12|40|0|").Problems, p => p.Code == "I05" && p.Message.Contains("3dsolid 2 on layer A is left out", StringComparison.Ordinal));
        Assert.Contains(folder.With("base.dxf", "AC1032\0\0").Read(Yaml("layer: A, kind: shaft, bottom: 90, top: 118")).Problems, p => p.Code == "I02" && p.Hint.StartsWith("save it as DXF, in any release", StringComparison.Ordinal));
        Assert.Contains(Read(folder, Circle, "layer: A, kind: shaft, bottom: 90, top: 118, units: m").Problems, p => p.Code == "I06");
    }

    [Fact]
    public void A_layout_line_follows_a_polyline_with_arcs()
    {
        using var folder = new InputFolder();
        string dxf = Dxf("0|LWPOLYLINE|5|1|8|WL|90|4|70|0|10|1000|20|5000|10|1100|20|5000|42|0.4142135623730951|10|1150|20|5050|10|1150|20|5150|0|LINE|5|2|8|X|10|0|20|0|11|1|21|1|", "", "2");
        WallProject read = folder.With("base.dxf", dxf).Project(InputFolder.Yaml("from_dxf: {file: base.dxf, layer: WL, station: 10+00}", "[[10+00, 118], [12+70, 118]]", "[10+00, 12+70]", bottom: "100"));
        LayoutLine line = read.LayoutLines[0];
        Assert.Equal(3, line.Pieces.Count);
        Assert.Empty(line.Corners);
        Assert.Equal(-1 / 50.0, line.Pieces[1].Curvature, 1e-12);
        Assert.Equal(200 + 25 * Math.PI, line.Length, 1e-9);
        Vector2D end = line.PointAt(line.Length) + read.Origin;
        Assert.Equal(5150, end.N, 1e-8);
        Assert.Equal(1150, end.E, 1e-8);
        LayoutLine back = folder.Project(InputFolder.Yaml("from_dxf: {file: base.dxf, layer: WL, station: 10+00, reverse: true}", "[[10+00, 118], [12+70, 118]]", "[10+00, 12+70]", bottom: "100")).LayoutLines[0];
        Assert.Equal(1 / 50.0, back.Pieces[1].Curvature, 1e-12);
        Assert.Equal(Math.PI, back.Pieces[0].Azimuth, 1e-9);
    }
}
