namespace SheetGen.Tests.Walls;

/// <summary>Puts obstructions behind a random wall: shafts under caps, piles, girders, pipes along and across, footings, boundaries.</summary>
public sealed class RandomObstructions(WallRandom random, double foot, RandomWallOptions options)
{
    private int _count;

    private double L(double feet) => Math.Round(feet * foot, 4);

    public List<ScenarioObstruction> Beside(ScenarioWall wall, ScenarioLine line)
    {
        var all = new List<ScenarioObstruction>();
        double length = (wall.End - wall.Start) / foot;
        int wanted = Math.Max(1, (int)Math.Round(length / 3.7 * 5.5 / 100 * options.Obstructions));
        double[] bends = [.. line.Corners.Select(c => c.Station)];
        while (all.Count < wanted)
        {
            double half = random.Between(3, Math.Min(20, length / 2 - 1));
            double at = wall.Start + L(random.Between(half, length - half, 0.25));
            // Shapes given by offsets stand within one leg: beside a corner their sides could cross.
            double clear = bends.Select(b => Math.Abs(b - at)).Append(double.MaxValue).Min() / foot;
            half = Math.Min(half, clear - 10);
            if (half < 2)
            {
                if (random.Chance(0.05))
                    all.Add(PipeAlong(wall, at));
                else
                    all.Add(Shaft(wall, at, random.Between(5, 9)));
                continue;
            }
            switch (random.Whole(0, 9))
            {
                case 0 or 1 or 2: all.AddRange(Bent(wall, at, half)); break;
                case 3: all.AddRange(Piles(wall, at, half)); break;
                case 4: all.Add(PipeAlong(wall, at)); break;
                case 5: all.Add(PipeAcross(wall, at)); break;
                case 6: all.Add(Footing(wall, at, half)); break;
                case 7: all.Add(Raked(wall, at)); break;
                case 8: all.Add(Girder(wall, at, High(wall, at))); break;
                default: all.Add(Boundary(wall, at)); break;
            }
        }
        return all;
    }

    private string Name(string kind) => $"{kind} {++_count}";

    private double Near() => options.Satisfiable ? random.Between(4, 10, 0.25) : random.Between(1.5, 9, 0.25);

    private static double High(ScenarioWall wall, double at) => wall.Top.MinBy(p => Math.Abs(p.Station - at)).Elevation;

    private double Low(ScenarioWall wall, double at) =>
        wall.Steps.Count > 0 ? wall.Steps.Last(p => p.Station <= at + 1e-6 || p == wall.Steps[0]).Elevation : High(wall, at) - L(15);

    private ScenarioObstruction Shaft(ScenarioWall wall, double at, double offset) => new()
    {
        Name = Name("Shaft"),
        Kind = "shaft",
        Wall = wall.Name,
        Points = [new(Tidy(at), L(offset), null, random.Chance(0.1))],
        Diameter = L(random.Of(2.5, 3, 3.5, 4)),
        Top = High(wall, at) - L(random.Of(0, 1, 4)),
        Bottom = Low(wall, at) - L(30),
    };

    /// <summary>Two to four shafts under a cap, with a girder now and then.</summary>
    private List<ScenarioObstruction> Bent(ScenarioWall wall, double at, double half)
    {
        double offset = Near() + 1, high = High(wall, at);
        int shafts = Math.Min(random.Whole(2, 4), (int)(half * 2 / 6) + 1);
        double pitch = shafts < 2 ? 0 : Math.Min(14, (half * 2 - 3) / (shafts - 1));
        var group = new List<ScenarioObstruction>();
        for (int i = 0; i < shafts; i++)
            group.Add(Shaft(wall, at + L((i - (shafts - 1) / 2.0) * pitch), offset) with { Top = high });
        double reach = L((shafts - 1) / 2.0 * pitch + 1.5);
        group.Add(new ScenarioObstruction
        {
            Name = Name("Cap"),
            Kind = "solid",
            Wall = wall.Name,
            Points = Rectangle(at - reach, at + reach, L(offset - 2), L(offset + 2)),
            Bottom = high - L(random.Of(0.5, 2, 3)),
            Top = high + L(3),
        });
        if (random.Chance(0.6))
            group.Add(Girder(wall, at, high + L(1)));
        return group;
    }

    private static List<ScenarioPoint> Rectangle(double s0, double s1, double o0, double o1) =>
        [new(Tidy(s0), o0), new(Tidy(s1), o0), new(Tidy(s1), o1), new(Tidy(s0), o1)];

    private static double Tidy(double station) => Math.Round(station, 3);

    private List<ScenarioObstruction> Piles(ScenarioWall wall, double at, double half)
    {
        double offset = Near(), pitch = random.Between(4, 7, 0.5);
        var row = new List<ScenarioObstruction>();
        for (double d = -half; d <= half && row.Count < 5; d += pitch)
        {
            row.Add(Shaft(wall, at + L(d), offset) with { Name = Name("Pile"), Kind = "pile", Diameter = L(random.Of(1, 1.25, 1.5)) });
        }
        return row;
    }

    private ScenarioObstruction Girder(ScenarioWall wall, double at, double high) => new()
    {
        Name = Name("Girder"),
        Kind = "beam",
        Wall = wall.Name,
        Points = [new(Tidy(at), L(random.Between(1, 3, 0.25))), new(Tidy(at + L(random.Between(-5, 5, 1))), L(50))],
        Width = L(random.Of(1.5, 2)),
        Bottom = high - L(random.Of(-0.5, 0, 1)),
        Top = high + L(4),
    };

    private ScenarioObstruction PipeAlong(ScenarioWall wall, double at)
    {
        double offset = random.Between(6, 24, 0.5), depth = random.Between(2, 8, 0.5);
        double[] stops = Along(wall, at, L(random.Of(0, 15)), L(random.Of(0, 20)));
        return new ScenarioObstruction
        {
            Name = Name("Storm"),
            Kind = "pipe",
            Wall = wall.Name,
            Points = [.. stops.Select(s => new ScenarioPoint(Tidy(s), L(offset + random.Between(-1, 1)), Math.Round(High(wall, s) - L(depth), 2)))],
            Diameter = L(random.Of(0.75, 1.5, 2, 3)),
        };
    }

    /// <summary>Stations of something along the wall, as long as the options allow around a place.</summary>
    private double[] Along(ScenarioWall wall, double at, double before, double after)
    {
        double half = options.Along is { } along ? L(along / 2) : double.MaxValue, start = Math.Max(wall.Start, at - half), end = Math.Min(wall.End, at + half);
        int count = Math.Max(1, (int)((end - start) / L(60)));
        return [start - before, .. Enumerable.Range(1, count).Select(k => start + (end - start) * k / (count + 1)), end + after];
    }

    private ScenarioObstruction PipeAcross(ScenarioWall wall, double at)
    {
        double z = Math.Round(High(wall, at) - L(random.Between(3, 8)), 2);
        return new ScenarioObstruction
        {
            Name = Name("Sewer"),
            Kind = "pipe",
            Wall = wall.Name,
            Points = [new(Tidy(at), L(random.Between(1.5, 4)), z), new(Tidy(at + L(random.Between(-8, 8))), L(45), z + L(0.5))],
            Diameter = L(random.Of(0.5, 1, 2)),
        };
    }

    /// <summary>A footing with a notch: an L or a U in plan.</summary>
    private ScenarioObstruction Footing(ScenarioWall wall, double at, double half)
    {
        double reach = L(Math.Min(half, random.Between(4, 8))), near = L(Near()), deep = near + L(random.Between(4, 8, 0.5));
        double notch = reach * 0.4, waist = near + (deep - near) / 2;
        List<ScenarioPoint> shape = random.Chance(0.5)
            ? [new(at - reach, near), new(at + reach, near), new(at + reach, waist), new(at - notch, waist), new(at - notch, deep), new(at - reach, deep)]
            : [new(at - reach, near), new(at - notch, near), new(at - notch, waist), new(at + notch, waist), new(at + notch, near),
                new(at + reach, near), new(at + reach, deep), new(at - reach, deep)];
        double high = High(wall, at);
        return new ScenarioObstruction
        {
            Name = Name("Footing"),
            Kind = "solid",
            Wall = wall.Name,
            Points = [.. shape.Select(p => p with { Station = Tidy(p.Station), Offset = Math.Round(p.Offset, 3) })],
            Bottom = high - L(random.Between(4, 8, 0.5)),
            Top = high - L(random.Between(0, 3, 0.5)),
        };
    }

    private ScenarioObstruction Raked(ScenarioWall wall, double at)
    {
        double near = Near() + 1;
        return new ScenarioObstruction
        {
            Name = Name("Raked pile"),
            Kind = "pile",
            Wall = wall.Name,
            Points =
            [
                new(Tidy(at), L(near), High(wall, at), random.Chance(0.5)),
                new(Tidy(at + L(random.Between(-3, 3))), L(near + random.Between(0, 8)), Low(wall, at) - L(20), random.Chance(0.5)),
            ],
            Diameter = L(random.Of(1, 1.5)),
        };
    }

    private ScenarioObstruction Boundary(ScenarioWall wall, double at)
    {
        double offset = random.Between(30, 45);
        double[] stops = Along(wall, at, L(20), L(20));
        return new ScenarioObstruction
        {
            Name = Name("Easement"),
            Kind = "boundary",
            Wall = wall.Name,
            Points = [.. stops.Select(s => new ScenarioPoint(Tidy(s), L(offset + random.Between(-5, 5, 0.25))))],
        };
    }
}
