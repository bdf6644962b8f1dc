using SheetGen.Layout.Placing;
using SheetGen.Model;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>A redirect beyond the field tolerance keeps its reach: L' = max(L, L cos(i0) / (cos(i) cos(a))), rounded up. i0 = 15 degrees.</summary>
public sealed class LengthTests
{
    [Theory]
    [InlineData(24, 0, 15, 24)]
    [InlineData(24, 10, 15, 24)]
    [InlineData(24, 10, 25, 24)]
    [InlineData(24, 25, 15, 27)] // 24 / cos 25 = 26.48
    [InlineData(24, -25, 15, 27)]
    [InlineData(24, 20, 25, 28)] // 24 cos 15 / (cos 25 cos 20) = 27.22
    [InlineData(24, 11, 5, 24)] // 24 cos 15 / (cos 5 cos 11) = 23.71
    [InlineData(20, 30, 15, 24)] // 20 / cos 30 = 23.09
    public void Length_of_a_redirect(double length, double splay, double inclination, double expected)
    {
        Assert.Equal(expected, Length(new PlacingWall().Project, length, splay, inclination), 9);
        Assert.Equal(length, Length(new PlacingWall { Blocks = ["rules: {redirect: {lengthen: false}}"] }.Project, length, splay, inclination), 9);
    }

    private static double Length(WallProject project, double length, double splay, double inclination)
    {
        Section section = project.Walls[0].Sections[0];
        Turning turning = Turnings.Make(section, project.Rules.Redirect, splay, inclination, inclination - section.Inclination);
        return Turnings.LengthOf(turning, length, project.Rules.LengthIncrement);
    }
}
