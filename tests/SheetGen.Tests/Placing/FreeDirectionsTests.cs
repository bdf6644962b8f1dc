using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>What is found for many directions at once is what the exact tests say of each.</summary>
public sealed class FreeDirectionsTests
{

    [Fact]
    public void DirectionsAreFreeWhereTheExactTestOfEachBodySaysSo()
    {
        int free = 0, struck = 0, byRods = 0;
        for (ulong seed = 4401; seed < 4407; seed++)
        {
            WallProject project = ProjectReader.ReadText(RandomWall.Yaml(seed, new RandomWallOptions { Nails = 60 }), "wall.yaml").Project!;
            project = project with { Rules = project.Rules with { Drift = seed % 2 == 0 ? 0.01 : 0 } };
            foreach (RowTask row in RowTasks.Make(new Site(project)))
            {
                for (int ordinal = 0; ordinal < row.Count; ordinal += 3)
                {
                    HeadChoice place = row.Choices[ordinal][^1];
                    if (place.IsPinned)
                        continue;
                    Obstacle[] near = row.Near(place);
                    for (int turning = 0; turning < place.Turnings.Count; turning += 7)
                    {
                        Hole hole = row.HoleAt(place, turning);
                        Obstacle? hit = Array.Find(near, o => HoleDistance.ToSolid(hole, o.Solid).Clear < o.Required - Tolerance.Rounding);
                        Assert.Equal(hit is null, row.FreeOf(place).IsFree(turning));
                        free += hit is null ? 1 : 0;
                        struck += hit is null ? 0 : 1;
                        byRods += hit?.Rod is null ? 0 : 1;
                    }
                }
            }
        }
        Assert.True(free > 3000 && struck > 1000 && byRods > 300, $"free {free}, struck {struck}, by straight round bodies {byRods}");
    }

    /// <summary>Four at a time, or left to the exact test: never wrong, and few are left.</summary>
    [Fact]
    public void WhatIsDecidedFourAtATimeIsWhatTheExactTestSays()
    {
        WallProject project = ProjectReader.ReadText(RandomWall.Yaml(4410, new RandomWallOptions { Nails = 40 }), "wall.yaml").Project!;
        var random = new SplitMix(11);
        double Any(double from, double to) => from + (to - from) * random.Below(1_000_001) / 1e6;
        int close = 0, clear = 0, open = 0;
        foreach (double drift in (double[])[0, 0.005, 0.02])
        {
            RowTask row = RowTasks.Make(new Site(project with { Rules = project.Rules with { Drift = drift } }))[0];
            HeadChoice place = row.Choices[row.Count / 2][0];
            var fan = new DirectionFan(row, place, row.TableOf(place));
            double length = row.LongestNail;
            for (int i = 0; i < 600; i++)
            {
                var head = new Vector3D(place.Point.N + Any(-length, length), place.Point.E + Any(-length, length), place.Point.Z + Any(-length, length) / 2);
                Vector3D toward = row.HoleAt(place, random.Below(place.Turnings.Count)).At(Any(0, length)) - head;
                var other = new Hole(head, toward * (1 / toward.Length), Any(0.3, 1.5) * toward.Length, row.Radius, i % 2 * drift);
                double required = Any(0, 3 * row.Radius);
                int word = random.Below(row.FreeOf(place).Words);
                ulong among = i % 3 == 0 ? ulong.MaxValue : random.Next();
                (ulong surely, ulong left) = fan.Decide(word, among, fan.See(other, required));
                Assert.Equal(0UL, surely & left);
                Assert.Equal(0UL, (surely | left) & ~among);
                for (int bit = 0; bit < FreeDirections.WordSize && word * FreeDirections.WordSize + bit < place.Turnings.Count; bit++)
                {
                    ulong one = 1UL << bit;
                    if ((among & one) == 0)
                        continue;
                    bool isClose = HoleDistance.Between(row.HoleAt(place, word * FreeDirections.WordSize + bit), other).Clear < required;
                    open += (left & one) != 0 ? 1 : 0;
                    if ((left & one) != 0)
                        continue;
                    Assert.Equal(isClose, (surely & one) != 0);
                    close += isClose ? 1 : 0;
                    clear += isClose ? 0 : 1;
                }
            }
        }
        Assert.True(close > 3000 && clear > 10_000 && open < (close + clear) / 10, $"close {close}, clear {clear}, left to the exact test {open}");
    }
}
