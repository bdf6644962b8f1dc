using System.Globalization;

namespace SheetGen.Tests.Properties;

/// <summary>Seeds of random walls: few in an ordinary run, as many as the environment variable SHEETGEN_RANDOM_WALLS says in a long one.</summary>
internal static class SeedData
{
    public static IEnumerable<ulong> Of(ulong first, int count)
    {
        string? asked = Environment.GetEnvironmentVariable("SHEETGEN_RANDOM_WALLS");
        int total = asked is null ? count : Math.Max(count, int.Parse(asked, CultureInfo.InvariantCulture));
        for (int i = 0; i < total; i++)
            yield return first + (ulong)i;
    }
}
