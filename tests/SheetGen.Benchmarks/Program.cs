using SheetGen.Benchmarks;
using SheetGen.Benchmarks.Twin;
using SheetGen.Tests.Walls;

return args switch
{
    ["clearance"] => ClearanceBenchmark.Run(),
    ["placing"] => PlacementBenchmark.Run(7001, prove: false),
    ["placing", "prove"] => PlacementBenchmark.Run(7001, prove: true),
    ["twin", .. string[] files] => TwinBenchmark.Run(files, 12001),
    ["workbook"] => WorkbookBenchmark.Run(),
    ["sheets"] => SheetBenchmark.Run(7901),
    ["walls", .. string[] rest] => WallDump.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: clearance | placing [prove] | twin [FILE ...] | sheets | workbook | walls SEED COUNT DIR");
    return 2;
}
