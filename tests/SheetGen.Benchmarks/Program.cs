using SheetGen.Benchmarks;

return args switch
{
    ["clearance"] => ClearanceBenchmark.Run(),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: clearance");
    return 2;
}
