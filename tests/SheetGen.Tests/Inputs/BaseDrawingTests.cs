using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Outside;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>The demo with its obstructions from a base drawing (drawn by ezdxf) and its line from LandXML, against the demo as it was typed.</summary>
[Trait("Category", "Outside")]
public sealed class BaseDrawingTests
{
    private static readonly string Typed = Repository.Read("demo", "heron-street-bridge", "wall.yaml").ReplaceLineEndings("\n");

    private static WallProject Plain() => ProjectReader.ReadText(Typed, "wall.yaml").Project!;

    [Theory]
    [InlineData("R12", "plain", 1.0)]
    [InlineData("R12", "blocks", 12.0)]
    [InlineData("R2000", "plain", 1.0, "crlf")]
    [InlineData("R2000", "loops", 0.3048, "binary")]
    [InlineData("R2007", "mirrored", 1.0)]
    [InlineData("R2013", "nested", 12.0)]
    [InlineData("R2018", "blocks", 304.8)]
    [InlineData("R2018", "nested", 0.3048, "binary")]
    [InlineData("R12", "mirrored", 1.0, "binary")]
    public void Obstructions_of_a_base_drawing_are_those_that_were_typed(string version, string style, double factor, params string[] flags)
    {
        using var folder = new InputFolder();
        WallProject plain = Plain();
        ReadResult read = folder.Read(FromDrawing(folder, plain, version, style, factor, flags));
        Assert.Equal([], read.Problems.Where(p => p.Severity == Severity.Error || p.Code.StartsWith('I') && p.Severity != Severity.Notice).Select(ProblemPrinter.Plain));
        Assert.Equal(plain.Obstructions.Count, read.Problems.Count(p => p.Code == "I07" && p.Message.Contains("\" is the ", StringComparison.Ordinal)));
        Assert.Contains(read.Problems, p => p.Message.Contains("passed over", StringComparison.Ordinal) && p.Message.Contains("OTHER 1", StringComparison.Ordinal));
        foreach (Obstruction typed in plain.Obstructions)
        {
            Obstruction drawn = Assert.Single(read.Project!.Obstructions, o => Math.Abs(Spread(o, typed)) < 1e-6);
            Assert.Equal(typed.Solids.Count, drawn.Solids.Count);
            if (typed.Kind is not (ObstructionKind.Pipe or ObstructionKind.Boundary))
                Assert.Equal(typed.Name, drawn.Name);
            Assert.Equal(typed.Diameter, drawn.Diameter, 1e-7);
        }
    }

    [Fact]
    [Trait("Category", "Long")]
    public void The_demo_from_drawing_and_alignment_has_the_same_nails()
    {
        using var folder = new InputFolder();
        WallProject plain = Plain();
        string yaml = FromDrawing(folder, plain, "R2010", "plain", 12, []);
        LayoutLine line = plain.LayoutLines[0];
        var text = new StringBuilder(FormattableString.Invariant($"<LandXML version=\"1.2\"><Units><Imperial linearUnit=\"foot\"/></Units><Alignments><Alignment name=\"WL-1\" staStart=\"{line.StartStation}\"><CoordGeom>"));
        foreach (LayoutPiece piece in line.Pieces)
        {
            Vector2D a = piece.Point + plain.Origin, b = piece.PointAt(piece.End) + plain.Origin;
            text.Append(CultureInfo.InvariantCulture, $"<Line><Start>{a.N:R} {a.E:R}</Start><End>{b.N:R} {b.E:R}</End></Line>");
        }
        folder.With("line.xml", text + "</CoordGeom></Alignment></Alignments></LandXML>");
        yaml = Regex.Replace(yaml, @"    start: \{station: 9\+80.*?\n\nwalls:", "    from_landxml: {file: line.xml}\n\nwalls:", RegexOptions.Singleline, TimeSpan.FromSeconds(5));
        WallProject taken = folder.Read(yaml).Project!;
        Assert.Contains("from_landxml", yaml, StringComparison.Ordinal);

        IReadOnlyList<Nail> one = Placer.Place(plain, new PlacingOptions()).Nails, two = Placer.Place(taken, new PlacingOptions()).Nails;
        Assert.Equal(one.Select(Key), two.Select(Key));
        static (string, double, double, double, double, double, NailStatus) Key(Nail n) => (n.Mark, n.Station, n.Elevation, n.Splay, n.Inclination, n.Length, n.Status);
    }

    /// <summary>Largest difference of the corners of two obstructions' bounds.</summary>
    private static double Spread(Obstruction a, Obstruction b)
    {
        Bounds one = a.Solids.Select(s => s.Bounds).Aggregate((x, y) => x.With(y)), two = b.Solids.Select(s => s.Bounds).Aggregate((x, y) => x.With(y));
        double Gap(Vector3D p, Vector3D q) => double.IsInfinity(p.Z) ? new Vector2D(p.N - q.N, p.E - q.E).Length : (p - q).Length;
        return Math.Max(Gap(one.Low, two.Low), Gap(one.High, two.High));
    }

    /// <summary>Draws the obstructions and gives the demo's text with blocks that read them, a layer for each height.</summary>
    private static string FromDrawing(InputFolder folder, WallProject plain, string version, string style, double factor, string[] flags)
    {
        var shapes = new List<object>();
        var blocks = new StringBuilder("obstructions:\n");
        var layers = new Dictionary<string, string>();
        foreach (Obstruction o in plain.Obstructions)
        {
            string kind = o.Kind.ToString().ToLowerInvariant().Replace("beam", "solid", StringComparison.Ordinal);
            string more = o.Kind switch
            {
                ObstructionKind.Pipe => Invariant($"diameter: {o.Diameter:R}, name: {o.Name}"),
                ObstructionKind.Boundary => $"name: {o.Name}",
                _ => Invariant($"bottom: {o.Bottom:R}, top: {o.Top:R}") + (style is "plain" or "loops" ? "" : ", name_attribute: MARK"),
            };
            string key = kind + more;
            if (!layers.TryGetValue(key, out string? layer))
            {
                layers[key] = layer = "LAYER" + layers.Count;
                string units = version == "R12" ? $", units: {(factor == 12 ? "in" : factor == 1 ? "ft" : "m")}" : "";
                blocks.Append($"  - from_dxf: {{file: base.dxf, layer: {layer}, kind: {kind}, {more}{units}}}\n");
            }
            IEnumerable<Vector3D> points = o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile ? o.Shape.Take(1) : o.Shape;
            shapes.Add(new
            {
                layer,
                type = o.Kind switch { ObstructionKind.Shaft or ObstructionKind.Pile => "circle", ObstructionKind.Pipe or ObstructionKind.Boundary => "line", _ => "ring" },
                points = points.Select(p => new[] { p.E + plain.Origin.E, p.N + plain.Origin.N, o.Kind == ObstructionKind.Pipe ? p.Z : 0 }),
                radius = o.Diameter / 2,
                name = o.Name,
            });
        }
        folder.With("shapes.json", JsonSerializer.Serialize(shapes));
        OutsideResult drawn = OutsideReader.Script("make_base_drawing.py", "ezdxf").Run([folder.Of("shapes.json"), folder.Of("base.dxf"), version, style, factor.ToString(CultureInfo.InvariantCulture), .. flags]);
        Assert.True(drawn.ExitCode == 0, drawn.Errors);
        return Regex.Replace(Typed, @"obstructions:\n.*?\n(?=\S)", blocks.ToString(), RegexOptions.Singleline, TimeSpan.FromSeconds(5));
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
