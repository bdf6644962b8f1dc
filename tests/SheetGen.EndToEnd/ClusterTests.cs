using System.Globalization;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>The workflow and the array script of templates/cluster give the same folder as one process. 12 walls; 40 with SHEETGEN_LONG=1.</summary>
[Trait("Category", "Outside")]
[Trait("Category", "Long")]
public sealed class ClusterTests : IClassFixture<ClusterTests.OneProcess>
{
    private static readonly int Walls = Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1" ? 40 : 12;

    private readonly TempFolder _temp;

    public ClusterTests(OneProcess one) => _temp = one.Temp;

    [Fact]
    public void Snakemake_gives_the_same_register()
    {
        OutsideTool.Need("snakemake");
        (int code, string output, string error) = OutsideTool.Run(
            "snakemake", _temp.Path, "-s", Template("Snakefile"), "--cores", "2", "--config", "list=" + SmallCorridor.List, "out=snakemake", "sheetgen=dotnet " + Repository.Program, "batch=5");
        Assert.True(code == 0, output + error);
        Assert.Equal("2", File.ReadAllText(_temp.File("snakemake/jobs/register")).Trim());
        SameButJobs("snakemake");

        // Nothing is left to do, and a job that is made to look again builds nothing.
        DateTime before = File.GetLastWriteTimeUtc(_temp.File("snakemake/walls/Wall 1/sheets.pdf"));
        (code, output, error) = OutsideTool.Run(
            "snakemake", _temp.Path, "-s", Template("Snakefile"), "--cores", "2", "--forceall", "--config", "list=" + SmallCorridor.List, "out=snakemake", "sheetgen=dotnet " + Repository.Program, "batch=5");
        Assert.True(code == 0, output + error);
        Assert.Equal(before, File.GetLastWriteTimeUtc(_temp.File("snakemake/walls/Wall 1/sheets.pdf")));
        SameButJobs("snakemake");
    }

    /// <summary>munged, slurmctld and slurmd of one machine are started and ended by the test.</summary>
    [Fact]
    public void A_slurm_array_gives_the_same_register()
    {
        using SlurmOnOneMachine slurm = SlurmOnOneMachine.Start();
        string tasks = ((Walls + 1 + 4) / 5).ToString(CultureInfo.InvariantCulture);
        string id = slurm.Run(_temp.Path, "sbatch", "--parsable", "--array=1-" + tasks, "--mem=0", "--export=ALL,SHEETGEN=dotnet " + Repository.Program, Template("corridor.slurm"), SmallCorridor.List, "slurm", "5");
        slurm.Run(_temp.Path, "sbatch", "--wait", "--mem=0", "--dependency=afterany:" + id.Trim(), "--wrap", $"dotnet '{Repository.Program}' corridor {SmallCorridor.List} --out slurm --gather; test $? = 2");
        SameButJobs("slurm");
    }

    private void SameButJobs(string folder)
    {
        if (Directory.Exists(_temp.File(folder + "/jobs")))
            Directory.Move(_temp.File(folder + "/jobs"), _temp.File(folder + "-jobs"));
        CorridorTests.Same(_temp, "one", folder);
        if (Directory.Exists(_temp.File(folder + "-jobs")))
            Directory.Move(_temp.File(folder + "-jobs"), _temp.File(folder + "/jobs"));
    }

    private static string Template(string name) => Path.Combine(Repository.Root, "templates", "cluster", name);

    /// <summary>What one process gives, a faulty and a missing wall among the others.</summary>
    public sealed class OneProcess : IDisposable
    {
        public OneProcess()
        {
            SmallCorridor.Write(Temp.Path, Walls, also: "  - {file: walls/gone.yaml, name: Gone, contract: C-2}\n");
            CorridorTests.Spoil(Temp.File(SmallCorridor.FileOf(7)));
            CliRun run = CliRun.With(Temp.Path, null, "corridor", SmallCorridor.List, "--out", "one", "--jobs", "1");
            Assert.True(run.Code == 2, run.Error);
        }

        internal TempFolder Temp { get; } = new();

        public void Dispose() => Temp.Dispose();
    }
}
