using SheetGen.Layout.Neighbours;
using SheetGen.Model;
using SheetGen.Model.Corridors;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Corridors;

/// <summary>Walls of different files against each other.</summary>
public sealed class NeighbourTests
{
    private const double Foot = Lengths.MetresPerFoot;

    /// <summary>Each pair of holes of two files that the rules forbid is told once, whatever the order of the files: against measuring every pair.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(2_000_000)]
    public void Clashes_are_those_of_measuring_every_pair(double northing)
    {
        var random = new Random(18);
        NeighbourSet[] sets = [.. Enumerable.Range(0, 6).Select(i => Set("S" + i, Holes(random, 60, northing, i * 9), Rules.Default(LengthUnit.Foot)))];

        IReadOnlyList<Clash> found = Neighbours.Check(sets);

        var expected = new List<string>();
        for (int a = 0; a < sets.Length; a++)
        {
            for (int b = a + 1; b < sets.Length; b++)
            {
                expected.AddRange(from p in sets[a].Holes from q in sets[b].Holes where Sampled(p.Hole, q.Hole) < 0.5 - 1e-3 select Pair(sets[a].Name, p.Mark, sets[b].Name, q.Mark));
            }
        }
        Assert.True(expected.Count > 20);
        string[] told = [.. found.Select(c => Pair(c.Wall, c.Nail, c.OtherWall, c.Other))];
        Assert.Equal(told.Distinct().Count(), told.Length);
        Assert.Equal([], expected.Except(told));
        Assert.All(found, c => Assert.True(c.Clear < 0.5 && c.Required == 0.5 || Math.Abs(c.Required - 0.5) < 1e-12, c.Message));
        // Sampling is never too small, so a pair told that it does not see lies just under the limit.
        Assert.All(found.Where(c => !expected.Contains(Pair(c.Wall, c.Nail, c.OtherWall, c.Other))), c => Assert.InRange(c.Clear, 0.49, 0.5));

        string[] turned = [.. Neighbours.Check([.. sets.Reverse()]).Select(c => Pair(c.OtherWall, c.Other, c.Wall, c.Nail))];
        Assert.Equal(told.Order(StringComparer.Ordinal), turned.Order(StringComparer.Ordinal));
    }

    /// <summary>A file in feet beside one in metres is the same as beside the same file in feet.</summary>
    [Fact]
    public void Files_in_feet_and_in_metres_meet_in_common_coordinates()
    {
        var random = new Random(3);
        NeighbourHole[] a = Holes(random, 50, 0, 0), b = Holes(random, 50, 0, 9);
        NeighbourHole[] metric = [.. b.Select(h => h with { Hole = new Hole(h.Hole.Head * Foot, h.Hole.Direction, h.Hole.Length * Foot, h.Hole.Radius * Foot, h.Hole.Drift) })];
        Rules foot = Rules.Default(LengthUnit.Foot), metre = Rules.Default(LengthUnit.Metre) with { NailClearance = 0.5 * Foot };

        IReadOnlyList<Clash> same = Neighbours.Check([Set("A", a, foot), Set("B", b, foot)]);
        IReadOnlyList<Clash> mixed = Neighbours.Check([Set("A", a, foot), Set("B", metric, metre, LengthUnit.Metre)]);

        Assert.NotEmpty(same);
        Assert.Equal(same.Select(c => (c.Nail, c.Other, Math.Round(c.Clear, 6), c.Unit, c.Message)), mixed.Select(c => (c.Nail, c.Other, Math.Round(c.Clear, 6), c.Unit, c.Message)));
    }

    [Fact]
    public void Walls_of_different_coordinate_systems_are_left_alone()
    {
        NeighbourHole[] holes = Holes(new Random(5), 20, 0, 0);
        Rules rules = Rules.Default(LengthUnit.Foot);
        Assert.NotEmpty(Neighbours.Check([Set("A", holes, rules), Set("B", holes, rules)]));
        Assert.Empty(Neighbours.Check([Set("A", holes, rules), Set("B", holes, rules) with { System = "other" }]));
    }

    [Theory]
    [InlineData("", "Heron North Central", "", " HERON  north Central ", true)]
    [InlineData("", "", "", "", true)]
    [InlineData("", "Heron North Central", "", "", false)]
    [InlineData("creek survey", "", "", "creek survey", false)]
    public void Coordinate_systems_are_one_whatever_their_case_and_blanks(string coordinates, string zone, string others, string otherZone, bool same) =>
        Assert.Equal(same, CoordinateSystem.Of(coordinates, zone).Key == CoordinateSystem.Of(others, otherZone).Key);

    /// <summary>A file without nails, such as one that holds the utilities, was once left out of the check with all that stands in it.</summary>
    [Fact]
    public void What_stands_in_a_file_without_nails_counts()
    {
        const string Pipe = "obstructions:\n  - {name: Main, kind: pipe, points: [{northing: 4990, easting: 1990, elevation: 103}, {northing: 4990, easting: 2040, elevation: 103}], diameter: 2}\n";
        NeighbourHole hole = new("A-1-01", new Hole(new(5000, 2004, 105), new Vector3D(-Math.Cos(0.2), 0, -Math.Sin(0.2)), 20, 0.25, 0));
        foreach (bool first in new[] { true, false })
        {
            NeighbourSet nails = OfText("A", WallText("A", 5000, "right"), [hole]), utilities = OfText("U", WallText("U", 5600, "right") + Pipe, []);
            Clash clash = Assert.Single(Neighbours.Check(first ? [utilities, nails] : [nails, utilities]));
            Assert.Equal(("A-1-01", "U", "Main"), (clash.Nail, clash.OtherWall, clash.Other));
        }
    }

    /// <summary>The stricter of both files counts.</summary>
    [Fact]
    public void The_stricter_file_counts()
    {
        Hole first = new(new(0, 0, 0), new(1, 0, 0), 20, 0.25, 0), second = first with { Head = new(0, 1.4, 0) };
        Rules loose = Rules.Default(LengthUnit.Foot), strict = loose with { NailClearance = 1 };
        Assert.Empty(Neighbours.Check([Set("A", [new("a", first)], loose), Set("B", [new("b", second)], loose)]));
        Clash clash = Assert.Single(Neighbours.Check([Set("A", [new("a", first)], loose), Set("B", [new("b", second)], strict)]));
        Assert.Equal((FindingCode.NailNail, "a", "b"), (clash.Code, clash.Nail, clash.Other));
        Assert.Equal(0.9, clash.Clear, 9);
        Assert.Equal(1, clash.Required, 9);
    }

    /// <summary>
    /// A pipe that only the neighbour's file holds is found, once for each nail although two neighbours hold it; one that the nail's own file
    /// holds too is that file's own matter, and so is a face.
    /// </summary>
    [Fact]
    public void Obstructions_and_faces_of_other_files_count_once()
    {
        const string Pipe = "obstructions:\n  - {name: Main, kind: pipe, points: [{northing: 4990, easting: 1990, elevation: 103}, {northing: 4990, easting: 2040, elevation: 103}], diameter: 2}\n";
        string near = WallText("A", 5000, "right"), far = WallText("B", 5300, "right") + Pipe, third = WallText("C", 5600, "right") + Pipe.Replace("Main", "Water", StringComparison.Ordinal);
        NeighbourHole[] holes = [.. Enumerable.Range(1, 4).Select(i => new NeighbourHole("A-1-0" + i, new Hole(new(5000, 2000 + 4 * i, 105), new Vector3D(-Math.Cos(0.2), 0, -Math.Sin(0.2)), 20, 0.25, 0)))];
        NeighbourHole[] away = [new("X", new Hole(new(5300, 2004, 105), new(-1, 0, 0), 10, 0.25, 0))], farther = [new("Y", new Hole(new(5600, 2004, 105), new(-1, 0, 0), 10, 0.25, 0))];

        IReadOnlyList<Clash> found = Neighbours.Check([OfText("A", near, holes), OfText("B", far, away), OfText("C", third, farther)]);
        Assert.Equal(holes.Select(h => (h.Mark, "B", "Main", FindingCode.NailObstruction)), found.Select(c => (c.Nail, c.OtherWall, c.Other, c.Code)));

        Assert.Empty(Neighbours.Check([OfText("A", near + Pipe, holes), OfText("B", far, away), OfText("C", third, farther)]));

        // A wall 15 behind the first one, which its holes cross.
        string behind = WallText("D", 4985, "left");
        IReadOnlyList<Clash> faces = Neighbours.Check([OfText("A", near, holes), OfText("D", behind, [new("Z", new Hole(new(4985, 2028, 105), new(1, 0, 0), 1, 0.25, 0))])]);
        Assert.Equal(holes.Select(h => (h.Mark, "D", FindingCode.NailFace)), faces.Select(c => (c.Nail, c.OtherWall, c.Code)));
        Assert.All(faces, c => Assert.InRange(c.Depth, 15.2, 15.4));
        Assert.All(faces, c => Assert.InRange(c.Northing, 4984.99, 4985.01));
    }

    internal static string WallText(string name, double northing, string side) => FormattableString.Invariant($$"""
        format: 1
        project: {title: Wall {{name}}, units: ft}
        layout_lines:
          - name: L
            start: {station: 10+00, northing: {{northing}}, easting: 2000, azimuth: 90}
            elements: [{line: 30}]
        walls:
          - name: {{name}}
            layout_line: L
            retained_side: {{side}}
            stations: [10+00, 10+30]
            top: [[10+00, 110], [10+30, 110]]
            bottom: {steps: [[10+00, 100]]}
            sections:
              - {name: A, stations: [10+00, 10+30], horizontal_spacing: 4, vertical_spacing: 4, top_row_depth: 2, inclination: 10, lengths: 16, bar: {size: "#8", grade: 75}, hole: 6 in}

        """);

    private static NeighbourSet OfText(string name, string text, NeighbourHole[] holes)
    {
        ReadResult read = ProjectReader.ReadText(text, name + ".yaml");
        Assert.True(read.Project is not null, string.Join("\n", read.Problems.Select(ProblemPrinter.Plain)));
        return new NeighbourSet(name, "", LengthUnit.Foot, holes, new Bounds(new(4000, 1000, 0), new(6000, 3000, 0)), new Lazy<WallProject?>(read.Project));
    }

    private static string Pair(string a, string p, string b, string q) => $"{a} {p} / {b} {q}";

    private static NeighbourSet Set(string name, NeighbourHole[] holes, Rules rules, LengthUnit unit = LengthUnit.Foot)
    {
        Bounds box = holes.Select(h => Bounds.Of(h.Hole)).Aggregate((a, b) => a.With(b));
        var project = new WallProject { Info = new ProjectInfo(name, "", new Dictionary<string, string>()), Unit = unit, Origin = default, LayoutLines = [], Walls = [], Rules = rules };
        return new NeighbourSet(name, "", unit, holes, box, new Lazy<WallProject?>(project));
    }

    private static NeighbourHole[] Holes(Random random, int count, double northing, double shift)
    {
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            double splay = Between(-0.6, 0.6), down = Between(0.1, 0.4);
            var direction = new Vector3D(Math.Cos(down) * Math.Cos(splay), Math.Cos(down) * Math.Sin(splay), -Math.Sin(down));
            return new NeighbourHole("N" + i, new Hole(new Vector3D(northing + shift + Between(-3, 3), Between(0, 60), Between(0, 15)), direction, Between(12, 24), 0.25, 0));
        })];
    }

    /// <summary>The slow twin: the least of many pairs of points.</summary>
    private static double Sampled(Hole a, Hole b)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i <= 200; i++)
        {
            Vector3D p = a.At(a.Length * i / 200) - b.Head;
            double v = Math.Clamp(p.Dot(b.Direction), 0, b.Length);
            least = Math.Min(least, (p - b.Direction * v).Length - a.Radius - b.Radius);
        }
        return least;
    }
}
