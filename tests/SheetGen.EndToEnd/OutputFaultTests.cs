using System.Text;
using SheetGen.Cli;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Every operation on the output folder fails once, and is once the last before the process ends; several runs write at once.</summary>
public sealed class OutputFaultTests
{
    private static readonly string[] Names = ["a.txt", "b.txt", "c.txt", "d.txt"];
    private static readonly string[] OldSet = ["a.txt", "b.txt", "c.txt"], NewSet = ["a.txt", "b.txt", "d.txt"], ThirdSet = ["b.txt", "c.txt"];

    public static TheoryData<bool, bool> Folders => new() { { true, true }, { true, false }, { false, true }, { false, false } };

    [Theory]
    [MemberData(nameof(Folders))]
    public void Each_operation_failing_leaves_the_old_set_or_the_new_one(bool exchange, bool there)
    {
        int at = 1, failed = 0;
        for (bool reached = true; reached; at++)
        {
            using var temp = new TempFolder();
            Prepare(temp, there);
            var disk = new FaultyDisk(at, dies: false, exchange);
            bool written = Try(() => Folder(temp, disk).Write(Set("new", NewSet), () => false));
            reached = disk.Reached;
            failed += reached ? 1 : 0;
            AssertWhole(temp, written ? NewSet : there ? OldSet : null, written ? "new" : "old", disk.Fault);
            AssertForeign(temp, there, disk.Fault);
            Repair(temp, there, disk.Fault);
        }
        Assert.True(failed >= 15, $"only {failed} operations were seen");
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void The_process_ending_at_each_operation_leaves_no_mixture_and_the_next_run_repairs(bool exchange, bool there)
    {
        int ended = 0;
        for (int at = 1; ; at++)
        {
            using var temp = new TempFolder();
            Prepare(temp, there);
            var disk = new FaultyDisk(at, dies: true, exchange);
            if (Try(() => Folder(temp, disk).Write(Set("new", NewSet), () => false)))
                break;
            ended++;
            string[] shown = [.. Names.Where(n => File.Exists(temp.File("out/" + n)))];
            string[] words = [.. shown.Select(n => File.ReadAllText(temp.File("out/" + n))).Distinct()];
            Assert.True(words.Length <= 1, $"mixed after {disk.Fault}");
            if (exchange)
                Assert.True(Same(shown, there && words is ["old"] ? OldSet : words is ["new"] ? NewSet : there ? OldSet : []), $"not whole after {disk.Fault}");
            AssertForeign(temp, there, disk.Fault);
            Repair(temp, there, disk.Fault);
        }
        Assert.True(ended >= 15, $"only {ended} operations were seen");
    }

    [Theory]
    [InlineData(2, true, true)]
    [InlineData(3, true, true)]
    [InlineData(2, false, true)]
    [InlineData(3, true, false)]
    [InlineData(2, false, false)]
    public void Runs_at_once_leave_one_whole_set_and_a_run_that_was_kept_off_says_so(int runs, bool there, bool exchange)
    {
        int rounds = Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1" ? 400 : 40;
        var random = new Random(runs);
        int done = 0, keptOff = 0;
        for (int round = 0; round < rounds; round++)
        {
            using var temp = new TempFolder();
            Prepare(temp, there);
            using var start = new Barrier(runs);
            int[] delays = [.. Enumerable.Range(0, runs).Select(_ => random.Next(3000))];
            string?[] outcome = new string?[runs];
            Thread[] threads = [.. Enumerable.Range(0, runs).Select(i => new Thread(() =>
            {
                start.SignalAndWait();
                var clock = System.Diagnostics.Stopwatch.StartNew();
                while (clock.Elapsed.TotalMicroseconds < delays[i])
                    Thread.SpinWait(10);
                try
                {
                    Folder(temp, new FaultyDisk(0, false, exchange)).Write(Set("run" + i, NewSet), () => false);
                    outcome[i] = "written";
                }
                catch (OutputException e)
                {
                    outcome[i] = e.Message;
                }
                catch (Exception e)
                {
                    outcome[i] = e.ToString();
                }
            }))];
            foreach (Thread thread in threads)
                thread.Start();
            foreach (Thread thread in threads)
                thread.Join();
            done += outcome.Count(o => o == "written");
            keptOff += outcome.Count(o => o!.StartsWith("another run", StringComparison.Ordinal));
            Assert.All(outcome, o => Assert.True(o == "written" || o!.StartsWith("another run is writing", StringComparison.Ordinal), o));
            Assert.Contains("written", outcome);
            string word = File.ReadAllText(temp.File("out/a.txt"));
            Assert.Equal("written", outcome[word[^1] - '0']);
            AssertWhole(temp, NewSet, word, "runs at once");
            AssertForeign(temp, there, "runs at once");
            Assert.Equal(["out"], Directory.GetFileSystemEntries(temp.Path).Select(Path.GetFileName));
        }
        TestContext.Current.SendDiagnosticMessage($"{rounds} rounds of {runs}: {done} written, {keptOff} kept off");
    }

    [Fact]
    public void A_lock_that_is_given_up_while_another_run_asks_for_it_is_no_fault_of_the_disk()
    {
        using var temp = new TempFolder();
        var faults = new System.Collections.Concurrent.ConcurrentBag<string>();
        int taken = 0, keptOff = 0;
        Parallel.For(0, 3, _ =>
        {
            for (int i = 0; i < 3000; i++)
            {
                try
                {
                    var disk = new FaultyDisk(0, false, false);
                    using OutputLock held = OutputLock.Take(temp.File("out"), disk);
                    Interlocked.Increment(ref taken);
                    held.Release(disk);
                }
                catch (OutputException e) when (e.Message.StartsWith("another run is writing", StringComparison.Ordinal))
                {
                    Interlocked.Increment(ref keptOff);
                }
                catch (Exception e)
                {
                    faults.Add(e.Message);
                }
            }
        });
        Assert.Empty(faults);
        Assert.Equal(9000, taken + keptOff);
        Assert.True(taken >= 1000, $"only {taken} taken");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_single_file_is_the_old_one_or_the_new_one_at_each_operation(bool dies)
    {
        int at = 1;
        for (; ; at++)
        {
            using var temp = new TempFolder();
            File.WriteAllText(temp.File("wall.svg"), "old");
            var disk = new FaultyDisk(at, dies, exchange: false);
            bool written = Try(() => Done(() => WholeFile.Replace(temp.File("wall.svg"), "newer"u8.ToArray(), disk)));
            Assert.True(File.ReadAllText(temp.File("wall.svg")) == (written ? "newer" : "old"), disk.Fault);
            if (!dies)
                Assert.Equal(["wall.svg"], Directory.GetFileSystemEntries(temp.Path).Select(Path.GetFileName));
            // A part that an ended process left is no hindrance.
            WholeFile.Replace(temp.File("wall.svg"), "newest"u8.ToArray());
            Assert.Equal("newest", File.ReadAllText(temp.File("wall.svg")));
            if (written)
                break;
        }
        Assert.True(at >= 6, $"only {at - 1} operations were seen");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void New_files_come_all_or_none_and_what_is_there_stays(bool dies)
    {
        OutputFile[] files = [.. NewSet.Select(n => new OutputFile(n, Encoding.UTF8.GetBytes("new")))];
        int at = 1;
        for (; ; at++)
        {
            using var temp = new TempFolder();
            var disk = new FaultyDisk(at, dies, exchange: false);
            bool written = Try(() => Done(() => WholeFile.AddNew(temp.File("out"), files, disk)));
            string[] shown = [.. NewSet.Where(n => File.Exists(temp.File("out/" + n)))];
            Assert.All(shown, n => Assert.Equal("new", File.ReadAllText(temp.File("out/" + n))));
            if (!dies)
                Assert.True(Same(shown, written ? NewSet : []) && Directory.Exists(temp.File("out")) == written, $"{string.Join(' ', shown)} after {disk.Fault}");
            else if (!written)
                Assert.False(shown.Contains(NewSet[0]) && shown.Length < NewSet.Length, disk.Fault);
            if (written)
            {
                Assert.Contains("never overwrites", Assert.Throws<OutputException>(() => WholeFile.AddNew(temp.File("out"), [files[1], new("e.txt", "new"u8.ToArray())])).Message);
                Assert.False(File.Exists(temp.File("out/e.txt")));
                break;
            }
        }
        Assert.True(at >= 15, $"only {at - 1} operations were seen");
    }

    private static bool Done(Action act)
    {
        act();
        return true;
    }

    /// <summary>A run that is stopped at once only repairs; then a full one writes.</summary>
    private static void Repair(TempFolder temp, bool there, string fault)
    {
        Assert.False(Folder(temp, new OutputDisk()).Write(Set("third", ThirdSet), () => true), fault);
        string[] shown = [.. Names.Where(n => File.Exists(temp.File("out/" + n)))];
        Assert.True(Same(shown, there ? OldSet : []) || Same(shown, NewSet), $"{string.Join(' ', shown)} repaired after {fault}");
        AssertWhole(temp, shown.Length == 0 ? null : shown, Same(shown, NewSet) ? "new" : "old", fault);
        AssertForeign(temp, there, fault);
        Assert.True(Folder(temp, new OutputDisk()).Write(Set("third", ThirdSet), () => false), fault);
        AssertWhole(temp, ThirdSet, "third", fault);
        AssertForeign(temp, there, fault);
        Assert.Equal(["out"], Directory.GetFileSystemEntries(temp.Path).Select(Path.GetFileName));
    }

    /// <summary>The folder shows exactly these files, all with this content, and nothing of our own beside them.</summary>
    private static void AssertWhole(TempFolder temp, string[]? names, string word, string fault)
    {
        string[] foreign = ["mine", "notes.txt"];
        string[] found = Directory.Exists(temp.File("out"))
            ? [.. Directory.GetFileSystemEntries(temp.File("out")).Select(p => Path.GetFileName(p)!).Except(foreign).Order(StringComparer.Ordinal)]
            : [];
        // A fault in the clearing itself leaves what is ours and marked as such; the next run takes it away.
        found = [.. found.Where(n => !n.StartsWith(".sheetgen-", StringComparison.Ordinal))];
        Assert.True(Same(found, names ?? []), $"{string.Join(' ', found)} after {fault}");
        foreach (string name in names ?? [])
            Assert.True(File.ReadAllText(temp.File("out/" + name)) == word, $"{name} is not {word} after {fault}");
    }

    private static void AssertForeign(TempFolder temp, bool there, string fault)
    {
        if (there)
            Assert.True(File.ReadAllText(temp.File("out/notes.txt")) == "mine" && File.ReadAllText(temp.File("out/mine/deep.txt")) == "mine", fault);
    }

    private static void Prepare(TempFolder temp, bool there)
    {
        if (!there)
            return;
        Directory.CreateDirectory(temp.File("out/mine"));
        File.WriteAllText(temp.File("out/notes.txt"), "mine");
        File.WriteAllText(temp.File("out/mine/deep.txt"), "mine");
        foreach (string name in OldSet)
            File.WriteAllText(temp.File("out/" + name), "old");
    }

    private static bool Try(Func<bool> run)
    {
        try
        {
            return run();
        }
        catch (Exception e) when (e is OutputException or EndOfProcess)
        {
            return false;
        }
    }

    private static bool Same(IEnumerable<string> a, IEnumerable<string> b) => a.Order(StringComparer.Ordinal).SequenceEqual(b.Order(StringComparer.Ordinal));

    private static OutputFolder Folder(TempFolder temp, OutputDisk disk) => new(temp.File("out"), Names, disk);

    private static IReadOnlyList<OutputFile> Set(string content, string[] names) => [.. names.Select(n => new OutputFile(n, Encoding.UTF8.GetBytes(content)))];

    private sealed class EndOfProcess : Exception;

    /// <summary>A disk whose operation of that number fails; where the process dies, all that follow fail too.</summary>
    private sealed class FaultyDisk(int at, bool dies, bool exchange) : OutputDisk
    {
        private int _count;

        public string Fault { get; private set; } = "no fault";

        public bool Reached => _count >= at;

        public override bool TryExchange(string first, string second) => exchange && base.TryExchange(first, second);

        protected override void Before(string operation, string path)
        {
            _count++;
            if (at == 0 || (dies ? _count < at : _count != at))
                return;
            if (_count == at)
                Fault = $"{operation} of {Path.GetFileName(path)}, operation {at}";
            throw dies ? new EndOfProcess() : new IOException("out of order: " + Fault);
        }
    }
}
