using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

public sealed class WholeFileTests
{
    private static readonly string CasePath = Repository.PathOf("tests", "SheetGen.Tests", "Cases", "bridge-wall.yaml");

    [Fact]
    public void A_wall_file_with_every_kind_of_block_reads_with_no_more_than_what_is_straight_beside_its_arc()
    {
        ReadResult result = ProjectReader.Read(CasePath);

        // What is straight beside the arc is said to be so.
        Assert.All(result.Problems, p => Assert.Equal("R58", p.Code));
        WallProject project = result.Project!;
        Assert.Equal(new Vector2D(5000, 2000), project.Origin);
        Wall wall = Assert.Single(project.Walls);
        Assert.Equal(0, wall.Start);
        Assert.Equal(160, wall.End);
        Assert.Equal(["A", "B"], wall.Sections.Select(s => s.Name));
        Assert.Equal(6, project.Obstructions.Count);
        Assert.Equal(0.5, wall.Sections[0].HoleDiameter);
        Assert.Equal(75, wall.Sections[0].Bar.Grade);
        Assert.Equal(0.05, wall.Sections[0].TestNails.ProofShare);
    }
}
