using SheetGen.Model;
using SheetGen.Model.Geometry;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>Obstructions become the solids of the contract; the base's line runs east, its soil is to the south.</summary>
public sealed class ObstructionTests
{
    private static Obstruction Of(WallProject project, string name) => project.Obstructions.Single(o => o.Name == name);

    [Fact]
    public void A_vertical_shaft_is_a_cylinder_from_top_to_bottom()
    {
        Obstruction shaft = Of(BaseWall.Read(BaseWall.Text), "S1");

        var cylinder = (CylinderSolid)Assert.Single(shaft.Solids);
        AssertNear(new(-8, 32, 117), cylinder.End1);
        AssertNear(new(-8, 32, 70), cylinder.End2);
        Assert.Equal((1.5, 3.0, 117.0, 70.0), (cylinder.Radius, shaft.Diameter, shaft.Top, shaft.Bottom));
    }

    [Fact]
    public void An_inclined_shaft_has_its_upper_end_first_and_the_heights_of_its_tilted_ends()
    {
        Obstruction shaft = Of(BaseWall.Read(BaseWall.With(
            "at: {station: 10+32, offset: 8}, diameter: 3, top: 117, bottom: 70",
            "axis: [{northing: 4992, easting: 2062, elevation: 77}, {northing: 4992, easting: 2032, elevation: 117}], diameter: 10")), "S1");

        AssertNear(new(-8, 32, 117), shaft.Shape[0]);
        AssertNear(new(-8, 62, 77), shaft.Shape[1]);
        Assert.Equal(120, shaft.Top, 1e-9);
        Assert.Equal(74, shaft.Bottom, 1e-9);
    }

    [Fact]
    public void A_beam_is_a_rectangle_in_plan_along_its_centre_line()
    {
        var prism = (PrismSolid)Assert.Single(Of(BaseWall.Read(BaseWall.Text), "G1").Solids);

        Assert.Equal([(-2.0, 34.0), (-60.0, 34.0), (-60.0, 36.0), (-2.0, 36.0)], prism.Footprint.Select(p => (Math.Round(p.N, 9), Math.Round(p.E, 9))).OrderBy(p => p.Item2).ThenBy(p => p.Item1 * (p.Item2 < 35 ? -1 : 1)));
        Assert.Equal((119.0, 123.0), (prism.Bottom, prism.Top));
    }

    [Fact]
    public void A_pipe_is_a_chain_of_capsules_on_its_axis()
    {
        Obstruction pipe = Of(BaseWall.Read(BaseWall.With("{station: 10+55, offset: 14, elevation: 107}", "{station: 10+40, offset: 14, elevation: 107}, {station: 10+50, offset: 20, elevation: 106}")), "P1");

        CapsuleSolid[] capsules = [.. pipe.Solids.Cast<CapsuleSolid>()];
        Assert.Equal(2, capsules.Length);
        Assert.Equal(capsules[0].End2, capsules[1].End1);
        AssertNear(new(-14, 0, 108), capsules[0].End1);
        Assert.All(capsules, c => Assert.Equal(1, c.Radius));
        Assert.Equal((109.0, 105.0), (pipe.Top, pipe.Bottom));
    }

    [Fact]
    public void An_invert_elevation_is_raised_to_the_axis_by_half_the_bore()
    {
        Obstruction pipe = Of(BaseWall.Read(BaseWall.With("diameter: 2}", "diameter: 2, elevation_is: invert, bore: 18 in}")), "P1");

        Assert.Equal([108.75, 107.75], pipe.Shape.Select(p => p.Z));
        Assert.Equal(2, pipe.Diameter);
    }

    [Fact]
    public void A_boundary_is_a_chain_of_surfaces_without_heights_straight_also_beside_a_bend()
    {
        Obstruction boundary = Of(BaseWall.Read(BaseWall.Text), "ROW");

        var surface = (BoundarySolid)Assert.Single(boundary.Solids);
        AssertNear(new(-40, 0, 0), surface.End1.At(0));
        Assert.Equal((double.NegativeInfinity, double.PositiveInfinity), (boundary.Bottom, boundary.Top));
    }

    [Fact]
    public void Facts_of_a_utility_are_kept_in_the_order_of_the_key_table()
    {
        Obstruction pipe = Of(BaseWall.Read(BaseWall.With("name: P1, kind: pipe", "name: P1, kind: pipe, source: \"record, 1987\", state: abandoned, owner: Water works, quality_level: C")), "P1");

        Assert.Equal([new("owner", "Water works"), new("state", "abandoned"), new("quality_level", "C"), new("source", "record, 1987")], pipe.Facts);
    }

    private static void AssertNear(Vector3D expected, Vector3D actual) => Assert.True((expected - actual).Length < 1e-9, $"{expected} is not {actual}");
}
