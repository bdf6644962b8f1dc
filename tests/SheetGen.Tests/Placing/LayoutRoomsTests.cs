using SheetGen.Layout.Placing;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>What the rooms of the layout show to the rest of the program: few names, and a checker that knows nothing of placing.</summary>
public class LayoutRoomsTests
{
    [Theory]
    [InlineData("Rows", "")]
    [InlineData("Placing", "Placer, PlacingOptions")]
    [InlineData("Clearance", "Checker, ClearanceScene, Obstacle")]
    [InlineData("Advice", "LayoutAdvice")]
    [InlineData("Neighbours", "NeighbourHole, NeighbourSet, Neighbours")]
    [InlineData("Quantities", "TakeOff")]
    [InlineData("Revisions", "AsBuilt, ClashPairs, Comparison, EditedLayout, EditedPins, PlanReview, TurnWindows")]
    public void A_room_shows_only_these_names(string room, string names)
    {
        string[] shown = [.. typeof(Placer).Assembly.GetExportedTypes().Where(t => InRoom(t.Namespace, room) && !t.IsNested).Select(t => t.Name).Order(StringComparer.Ordinal)];

        Assert.Equal(names, string.Join(", ", shown));
    }

    [Theory]
    [InlineData("Clearance", "Placing")]
    [InlineData("Rows", "Placing")]
    [InlineData("Rows", "Clearance")]
    public void Arrows_between_rooms_go_one_way(string from, string to)
    {
        string[] files = Directory.GetFiles(Repository.PathOf("src", "SheetGen.Layout", from), "*.cs", SearchOption.AllDirectories);

        Assert.NotEmpty(files);
        Assert.DoesNotContain(files, f => File.ReadAllText(f).Contains("SheetGen.Layout." + to, StringComparison.Ordinal) || File.ReadAllText(f).Contains($" {to}.", StringComparison.Ordinal));
    }

    private static bool InRoom(string? space, string room) =>
        space is { } && (space == $"SheetGen.Layout.{room}" || space.StartsWith($"SheetGen.Layout.{room}.", StringComparison.Ordinal));
}
