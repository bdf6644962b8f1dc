using SheetGen.Benchmarks;
using SheetGen.Tests.Walls;

return args switch
{
    ["clearance"] => ClearanceBenchmark.Run(),
    ["placing"] => PlacementBenchmark.Run(7001, prove: false),
    ["placing", "prove"] => PlacementBenchmark.Run(7001, prove: true),
    ["workbook"] => WorkbookBenchmark.Run(),
    ["sheets"] => SheetBenchmark.Run(7901),
    ["walls", .. string[] rest] => WallDump.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: clearance | placing [prove] | sheets | workbook | walls SEED COUNT DIR");
    return 2;
}
