using System.Globalization;
using FsCheck;
using FsCheck.Xunit;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

/// <summary>Entities seen from behind: extrusion (0, 0, -1), where X runs the other way.</summary>
public class ExtrusionTests
{
    private static readonly string[] Behind = ["210", "0", "220", "0", "230", "-1"];

    [Fact]
    public void Flat_entities_are_turned_over()
    {
        var model = Model(["0", "CIRCLE", "10", "3", "20", "4", "40", "1", .. Behind]);
        Assert.Equal([new DxfCircle("0", new(-3, 4), 1)], model);

        model = Model(["0", "LWPOLYLINE", "10", "1", "20", "2", "42", "0.5", "10", "3", "20", "4", .. Behind]);
        Assert.Equal([new DxfPolyline("0", [new(new(-1, 2), -0.5), new DxfPoint(-3, 4)])], model);
    }

    [Fact]
    public void World_coordinates_stay()
    {
        Assert.Equal([new DxfLine("0", new(1, 2), new(3, 4))], Model(["0", "LINE", "10", "1", "20", "2", "11", "3", "21", "4", .. Behind]));
        Assert.Equal([new DxfPointEntity("0", new(1, 2))], Model(["0", "POINT", "10", "1", "20", "2", .. Behind]));
    }

    [Property(MaxTest = 100)]
    public void Arcs_cover_the_mirrored_points(short from, short to)
    {
        var (start, end) = (from % 360, to % 360);
        var arc = (DxfArc)Model(["0", "ARC", "10", "3", "20", "4", "40", "2", "50", Text(start), "51", Text(end), .. Behind]).Single();

        var sweep = ((end - start) % 360 + 360) % 360;
        var read = ((arc.EndAngle - arc.StartAngle) % 360 + 360) % 360;
        Assert.Equal(sweep, read, 9);
        for (var step = 0; step <= 10; step++)
        {
            // A point of the arc in its own plane; X turned over it must lie as far from the end of the arc read.
            var own = new DxfPoint(3, 4) + new DxfPoint(2, 0).Rotated(start + (sweep * step / 10.0));
            var seen = arc.Center + new DxfPoint(arc.Radius, 0).Rotated(arc.EndAngle - (read * step / 10.0));
            Assert.Equal(0, (new DxfPoint(-own.X, own.Y) - seen).Length, 9);
        }
    }

    [Property(MaxTest = 100)]
    public void Inserts_put_their_points_where_the_plane_says(short angle, PositiveInt sx, PositiveInt sy)
    {
        var (scaleX, scaleY, turn) = (sx.Get / 4.0, -sy.Get / 4.0, angle / 7.0);
        var content = ReaderTests.Lines("0", "SECTION", "2", "BLOCKS", "0", "BLOCK", "2", "B", "0", "POINT", "0", "ENDBLK", "0", "ENDSEC")
            + ReaderTests.Entities("0", "INSERT", "2", "B", "10", "5", "20", "6", "41", Text(scaleX), "42", Text(scaleY), "50", Text(turn), "210", "0", "220", "0", "230", "-1");
        var insert = (DxfInsert)ReaderTests.Read(content).Document!.Model.Single();

        var local = new DxfPoint(1.5, 2.5);
        var own = new DxfPoint(5, 6) + new DxfPoint(local.X * scaleX, local.Y * scaleY).Rotated(turn);
        var seen = insert.Position + new DxfPoint(local.X * insert.ScaleX, local.Y * insert.ScaleY).Rotated(insert.Rotation);
        Assert.Equal(0, (new DxfPoint(-own.X, own.Y) - seen).Length, 6);
    }

    [Fact]
    public void Tilted_circles_are_left_out_and_tilted_outlines_are_projected()
    {
        // Extrusion along +Y: by the format's rule the plane's X is world -X and its Y is world Z.
        var result = ReaderTests.Read(ReaderTests.Entities(
            "0", "CIRCLE", "40", "1", "210", "0", "220", "1", "230", "0",
            "0", "LWPOLYLINE", "38", "7", "10", "1", "20", "0", "10", "2", "20", "0", "210", "0", "220", "1", "230", "0"));

        Assert.Equal([new DxfPolyline("0", [new DxfPoint(-1, 7), new DxfPoint(-2, 7)])], result.Document!.Model);
        Assert.Equal("CIRCLE is not parallel to the XY plane; it is left out", Assert.Single(result.Warnings).Message);
    }

    private static List<DxfEntity> Model(params string[] groups) => ReaderTests.Read(ReaderTests.Entities(groups)).Document!.Model;

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
