using System.Diagnostics;
using System.Security.Cryptography;
using Xunit;

namespace SheetGen.EndToEnd.Support;

/// <summary>
/// Slurm's own daemons on this machine alone: munged, slurmctld and slurmd with a key, ports and folders of the test's own, ended with it.
/// The programs must be there, as every outside tool; where the machine does not let slurmd run (cgroups, rights), the test is skipped with
/// slurmd's last words, in CI too.
/// </summary>
internal sealed class SlurmOnOneMachine : IDisposable
{
    private static readonly string[] CgroupPlugins = ["cgroup/v1", "cgroup/v2\nIgnoreSystemd=yes"];
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly TempFolder _temp = new();
    private readonly List<(Process Process, List<string> Words)> _daemons = [];

    private string Configuration => _temp.File("slurm.conf");

    public static SlurmOnOneMachine Start()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no Slurm there");
        foreach (string program in new[] { "munged", "slurmctld", "slurmd", "sbatch" })
            OutsideTool.Need(program);
        var slurm = new SlurmOnOneMachine();
        try
        {
            slurm.StartAll();
            return slurm;
        }
        catch
        {
            slurm.Dispose();
            throw;
        }
    }

    /// <summary>Runs a command of Slurm and gives its output.</summary>
    public string Run(string folder, string program, params string[] arguments)
    {
        using Process process = Launch(folder, program, arguments);
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(8)))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{program} did not end");
        }
        Assert.True(process.ExitCode == 0, $"{program}: {output.Result}{error.Result}\n{Log("slurmctld.log")}\n{string.Join("\n", Directory.GetFiles(folder, "slurm-*.out").Select(File.ReadAllText))}");
        return output.Result;
    }

    public void Dispose()
    {
        // In the opposite order, each asked first.
        foreach ((Process process, _) in Enumerable.Reverse(_daemons))
        {
            if (!process.HasExited)
                Process.Start("kill", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)).WaitForExit();
            if (!process.WaitForExit(TimeSpan.FromSeconds(10)))
                process.Kill(entireProcessTree: true);
            process.Dispose();
        }
        _temp.Dispose();
    }

    private void StartAll()
    {
        Directory.CreateDirectory(_temp.File("munge"));
        foreach (string folder in new[] { "state", "spool" })
            Directory.CreateDirectory(_temp.File(folder));
        File.WriteAllBytes(_temp.File("munge/key"), RandomNumberGenerator.GetBytes(1024));
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(_temp.File("munge/key"), UnixFileMode.UserRead | UnixFileMode.UserWrite);
        int ports = 20000 + Environment.ProcessId % 20000;
        string host = Environment.MachineName.Split('.')[0];
        File.WriteAllText(Configuration, FormattableString.Invariant($"""
            ClusterName=one
            SlurmctldHost={host}(127.0.0.1)
            SlurmUser={Environment.UserName}
            SlurmdUser={Environment.UserName}
            SlurmctldPort={ports}
            SlurmdPort={ports + 1}
            AuthType=auth/munge
            AuthInfo=socket={_temp.File("munge/socket")}
            StateSaveLocation={_temp.File("state")}
            SlurmdSpoolDir={_temp.File("spool")}
            SlurmctldPidFile={_temp.File("slurmctld.pid")}
            SlurmdPidFile={_temp.File("slurmd.pid")}
            SlurmctldLogFile={_temp.File("slurmctld.log")}
            SlurmdLogFile={_temp.File("slurmd.log")}
            ProctrackType=proctrack/pgid
            TaskPlugin=task/none
            JobAcctGatherType=jobacct_gather/none
            AccountingStorageType=accounting_storage/none
            SelectType=select/cons_tres
            SelectTypeParameters=CR_CPU
            ReturnToService=2
            SwitchType=switch/none
            MpiDefault=none
            MailProg=/bin/true
            NodeName={host} NodeAddr=127.0.0.1 CPUs={Math.Min(2, Environment.ProcessorCount)} State=UNKNOWN
            PartitionName=main Nodes={host} Default=YES MaxTime=INFINITE State=UP

            """).ReplaceLineEndings("\n"));
        Daemon("munged", "--force", "--foreground", "--key-file=" + _temp.File("munge/key"), "--socket=" + _temp.File("munge/socket"),
            "--pid-file=" + _temp.File("munge/pid"), "--log-file=" + _temp.File("munge/log"), "--seed-file=" + _temp.File("munge/seed"));
        Await(() => File.Exists(_temp.File("munge/socket")), "munged");
        foreach (string plugin in CgroupPlugins)
        {
            File.WriteAllText(_temp.File("cgroup.conf"), $"CgroupPlugin={plugin}\nConstrainCores=no\n");
            if (_daemons.Count == 1)
                Daemon("slurmctld", "-D", "-c", "-f", Configuration);
            Process node = Daemon("slurmd", "-D", "-f", Configuration);
            if (IsUp(node))
                return;
            if (!node.HasExited)
                break;
            _daemons.RemoveAt(_daemons.Count - 1);
        }
        Assert.Skip($"this machine does not let slurmd run: {string.Join(" / ", Log("slurmd.log").Split('\n').TakeLast(4))}");
    }

    /// <summary>True once the node takes jobs; false where its daemon ended or nothing came of it.</summary>
    private bool IsUp(Process node)
    {
        for (Stopwatch clock = Stopwatch.StartNew(); clock.Elapsed < Patience && !node.HasExited; Thread.Sleep(500))
        {
            using Process asked = Launch(_temp.Path, "sinfo", "-h", "-o", "%t");
            string state = asked.StandardOutput.ReadToEnd();
            asked.WaitForExit();
            if (state.Trim() == "idle")
                return true;
        }
        return false;
    }

    private void Await(Func<bool> done, string what)
    {
        for (Stopwatch clock = Stopwatch.StartNew(); clock.Elapsed < Patience; Thread.Sleep(100))
        {
            if (done())
                return;
        }
        Assert.Skip($"this machine does not let {what} run: {string.Join(" / ", _daemons[^1].Words)}");
    }

    private Process Daemon(string program, params string[] arguments)
    {
        Process process = Launch(_temp.Path, program, arguments);
        var words = new List<string>();
        void Keep(object _, DataReceivedEventArgs e)
        {
            lock (words)
                words.Add(e.Data ?? "");
        }
        process.OutputDataReceived += Keep;
        process.ErrorDataReceived += Keep;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        _daemons.Add((process, words));
        return process;
    }

    private Process Launch(string folder, string program, params string[] arguments)
    {
        var info = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        info.Environment["SLURM_CONF"] = Configuration;
        Process process = Process.Start(info)!;
        process.StandardInput.Close();
        return process;
    }

    private string Log(string name)
    {
        try
        {
            return File.ReadAllText(_temp.File(name));
        }
        catch (IOException)
        {
            return string.Join('\n', _daemons[^1].Words);
        }
    }
}
