using SheetGen.Layout.Advice;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>What each neighbourhood of the search is worth, and that the whole does not get worse unseen.</summary>
public sealed class NeighbourhoodTests
{
    private const ulong FirstOfRatchet = 73001;
    private const int Ratchet = 20;

    /// <summary>Walls that the search leaves worse without one of its neighbourhoods.</summary>
    /// <remarks>The single nail comes last and finds little that the others leave: its wall is searched without them.</remarks>
    public static TheoryData<string, ulong, string> Walls => new()
    {
        { "Stretch", 72001, "" },
        { "RowBeside", 72008, "" },
        { "RowAlone", 72001, "" },
        { "NewHeads", 72003, "" },
        { "Blockers", 72006, "" },
        { "Ejection", 72006, "" },
        { "RowsApart", 72006, "" },
        { "Travel", 72037, "" },
        { "SingleNail", 72008, "Blockers NewHeads RowBeside Ejection Stretch" },
    };

    [Trait("Category", "Long")]
    [Theory, MemberData(nameof(Walls))]
    public void A_wall_is_left_worse_without_one_neighbourhood(string name, ulong seed, string unused)
    {
        string[] others = unused.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Figures with = Of(seed, others), without = Of(seed, [.. others, name]);
        Assert.True(with.CompareTo(without) < 0, $"seed {seed}: {with} with {name}, {without} without it");
    }

    /// <summary>Small walls that are left worse without one of the neighbourhoods or stages, all others in use: quick ones, so that every round asks them.</summary>
    public static TheoryData<string, ulong> SmallWalls => new()
    {
        { "Stretch", 74204 },
        { nameof(RowBeside), 74204 },
        { nameof(RowAlone), 74204 },
        { nameof(NewHeads), 74207 },
        { nameof(Blockers), 74207 },
        { nameof(Ejection), 74207 },
        { nameof(Travel), 74006 },
        { nameof(RowsApart), 74010 },
        { nameof(SingleNail), 75434 },
    };

    [Theory, MemberData(nameof(SmallWalls))]
    public void A_small_wall_is_left_worse_without_one_neighbourhood(string name, ulong seed)
    {
        Figures Of(string[] without) => Figures.Of(Placer.Place(PlacingWall.Read(RecordedWalls.Crowded(seed, new PlacingOptions()).Yaml), new PlacingOptions { Without = without }));
        Figures with = Of([]), worse = Of([name]);
        Assert.True(with.CompareTo(worse) < 0, $"seed {seed}: {with} with {name}, {worse} without it");
    }

    [Fact]
    public void Every_neighbourhood_has_its_wall()
    {
        string[] all = [.. typeof(Placer).Assembly.GetTypes().Where(t => t.IsClass && typeof(INeighbourhood).IsAssignableFrom(t)).Select(t => t.Name), nameof(RowAlone), nameof(RowsApart), nameof(Travel), nameof(CoverShift)];
        // Walls for moves for cover are in CoverKeptTests.
        Assert.Equal(all.Order(StringComparer.Ordinal), Walls.Select(w => w.Data.Item1).Append(nameof(CoverShift)).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(all.Except([nameof(CoverShift)]).Order(StringComparer.Ordinal), SmallWalls.Select(w => w.Data.Item1).Order(StringComparer.Ordinal));
    }

    /// <summary>The sums were measured when they were committed; a change of the search that saves elsewhere may raise one of them, with the reason in the commit.</summary>
    [Fact]
    [Trait("Category", "Long")]
    public void Twenty_walls_cost_no_more_than_they_did()
    {
        Figures sum = default;
        for (int i = 0; i < Ratchet; i++)
            sum = sum.Plus(Of(FirstOfRatchet + (ulong)i, []));
        Assert.True(sum.CompareTo(new Figures(262, 231, 9715)) <= 0, $"{sum}");
    }

    /// <summary>With so few directions that the search ends while it may gain, notes and findings say where it ended.</summary>
    [Fact]
    public void A_search_that_ends_at_its_count_says_where()
    {
        int told = 0;
        for (ulong seed = 72001; seed <= 72005; seed++)
        {
            WallProject project = Crowded(seed);
            NailLayout layout = Placer.Place(project, new PlacingOptions { MostDirections = 1000 });
            string[] where = [.. layout.Notes.Where(n => n.Contains("the search stopped at its greatest count", StringComparison.Ordinal))];
            Assert.All(where, n => Assert.StartsWith(project.Walls[0].Name + ", ", n, StringComparison.Ordinal));
            Finding[] findings = [.. LayoutAdvice.Of(project, layout).Where(f => f.Message.Contains("the search stopped at its greatest count", StringComparison.Ordinal))];
            Assert.Equal(where, findings.Select(f => f.Message));
            Assert.All(findings, f => Assert.True(f.Severity == Severity.Notice && f.Station < f.ToStation));
            told += where.Length;
        }
        Assert.True(told > 0, $"{told} told");
    }

    private static WallProject Crowded(ulong seed) => PlacingWall.Read(RandomWall.Yaml(seed, new RandomWallOptions { Nails = 60, Plain = true, Obstructions = 18 }));

    internal static Figures Of(ulong seed, string[] without) => Figures.Of(Placer.Place(Crowded(seed), new PlacingOptions { Without = without }));

    internal readonly record struct Figures(int Unresolved, int Noted, double Effort) : IComparable<Figures>
    {
        public int CompareTo(Figures other) => (Unresolved, Noted, Math.Round(Effort, 6)).CompareTo((other.Unresolved, other.Noted, Math.Round(other.Effort, 6)));

        public static Figures Of(NailLayout layout) => new((int)layout.Score.Unresolved.Found, (int)layout.Score.Noted.Found, layout.Score.Effort.Found);

        public Figures Plus(Figures o) => new(Unresolved + o.Unresolved, Noted + o.Noted, Effort + o.Effort);
    }
}
