using SheetGen.Layout.Placing;
using SheetGen.Model;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Directions of a nail: which there are, in what order, which are noted, and how long the nail gets in them.</summary>
public sealed class TurningTests
{
    private static readonly WallProject Project = new PlacingWall
    {
        Blocks = ["rules:", "  redirect: {field_tolerance: 10, step: 5, maximum: 20, inclination: [5, 20]}"],
    }.Project;

    private static Section Section => Project.Walls[0].Sections[0];

    private static Turnings All => new(Section, Project.Rules);

    // Inclination 15, from 5 to 20: three changes below, the straight one, one above; nine splays each.
    [Fact]
    public void Directions_are_the_whole_steps_inside_of_the_window_cheapest_first()
    {
        Turning[] all = [.. All.All];
        Assert.Equal(4 * 9, all.Length);
        Assert.Equal([5, 10, 15, 20], all.Select(t => t.Inclination).Distinct().Order());
        Assert.Equal([-20, -15, -10, -5, 0, 5, 10, 15, 20], all.Select(t => t.Splay).Distinct().Order());
        Turning[] sorted = [.. all.OrderBy(t => t.IsNoted).ThenBy(t => Math.Abs(t.Splay) + Math.Abs(t.Inclination - 15)).ThenBy(t => Math.Abs(t.Inclination - 15)).ThenByDescending(t => t.Inclination).ThenBy(t => t.Splay)];
        Assert.Equal(sorted.Select(t => (t.Splay, t.Inclination)), all.Select(t => (t.Splay, t.Inclination)));
        Assert.Equal((0, 15), (all[0].Splay, all[0].Inclination));
        Assert.All(all, t => Assert.Equal(Math.Abs(t.Splay) > 10 || Math.Abs(t.Inclination - 15) > 10, t.IsNoted));
        Assert.All(all, t => Assert.Equal(Cost.Degrees(Math.Abs(t.Splay) + Math.Abs(t.Inclination - 15)), t.Effort));
        Assert.All(all, t => Assert.Equal(1, t.Inward * t.Inward + t.UpStation * t.UpStation + t.Down * t.Down, 1e-12));
        Assert.All(all, t => Assert.Equal((Math.Sign(t.Splay), true, true), (Math.Sign(t.UpStation), t.Inward > 0, t.Down > 0)));
    }

    // The tolerance of 10 degrees is kept to rounding, whatever the steps: a pinned nail may be turned by any amount.
    [Theory]
    [InlineData(10, 0, false)]
    [InlineData(10.005, 0, true)]
    [InlineData(-10.005, 0, true)]
    [InlineData(0, 10, false)]
    [InlineData(0, -10.005, true)]
    public void A_turn_is_noted_over_the_field_tolerance(double splay, double change, bool noted) =>
        Assert.Equal(noted, Turnings.Make(Section, Project.Rules.Redirect, splay, 15 + change, change).IsNoted);

    // L cos(i0) / (cos(i) cos(a)): 20 ft turned by 20 degrees reach as far with 20 / cos 20 = 21.28, by 20 and 5 flatter with 20 cos 15 / (cos 10 cos 20) = 20.88 ft, in steps of 1 ft: 22 and 21.
    [Fact]
    public void A_noted_nail_is_lengthened_to_reach_as_far()
    {
        double Length(double splay, double inclination) => Turnings.LengthOf(Turnings.Make(Section, Project.Rules.Redirect, splay, inclination, inclination - 15), 20, 1);
        Assert.Equal((20, 22, 21), (Length(10, 15), Length(20, 15), Length(20, 10)));
        RedirectRules kept = Project.Rules.Redirect with { Lengthen = false };
        Assert.Equal(20, Turnings.LengthOf(Turnings.Make(Section, kept, 20, 15, 0), 20, 1));
        Assert.Equal(1 / Math.Cos(20 * Math.PI / 180) * Math.Cos(15 * Math.PI / 180) / Math.Cos(20 * Math.PI / 180), All.GreatestLengthening, 1e-12);
    }

    // A length that is a whole number of increments is not rounded up to the next.
    [Theory]
    [InlineData(1.25, 20, 5, 25)]
    [InlineData(1.26, 20, 5, 30)]
    [InlineData(1, 20.3, 5, 20.3)]
    [InlineData(1.1, 20, 0.5, 22)]
    public void Lengths_are_rounded_up_to_the_increment(double stretch, double length, double increment, double expected) =>
        Assert.Equal(expected, Turnings.LengthOf(new Turning(20, 15, true, 0, stretch, 1, 0, 0), length, increment));

    [Fact]
    public void Coarse_directions_are_every_fifth_and_the_rim_is_the_flattest_and_the_steepest()
    {
        Turnings all = new(Section, Project.Rules with { Redirect = Project.Rules.Redirect with { Step = 1 } });
        Assert.Equal(16 * 41, all.Count);
        Assert.Equal([-10, -5, 0, 5], all.Coarse.Select(p => all[p].Inclination - 15).Distinct().Order());
        Assert.Equal([-20, -15, -10, -5, 0, 5, 10, 15, 20], all.Coarse.Select(p => all[p].Splay).Distinct().Order());
        Assert.Equal(4 * 9, all.Coarse.Count);
        Assert.Equal(all.Coarse.Order(), all.Coarse);
        Assert.Equal(2 * 41, all.Rim.Count);
        Assert.All(all.Rim, t => Assert.True(t.Inclination is 5 or 20));
    }

    [Fact]
    public void Directions_around_others_are_those_within_so_many_steps_and_the_straight_one()
    {
        Turnings all = All;
        Turning given = all.All.Single(t => t is { Splay: 15, Inclination: 10 });
        int[] near = all.Around([given], 2);
        Assert.Equal(near.Order(), near);
        (double, double)[] expected = [.. all.All.Where(t => t is { Splay: 0, Inclination: 15 } || (Math.Abs(t.Splay - 15) <= 10 && Math.Abs(t.Inclination - 10) <= 10)).Select(t => (t.Splay, t.Inclination))];
        Assert.Equal(expected, near.Select(p => (all[p].Splay, all[p].Inclination)));
        Assert.Equal([0], all.Around([], 2));
    }

    [Fact]
    public void A_pinned_nail_has_one_direction()
    {
        Turning turning = Turnings.Make(Section, Project.Rules.Redirect, 20, 15, 0);
        Turnings only = Turnings.Only(turning);
        Assert.Equal((1, turning, turning.Lengthening), (only.Count, only[0], only.GreatestLengthening));
        Assert.Equal([0], only.Coarse);
        Assert.Equal([turning], only.Rim);
        Assert.Equal([0], only.Around([turning], 2));
    }

    // The first numbers of SplitMix64 from seed 1234567, as they are widely printed (from memory).
    [Fact]
    public void Random_numbers_are_those_of_the_published_generator()
    {
        var random = new SplitMix(1234567);
        Assert.Equal([6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821], Enumerable.Range(0, 5).Select(_ => random.Next()));
    }

    [Fact]
    public void Random_choices_fill_their_range()
    {
        var random = new SplitMix(7);
        int[] counts = new int[6], early = new int[6];
        int chances = 0;
        for (int i = 0; i < 6000; i++)
        {
            counts[random.Below(6)]++;
            early[random.EarlyBelow(6)]++;
            chances += random.Chance(250) ? 1 : 0;
        }
        // Expected 1,000 each; the lesser of two numbers is k in (11 - 2 k) / 36 of the cases; 1,500 of 6,000 chances. Five standard deviations are 144, 173 and 168.
        Assert.All(counts, c => Assert.InRange(c, 856, 1144));
        Assert.All(Enumerable.Range(0, 6), k => Assert.InRange(early[k], 6000 * (11 - 2 * k) / 36 - 173, 6000 * (11 - 2 * k) / 36 + 173));
        Assert.InRange(chances, 1332, 1668);
        Assert.False(new SplitMix(1).Chance(0));
        Assert.True(new SplitMix(1).Chance(1000));
        // Each of the six orders of three things comes as often as the others.
        var orders = new Dictionary<string, int>();
        for (int i = 0; i < 6000; i++)
        {
            List<int> list = [0, 1, 2];
            random.Shuffle(list);
            string order = string.Concat(list);
            orders[order] = orders.GetValueOrDefault(order) + 1;
        }
        Assert.Equal(6, orders.Count);
        Assert.All(orders.Values, c => Assert.InRange(c, 856, 1144));
    }
}
