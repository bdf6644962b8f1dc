using System.Globalization;

namespace SheetGen.Tests.Walls;

/// <summary>Writes random and named walls to a folder, for tools outside this program.</summary>
public static class WallDump
{
    /// <summary>Arguments: first seed, count, folder, and any of: satisfiable, plain, inside, nails=N, along=FEET; or the word named and a folder.</summary>
    public static int Run(IReadOnlyList<string> arguments)
    {
        if (arguments is ["named", string folder])
        {
            Directory.CreateDirectory(folder);
            foreach ((string name, WallScenario scenario) in NamedWalls.All)
                File.WriteAllText(Path.Combine(folder, name + ".yaml"), ScenarioYaml.Print(scenario));
            return 0;
        }
        if (arguments.Count < 3 || !ulong.TryParse(arguments[0], out ulong seed) || !int.TryParse(arguments[1], out int count))
        {
            Console.Error.WriteLine("walls SEED COUNT DIR [satisfiable] [plain] [inside] [nails=N] [along=FEET] | walls named DIR");
            return 2;
        }
        var options = new RandomWallOptions
        {
            Satisfiable = arguments.Contains("satisfiable"),
            Plain = arguments.Contains("plain"),
            OutsideCorners = arguments.Contains("inside") ? false : null,
        };
        if (Number("nails=") is { } nails)
            options = options with { Nails = nails };
        options = options with { Along = Number("along=") };
        Directory.CreateDirectory(arguments[2]);
        for (int i = 0; i < count; i++)
        {
            ulong each = seed + (ulong)i;
            File.WriteAllText(Path.Combine(arguments[2], $"{each}.yaml"), RandomWall.Yaml(each, options));
        }
        return 0;

        int? Number(string name) => arguments.FirstOrDefault(a => a.StartsWith(name, StringComparison.Ordinal)) is { } given
            ? int.Parse(given[name.Length..], CultureInfo.InvariantCulture)
            : null;
    }
}
