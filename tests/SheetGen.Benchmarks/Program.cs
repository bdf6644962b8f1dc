using SheetGen.Benchmarks;
using SheetGen.Tests.Walls;

return args switch
{
    ["clearance"] => ClearanceBenchmark.Run(),
    ["walls", .. string[] rest] => WallDump.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: clearance | walls SEED COUNT DIR");
    return 2;
}
