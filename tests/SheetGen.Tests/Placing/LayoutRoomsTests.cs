using System.Reflection;
using System.Runtime.InteropServices;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
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

    /// <summary>
    /// What is named a place along the line, a station or an elevation has its type, in every parameter, field and property, those of local functions too:
    /// plain numbers are lengths.
    /// </summary>
    [Theory]
    [InlineData("Rows", 60)]
    [InlineData("Clearance", 3)]
    [InlineData("Placing", 20)]
    public void Places_stations_and_elevations_have_their_types(string room, int least)
    {
        const BindingFlags all = BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        (string Where, string? Name, Type Type)[] found = [.. typeof(Placer).Assembly.GetTypes().Where(t => InRoom(t.Namespace, room)).SelectMany(t =>
            t.GetMethods(all).Cast<MethodBase>().Concat(t.GetConstructors(all)).SelectMany(m => m.GetParameters().Select(p => ($"{t.Name}.{m.Name}", p.Name, p.ParameterType)))
                .Concat(t.GetFields(all).Select(f => (t.Name, (string?)f.Name, f.FieldType))).Concat(t.GetProperties(all).Select(p => (t.Name, (string?)p.Name, p.PropertyType))))];

        Assert.DoesNotContain(found, f => f.Name?.TrimStart('_').ToUpperInvariant() is "ALONG" or "STATION" or "ELEVATION" && IsOfNumbers(f.Type));
        Assert.InRange(found.Count(f => f.Type == typeof(Along) || f.Type == typeof(Station) || f.Type == typeof(Elevation)), least, int.MaxValue);
    }

    /// <summary>Nothing turns into one of the three, or one of them into a number, unasked; two of them have a difference, which is a length, and no sum.</summary>
    [Theory]
    [InlineData(typeof(Along))]
    [InlineData(typeof(Station))]
    [InlineData(typeof(Elevation))]
    public void Places_stations_and_elevations_do_not_mix(Type type)
    {
        MethodInfo[] operators = [.. type.GetMethods(BindingFlags.Static | BindingFlags.Public).Where(m => m.IsSpecialName)];

        Assert.DoesNotContain(operators, m => m.Name is "op_Implicit" or "op_Explicit");
        Assert.All(operators, m => Assert.All(m.GetParameters(), p => Assert.True(p.ParameterType == type || p.ParameterType == typeof(double))));
        Assert.All(operators.Where(m => m.Name == "op_Addition"), m => Assert.Equal(typeof(double), m.GetParameters()[1].ParameterType));
        MethodInfo difference = Assert.Single(operators, m => m.Name == "op_Subtraction" && m.GetParameters()[1].ParameterType == type);
        Assert.Equal(typeof(double), difference.ReturnType);
        Assert.Equal(sizeof(double), Marshal.SizeOf(type));
    }

    /// <summary>True for a number, and for whatever holds numbers.</summary>
    private static bool IsOfNumbers(Type type) =>
        type == typeof(double) || (type.HasElementType && IsOfNumbers(type.GetElementType()!)) || type.GetGenericArguments().Any(IsOfNumbers);

    private static bool InRoom(string? space, string room) =>
        space is { } && (space == $"SheetGen.Layout.{room}" || space.StartsWith($"SheetGen.Layout.{room}.", StringComparison.Ordinal));
}
