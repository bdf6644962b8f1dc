using System.Globalization;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>The workflows and the array scripts of templates/cluster give the same folder as one process. 12 walls; 40 with SHEETGEN_LONG=1.</summary>
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

    /// <summary>A study of five variants, one of which no project file can have: the same tables from one process, from the workflow and from the array.</summary>
    [Fact]
    public void A_study_is_the_same_from_one_process_from_snakemake_and_from_a_slurm_array()
    {
        OutsideTool.Need("snakemake");
        File.WriteAllText(_temp.File("study.yaml"), "format: 1\ntitle: Gaps\nvary:\n  horizontal_spacing: [4, 4.5]\n  rules.min_gap: [2 ft, 5 ft]\n");
        string wall = SmallCorridor.FileOf(0);
        CliRun one = CliRun.With(_temp.Path, null, "study", wall, "study.yaml", "--out", "study-one", "--jobs", "1", "--build", "1");
        Assert.True(one.Code == 1, one.Error);
        (int code, string output, string error) = OutsideTool.Run(
            "snakemake", _temp.Path, "-s", Template("study.smk"), "--cores", "2", "--config", "project=" + wall, "study=study.yaml", "out=study-snakemake", "build=1", "sheetgen=dotnet " + Repository.Program, "batch=2");
        Assert.True(code == 0, output + error);
        Assert.Equal("1", File.ReadAllText(_temp.File("study-snakemake/jobs/study")).Trim());
        SameButJobs("study-snakemake", "study-one");

        using SlurmOnOneMachine slurm = SlurmOnOneMachine.Start();
        string id = slurm.Run(_temp.Path, "sbatch", "--parsable", "--array=1-3", "--mem=0", "--export=ALL,SHEETGEN=dotnet " + Repository.Program, Template("study.slurm"), wall, "study.yaml", "study-slurm", "2");
        slurm.Run(_temp.Path, "sbatch", "--wait", "--mem=0", "--dependency=afterany:" + id.Trim(), "--wrap", $"dotnet '{Repository.Program}' study {wall} study.yaml --out study-slurm --gather --build 1; test $? = 1");
        SameButJobs("study-slurm", "study-one");
    }

    private void SameButJobs(string folder, string one = "one")
    {
        if (Directory.Exists(_temp.File(folder + "/jobs")))
            Directory.Move(_temp.File(folder + "/jobs"), _temp.File(folder + "-jobs"));
        CorridorTests.Same(_temp, one, folder);
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
