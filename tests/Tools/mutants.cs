#:package Microsoft.CodeAnalysis.CSharp@5.0.0
#:property ManagePackageVersionsCentrally=false
#:property RestorePackagesWithLockFile=false
#:property PublishAot=false
#:property PublishTrimmed=false

// Mutation testing of SheetGen.Layout: would the tests see a mistake?
//
//   dotnet run tests/Tools/mutants.cs -- ROOMS COUNT SEED REPORT [SECONDS [TOTAL [TESTS]]]
//   dotnet run tests/Tools/mutants.cs -- Rows,Clearance 300 1 mutants.txt
//
// ROOMS are folders of src/SheetGen.Layout, COUNT how many mutants of each are drawn (seeded), SECONDS the longest that a test (a row of data of it) may take
// without a mutant to be chosen (0.5 where none is given), TOTAL how many seconds of chosen tests a mutant gets (4), TESTS a regular expression of the
// tests' names (that of a test of category Long begins with `Long:`). Needs a release build of tests/SheetGen.Tests.
//
// All mutants of a room are compiled at once, each behind a switch. One run of the tests without a mutant records which tests reach which mutant (kept, with the
// library, in the folder for temporary files); then each mutant is switched on and the tests that reach it are run in the same process, until one fails: those
// first that have killed mutants of the same file, then the fastest. A mutant that none sees survives.
// Some tests of other folders than those chosen by default keep what they made; with MUTANTS_AGAIN=1 in the environment what survived is tried again in a
// process of its own, switched on from the start.
// MUTANTS_BEFORE=REPORT in the environment takes what a report says of killed mutants, so that only the others are tried, with TESTS that were written since.
// A mutant under which a test takes a hundred times as many steps is slow, and so is one that has to be stopped by the clock: both count as killed.
// Mutants that do not compile are none.
//
// A line of the report is a mutant: killed (by which test), slow, unreached (no chosen test gets there; counts as survived) or SURVIVED, its place, and what was changed.
// A survivor that changes no result is `equivalent` where tests/Tools/mutants-equivalent.txt has it, with the reason why; these are counted by themselves.

using System.Collections;
using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

return args is ["worker", ..] ? Worker.Run(args[1], int.Parse(args[2], CultureInfo.InvariantCulture), double.Parse(args[3], CultureInfo.InvariantCulture), args[4]) : Tool.Run(args);

internal sealed record Mutant(int Id, string File, int Line, int Column, string Was, string Is);

internal static class Tool
{
    public static int Run(string[] args)
    {
        if (args.Length is < 4 or > 7)
        {
            Console.Error.WriteLine("usage: mutants ROOMS COUNT SEED REPORT [SECONDS [TOTAL [TESTS]]]");
            return 2;
        }
        (string[] rooms, string report) = (args[0].Split(','), args[3]);
        int count = int.Parse(args[1], CultureInfo.InvariantCulture), seed = int.Parse(args[2], CultureInfo.InvariantCulture);
        string seconds = args.Length > 4 ? args[4] : "0.5", tests = args.Length > 6 ? args[6] : @"^SheetGen\.Tests\.(Clearance|Placing|Quantities|Rows|Geometry|Advice|Properties\.CommittedResult)";
        double total = args.Length > 5 ? double.Parse(args[5], CultureInfo.InvariantCulture) : 4;
        string root = Directory.GetCurrentDirectory();
        while (!File.Exists(Path.Combine(root, "SheetGen.sln")))
            root = Path.GetDirectoryName(root) ?? throw new InvalidOperationException("run it inside of the repository");
        string source = Path.Combine(root, "src", "SheetGen.Layout"), built = Path.Combine(root, "tests", "SheetGen.Tests", "bin", "Release", "net10.0");
        // Beside the tests' own folder, so that they find the repository above it.
        string work = built + "-mutants-" + Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
        Copy(built, work);
        try
        {
            Dictionary<string, string> equivalent = Equivalent(Path.Combine(root, "tests", "Tools", "mutants-equivalent.txt"));
            File.Copy(Assembly.GetExecutingAssembly().Location, Path.Combine(work, "mutants.dll"));
            File.WriteAllText(report, "");
            foreach (string room in rooms)
            {
                Stopwatch clock = Stopwatch.StartNew();
                string kept = KeptName(source, room, built);
                Dictionary<int, Mutant> mutants = Kept(kept, source, room, built, Path.Combine(work, "SheetGen.Layout.dll"));
                Console.WriteLine(FormattableString.Invariant($"{mutants.Count} mutants compiled in {clock.Elapsed.TotalSeconds:0} s"));
                byte[] choice = SHA256.HashData([.. File.ReadAllBytes(Path.Combine(built, "SheetGen.Tests.dll")), .. Encoding.UTF8.GetBytes(seconds + tests)]);
                Measure(room, report, count, seed, total, equivalent, file => File.ReadAllLines(Path.Combine(source, file)), $"{kept}-{Convert.ToHexStringLower(choice)[..16]}.reach", id => new Remote(work, id, seconds, tests), mutants);
            }
            return 0;
        }
        finally
        {
            Directory.Delete(work, recursive: true);
        }
    }

    /// <summary>The reasons, by the mutants that they stand for: after a line `= REASON` a line each, `FILE | LINE OF SOURCE | WAS -> IS`.</summary>
    private static Dictionary<string, string> Equivalent(string file)
    {
        var reasons = new Dictionary<string, string>(StringComparer.Ordinal);
        string reason = "";
        foreach (string line in File.Exists(file) ? File.ReadLines(file) : [])
        {
            if (line.StartsWith("= ", StringComparison.Ordinal))
                reason = line[2..];
            else if (line.Length > 0 && line[0] != '#')
                reasons[line] = reason;
        }
        return reasons;
    }

    private static string KeptName(string source, string room, string built)
    {
        string[] files = [.. Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal), Path.Combine(built, "SheetGen.Model.dll")];
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.UTF8.GetBytes(Schemata.Version + room));
        foreach (string file in files)
            hash.AppendData(File.ReadAllBytes(file));
        return Path.Combine(Path.GetTempPath(), "sheetgen-mutants-" + Convert.ToHexStringLower(hash.GetHashAndReset())[..16]);
    }

    /// <summary>The library of the same source and room is compiled once and kept in the folder for temporary files.</summary>
    private static Dictionary<int, Mutant> Kept(string kept, string source, string room, string built, string library)
    {
        string list = kept + ".txt";
        if (File.Exists(list))
        {
            File.Copy(kept, library, overwrite: true);
            return File.ReadLines(list).Select(l => l.Split('\t')).Select(l => new Mutant(int.Parse(l[0], CultureInfo.InvariantCulture), l[1], int.Parse(l[2], CultureInfo.InvariantCulture), int.Parse(l[3], CultureInfo.InvariantCulture), l[4], l[5])).ToDictionary(m => m.Id);
        }
        Dictionary<int, Mutant> mutants = Schemata.Build(source, [room], built, library);
        File.Copy(library, kept, overwrite: true);
        File.WriteAllLines(list, mutants.Values.Select(m => string.Create(CultureInfo.InvariantCulture, $"{m.Id}\t{m.File}\t{m.Line}\t{m.Column}\t{m.Was}\t{m.Is}")));
        return mutants;
    }

    /// <summary>Which tests reach which mutants; the lines of a run that was kept say it again.</summary>
    private static List<(string Name, double Seconds, int[] Reached)> Cover(Remote warm, string kept)
    {
        string[] lines;
        if (File.Exists(kept))
        {
            lines = File.ReadAllLines(kept);
            warm.Send("plain\t" + string.Join(';', lines.Select(l => l.Split('\t')).Where(p => p[0] == "test").Select(p => p[1] + "=" + p[4])));
        }
        else
        {
            var said = new List<string>();
            warm.Send("cover");
            while (warm.Receive(TimeSpan.FromMinutes(60)) is { } line && line != "end")
                said.Add(line);
            File.WriteAllLines(kept, lines = [.. said]);
        }
        var tests = new List<(string Name, double Seconds, int[] Reached)>();
        foreach (string[] parts in lines.Select(l => l.Split('\t')))
        {
            if (parts[0] == "fault")
                Console.Error.WriteLine($"not chosen, since it fails or is too long without a mutant: {parts[1]}: {parts[2]}");
            else
                tests.Add((parts[1], double.Parse(parts[2], CultureInfo.InvariantCulture), [.. parts[3].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(n => int.Parse(n, CultureInfo.InvariantCulture))]));
        }
        return tests;
    }

    private static void Measure(string room, string report, int count, int seed, double total, Dictionary<string, string> equivalent, Func<string, string[]> sources, string kept, Func<int, Remote> start, Dictionary<int, Mutant> mutants)
    {
        Stopwatch clock = Stopwatch.StartNew();
        bool again = Environment.GetEnvironmentVariable("MUTANTS_AGAIN") == "1";
        Remote warm = start(0);
        List<(string Name, double Seconds, int[] Reached)> tests = Cover(warm, kept);
        Console.WriteLine(FormattableString.Invariant($"{tests.Count} tests reach {room}, {tests.Sum(t => t.Seconds):0.0} s, recorded in {clock.Elapsed.TotalSeconds:0} s"));
        ILookup<int, (string Name, double Seconds)> reach = tests.SelectMany(t => t.Reached.Select(r => (r, t))).ToLookup(p => p.r, p => (p.t.Name, p.t.Seconds));
        Mutant[] all = [.. mutants.Values.OrderBy(m => m.Id)], drawn = [.. all];
        new Random(seed).Shuffle(drawn);
        if (count < drawn.Length)
            Array.Resize(ref drawn, count);
        var tally = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var kills = new Dictionary<(string File, string Test), int>();
        clock.Restart();
        Dictionary<string, string> before = Before(Environment.GetEnvironmentVariable("MUTANTS_BEFORE"));
        foreach (Mutant mutant in drawn)
        {
            string[] chosen = Chosen(reach[mutant.Id], total, t => kills.GetValueOrDefault((mutant.File, t)));
            string place = FormattableString.Invariant($"{mutant.File}:{mutant.Line}:{mutant.Column} {mutant.Was} -> {mutant.Is}");
            string outcome = before.GetValueOrDefault(place) ?? "unreached";
            if (chosen.Length > 0 && outcome is "unreached" or "SURVIVED")
            {
                TimeSpan patience = TimeSpan.FromSeconds(30 + 20 * total);
                outcome = warm.Ask(mutant.Id, chosen, patience) ?? "slow (stopped by the clock)";
                if (warm.IsGone)
                    Cover(warm = start(0), kept);
                if (outcome == "survived" && again)
                {
                    // By class: tests of one class share what they keep.
                    var classes = chosen.Select(ClassOf).ToHashSet(StringComparer.Ordinal);
                    using Remote fresh = start(mutant.Id);
                    outcome = fresh.Ask(mutant.Id, Chosen(tests.Where(t => classes.Contains(ClassOf(t.Name))).Select(t => (t.Name, t.Seconds)), total, _ => 0), patience) ?? "slow (stopped by the clock)";
                }
                if (outcome == "survived")
                    outcome = "SURVIVED";
                if (outcome.StartsWith("killed (SheetGen", StringComparison.Ordinal))
                {
                    (string, string) key = (mutant.File, outcome["killed (".Length..^1]);
                    kills[key] = kills.GetValueOrDefault(key) + 1;
                }
            }
            string change = $"{mutant.Was} -> {mutant.Is}", reason = "";
            if (outcome is "SURVIVED" or "unreached" && equivalent.TryGetValue($"{mutant.File.Replace('\\', '/')} | {sources(mutant.File)[mutant.Line - 1].Trim()} | {change}", out string? known))
                (outcome, reason) = ("equivalent", " (" + known + ")");
            string kind = outcome.StartsWith("killed", StringComparison.Ordinal) && IsCommitted(outcome) ? "killed by recorded results alone" : outcome.Split(' ')[0];
            tally[kind] = tally.GetValueOrDefault(kind) + 1;
            string text = $"{outcome}: {place}{reason}";
            File.AppendAllText(report, text + "\n");
            if (kind is "SURVIVED" or "unreached")
                Console.WriteLine(text);
        }
        int lost = tally.GetValueOrDefault("SURVIVED") + tally.GetValueOrDefault("unreached"), same = tally.GetValueOrDefault("equivalent"), dead = drawn.Length - lost - same;
        string summary = FormattableString.Invariant($"{room}: {drawn.Length} of {all.Length} mutants, seed {seed}: {string.Join(", ", tally.Select(t => $"{t.Value} {t.Key}"))}; {Share(dead, drawn.Length)} killed, {Share(dead, drawn.Length - same)} of those that change a result, in {clock.Elapsed.TotalSeconds:0} s");
        File.AppendAllText(report, summary + "\n");
        Console.WriteLine(summary);
        warm.Dispose();
    }

    /// <summary>A share with its interval of 95 %, by Wilson's score (from memory).</summary>
    private static string Share(int part, int of)
    {
        const double Z = 1.96;
        double n = Math.Max(1, of), p = part / n, middle = (p + Z * Z / (2 * n)) / (1 + Z * Z / n), half = Z / (1 + Z * Z / n) * Math.Sqrt(p * (1 - p) / n + Z * Z / (4 * n * n));
        return FormattableString.Invariant($"{100 * p:0.0} % ({100 * (middle - half):0} to {100 * (middle + half):0} %)");
    }

    /// <summary>What a report said of each mutant.</summary>
    private static Dictionary<string, string> Before(string? report)
    {
        var outcomes = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (Match line in report is null ? [] : File.ReadLines(report).Select(l => Regex.Match(l, @"^(killed .*?|slow.*?|unreached|SURVIVED): (\S+:\d+:\d+ .* -> .*)$")).Where(m => m.Success))
            outcomes[line.Groups[2].Value] = line.Groups[1].Value;
        return outcomes;
    }

    /// <summary>Those first that killed before, then the fastest; results that are compared with committed or recorded ones last, so that it shows what is seen by nothing else.</summary>
    private static string[] Chosen(IEnumerable<(string Name, double Seconds)> tests, double total, Func<string, int> kills)
    {
        double sum = 0;
        return [.. tests.OrderByDescending(t => kills(t.Name)).ThenBy(t => t.Seconds).ThenBy(t => t.Name, StringComparer.Ordinal).TakeWhile(t => IsCommitted(t.Name) || (sum += t.Seconds) <= total + t.Seconds).OrderBy(t => IsCommitted(t.Name)).Select(t => t.Name)];
    }

    private static bool IsCommitted(string test) => test.Contains(".CommittedResultTests.", StringComparison.Ordinal) || test.Contains(".Recorded", StringComparison.Ordinal);

    private static string ClassOf(string test) => test[..test.LastIndexOf('.')];

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (string file in Directory.EnumerateFiles(from))
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        foreach (string folder in Directory.EnumerateDirectories(from).Where(f => Path.GetFileName(f) is "runtimes"))
            Copy(folder, Path.Combine(to, Path.GetFileName(folder)));
    }
}

/// <summary>A process that runs tests with a mutant switched on.</summary>
internal sealed class Remote : IDisposable
{
    private readonly Process _process;

    public Remote(string work, int from, string seconds, string tests)
    {
        var info = new ProcessStartInfo("dotnet") { RedirectStandardInput = true, RedirectStandardOutput = true, WorkingDirectory = work };
        foreach (string argument in new[] { "exec", "--depsfile", "SheetGen.Tests.deps.json", "--runtimeconfig", "SheetGen.Tests.runtimeconfig.json", "mutants.dll", "worker", work, from.ToString(CultureInfo.InvariantCulture), seconds, tests })
            info.ArgumentList.Add(argument);
        // One thread at a time: the counts of steps are the same in every run.
        info.Environment["DOTNET_PROCESSOR_COUNT"] = "1";
        info.Environment["DOTNET_gcConcurrent"] = "0";
        _process = Process.Start(info)!;
    }

    public bool IsGone => _process.HasExited;

    public void Send(string line)
    {
        _process.StandardInput.WriteLine(line);
        _process.StandardInput.Flush();
    }

    /// <summary>The next line, or null where none comes in time or the process has ended.</summary>
    public string? Receive(TimeSpan patience)
    {
        Task<string?> line = _process.StandardOutput.ReadLineAsync();
        if (line.Wait(patience))
            return line.Result;
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
        return null;
    }

    public string? Ask(int mutant, IEnumerable<string> tests, TimeSpan patience)
    {
        try
        {
            Send(mutant.ToString(CultureInfo.InvariantCulture) + "\t" + string.Join(';', tests));
        }
        catch (IOException)
        {
            return "killed (the process ended)";
        }
        Stopwatch clock = Stopwatch.StartNew();
        string? outcome = Receive(patience);
        if (outcome is null && clock.Elapsed < patience)
        {
            _process.WaitForExit();
            return "killed (the process ended)";
        }
        return outcome;
    }

    public void Dispose()
    {
        _process.StandardInput.Close();
        if (!_process.WaitForExit(5000))
            _process.Kill(entireProcessTree: true);
        _process.Dispose();
    }
}

/// <summary>Runs tests of SheetGen.Tests in this process.</summary>
internal static class Worker
{
    /// <param name="Data">The row of data, empty for a test without rows.</param>
    private sealed record Test(string Name, Type Class, MethodInfo Method, object?[] Data);

    /// <summary>More than there are mutants.</summary>
    private const int Most = 100_000;

    /// <summary>Steps of a test without a mutant.</summary>
    private static readonly Dictionary<string, long> Plain = [];

    public static int Run(string work, int from, double seconds, string names)
    {
        TextWriter answers = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true };
        Console.SetOut(TextWriter.Null);
        Console.SetError(TextWriter.Null);
        AssemblyLoadContext.Default.Resolving += (context, name) => File.Exists(Path.Combine(work, name.Name + ".dll")) ? context.LoadFromAssemblyPath(Path.Combine(work, name.Name + ".dll")) : null;
        Type gate = AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.Combine(work, "SheetGen.Layout.dll")).GetType("MutantSwitch")!;
        FieldInfo on = gate.GetField("On")!, steps = gate.GetField("Steps")!, most = gate.GetField("Most")!, hit = gate.GetField("Hit")!;
        on.SetValue(null, from);
        most.SetValue(null, from == 0 ? long.MaxValue : 4_000_000_000);
        Assembly assembly = AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.Combine(work, "SheetGen.Tests.dll"));
        Dictionary<string, Test> tests = All(assembly, new Regex(names)).ToDictionary(t => t.Name);
        while (Console.In.ReadLine() is { } line)
        {
            if (line == "cover")
            {
                foreach (Test test in tests.Values.OrderBy(t => t.Name, StringComparer.Ordinal))
                {
                    var reached = new bool[Most];
                    hit.SetValue(null, reached);
                    TimeSpan clock = Environment.CpuUsage.TotalTime;
                    steps.SetValue(null, 0L);
                    most.SetValue(null, (long)(seconds * 200_000_000));
                    string? fault = Try(test);
                    if ((long)steps.GetValue(null)! >= (long)most.GetValue(null)!)
                    {
                        answers.WriteLine($"fault\t{test.Name}\ttoo long");
                        continue;
                    }
                    double spent = (Environment.CpuUsage.TotalTime - clock).TotalSeconds;
                    int[] ids = [.. Enumerable.Range(0, reached.Length).Where(i => reached[i])];
                    if (fault is not null)
                        answers.WriteLine($"fault\t{test.Name}\t{fault.ReplaceLineEndings(" ")}");
                    else if (ids.Length > 0)
                    {
                        Plain[test.Name] = (long)steps.GetValue(null)!;
                        answers.WriteLine(FormattableString.Invariant($"test\t{test.Name}\t{spent:0.0000}\t{string.Join(',', ids)}\t{Plain[test.Name]}"));
                    }
                }
                hit.SetValue(null, Array.Empty<bool>());
                most.SetValue(null, long.MaxValue);
                answers.WriteLine("end");
                continue;
            }
            string[] parts = line.Split('\t');
            if (parts[0] == "plain")
            {
                foreach (string[] known in parts[1].Split(';').Select(p => p.Split('=')))
                    Plain[known[0]] = long.Parse(known[1], CultureInfo.InvariantCulture);
                continue;
            }
            int mutant = int.Parse(parts[0], CultureInfo.InvariantCulture);
            string outcome = "survived";
            foreach (string name in parts[1].Split(';'))
            {
                Test test = tests[name];
                on.SetValue(null, mutant);
                steps.SetValue(null, 0L);
                most.SetValue(null, Plain.TryGetValue(name, out long plain) ? plain * 100 + 10_000_000 : 4_000_000_000);
                string? fault = Try(test);
                bool slow = (long)steps.GetValue(null)! >= (long)most.GetValue(null)!;
                on.SetValue(null, 0);
                most.SetValue(null, long.MaxValue);
                if (slow)
                    outcome = "slow";
                else if (fault is not null)
                    outcome = $"killed ({name})";
                if (outcome != "survived")
                    break;
            }
            answers.WriteLine(outcome);
        }
        return 0;
    }

    private static IEnumerable<Test> All(Assembly assembly, Regex names)
    {
        foreach (Type type in assembly.GetTypes().Where(t => t is { IsClass: true, IsAbstract: false, IsPublic: true }).OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            foreach (MethodInfo method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            {
                string[] attributes = [.. method.GetCustomAttributesData().Select(a => a.AttributeType.Name)];
                if (!attributes.Any(a => a is "FactAttribute" or "TheoryAttribute" or "PropertyAttribute"))
                    continue;
                if (method.GetCustomAttributesData().Concat(type.GetCustomAttributesData()).Any(a => a.AttributeType.Name == "TraitAttribute" && Equals(a.ConstructorArguments[1].Value, "Outside")))
                    continue;
                if (type.Name is "FuzzTests" or "LongRunTests" or "SupplyTests" || type.GetConstructors().All(c => c.GetParameters().Length > 0))
                    continue;
                string name = $"{type.FullName}.{method.Name}";
                if (method.GetCustomAttributesData().Concat(type.GetCustomAttributesData()).Any(a => a.AttributeType.Name == "TraitAttribute" && Equals(a.ConstructorArguments[1].Value, "Long")))
                    name = "Long:" + name;
                if (!names.IsMatch(name))
                    continue;
                object?[][] rows = attributes.Contains("TheoryAttribute") ? [.. Rows(type, method)] : [[]];
                for (int i = 0; i < rows.Length; i++)
                    yield return new Test(rows.Length == 1 ? name : $"{name}#{i}", type, method, rows[i]);
            }
        }
    }

    /// <summary>Null where the test passes.</summary>
    private static string? Try(Test test)
    {
        try
        {
            if (test.Method.GetCustomAttributesData().FirstOrDefault(a => a.AttributeType.Name == "PropertyAttribute") is not null)
            {
                CheckProperty(test);
                return null;
            }
            object? instance = test.Method.IsStatic ? null : Activator.CreateInstance(test.Class);
            try
            {
                object? result = test.Method.Invoke(instance, Fit(test.Method.GetParameters(), test.Data));
                if (result is Task task)
                    task.GetAwaiter().GetResult();
            }
            finally
            {
                (instance as IDisposable)?.Dispose();
            }
            return null;
        }
        catch (Exception e)
        {
            Exception inner = e;
            while (inner is TargetInvocationException && inner.InnerException is { } next)
                inner = next;
            return inner.Message.Contains("$XunitDynamicSkip$", StringComparison.Ordinal) ? null : inner.GetType().Name + ": " + inner.Message;
        }
    }

    private static IEnumerable<object?[]> Rows(Type type, MethodInfo method)
    {
        Attribute[] data = [.. method.GetCustomAttributes().Where(a => a.GetType().Name is "InlineDataAttribute" or "MemberDataAttribute")];
        foreach (Attribute attribute in data)
        {
            if (attribute.GetType().Name == "InlineDataAttribute")
            {
                yield return (object?[])attribute.GetType().GetProperty("Data")!.GetValue(attribute)!;
                continue;
            }
            Type owner = (Type?)attribute.GetType().GetProperty("MemberType")!.GetValue(attribute) ?? type;
            string member = (string)attribute.GetType().GetProperty("MemberName")!.GetValue(attribute)!;
            object?[] arguments = (object?[]?)attribute.GetType().GetProperty("Arguments")?.GetValue(attribute) ?? [];
            const BindingFlags Any = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.FlattenHierarchy;
            object source = owner.GetProperty(member, Any)?.GetValue(null) ?? owner.GetField(member, Any)?.GetValue(null) ?? owner.GetMethod(member, Any)!.Invoke(null, arguments)!;
            foreach (object row in (IEnumerable)source)
                yield return row as object?[] ?? (object?[]?)row.GetType().GetInterface("ITheoryDataRow")?.GetMethod("GetData")!.Invoke(row, null) ?? [row];
        }
    }

    private static object?[] Fit(ParameterInfo[] parameters, object?[] row)
    {
        var fitted = new object?[parameters.Length];
        for (int i = 0; i < parameters.Length; i++)
        {
            Type wanted = Nullable.GetUnderlyingType(parameters[i].ParameterType) ?? parameters[i].ParameterType;
            if (i == parameters.Length - 1 && wanted.IsArray && parameters[i].IsDefined(typeof(ParamArrayAttribute)) && !(row.Length == parameters.Length && (row[i] is null || wanted.IsInstanceOfType(row[i]))))
            {
                var rest = Array.CreateInstance(wanted.GetElementType()!, Math.Max(0, row.Length - i));
                for (int k = i; k < row.Length; k++)
                    rest.SetValue(row[k], k - i);
                fitted[i] = rest;
                continue;
            }
            object? value = i < row.Length ? row[i] : parameters[i].DefaultValue;
            fitted[i] = value is null || wanted.IsInstanceOfType(value) ? value : wanted.IsEnum ? Enum.ToObject(wanted, value) : Convert.ChangeType(value, wanted, CultureInfo.InvariantCulture);
        }
        return fitted;
    }

    /// <summary>A property of FsCheck, with as many cases as it asks for and always the same ones.</summary>
    private static void CheckProperty(Test test)
    {
        Attribute attribute = test.Method.GetCustomAttributes().First(a => a.GetType().Name == "PropertyAttribute");
        Assembly fscheck = AssemblyLoadContext.Default.LoadFromAssemblyName(new AssemblyName("FsCheck"));
        Type configType = fscheck.GetType("FsCheck.Config")!;
        object config = configType.GetProperty("QuickThrowOnFailure")!.GetValue(null)!;
        object With(string name, object? value) => configType.GetMethod("With" + name)!.Invoke(config, [value])!;
        config = With("MaxTest", attribute.GetType().GetProperty("MaxTest")!.GetValue(attribute));
        Type replay = fscheck.GetType("FsCheck.Replay")!;
        object rnd = fscheck.GetType("FsCheck.Rnd")!.GetConstructor([typeof(ulong), typeof(ulong)])!.Invoke([1UL, 3UL]);
        Type option = configType.GetProperty("Replay")!.PropertyType, size = replay.GetConstructors()[0].GetParameters()[1].ParameterType;
        object seeded = replay.GetConstructors()[0].Invoke([rnd, size.GetProperty("None")?.GetValue(null)]);
        config = With("Replay", option.GetMethod("Some")!.Invoke(null, [seeded]));
        object? instance = test.Method.IsStatic ? null : Activator.CreateInstance(test.Class);
        MethodInfo check = fscheck.GetType("FsCheck.Check")!.GetMethods().First(m => m.Name == "Method" && m.GetParameters() is [var first, _, ..] && first.ParameterType == configType);
        Type instanceOption = check.GetParameters()[2].ParameterType;
        object? given = instance is null ? null : instanceOption.GetMethod("Some")!.Invoke(null, [instance]);
        check.Invoke(null, [config, test.Method, given]);
    }
}

/// <summary>The library with every mutant of a room behind a switch.</summary>
internal static class Schemata
{
    /// <summary>To be changed with what is changed in here, so that nothing kept is taken for new.</summary>
    public const string Version = "2";

    private const string Switch = """
        public static class MutantSwitch
        {
            public static int On;
            public static long Steps, Most = long.MaxValue;
            public static bool[] Hit = [];

            public static bool Is(int mutant)
            {
                if (++Steps >= Most)
                    Stop();
                if (mutant < Hit.Length)
                    Hit[mutant] = true;
                return On == mutant;
            }

            private static void Stop() => throw new System.TimeoutException("too many steps");
        }
        """;

    public static Dictionary<int, Mutant> Build(string source, string[] rooms, string built, string library)
    {
        var parse = new CSharpParseOptions(LanguageVersion.Latest);
        string separator = Path.DirectorySeparatorChar.ToString();
        var trees = Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains(separator + "bin" + separator, StringComparison.Ordinal) && (!f.Contains(separator + "obj" + separator, StringComparison.Ordinal) || f.EndsWith("GlobalUsings.g.cs", StringComparison.Ordinal)))
            .Order(StringComparer.Ordinal).Select(f => CSharpSyntaxTree.ParseText(File.ReadAllText(f), parse, f)).ToList();
        MetadataReference[] references =
        [
            .. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Where(p => Path.GetFileName(p).StartsWith("System.", StringComparison.Ordinal) || Path.GetFileName(p) is "netstandard.dll" or "mscorlib.dll" or "Microsoft.CSharp.dll").Select(p => MetadataReference.CreateFromFile(p)),
            MetadataReference.CreateFromFile(Path.Combine(built, "SheetGen.Model.dll")), MetadataReference.CreateFromFile(Path.Combine(built, "NetTopologySuite.dll")),
        ];
        // What the project grants to the tests, and the version that they were built against.
        trees.Add(CSharpSyntaxTree.ParseText($"[assembly: System.Runtime.CompilerServices.InternalsVisibleTo(\"SheetGen.Tests\")] [assembly: System.Runtime.CompilerServices.InternalsVisibleTo(\"SheetGen.Benchmarks\")] [assembly: System.Reflection.AssemblyVersion(\"{AssemblyName.GetAssemblyName(Path.Combine(built, "SheetGen.Layout.dll")).Version}\")]", parse));
        trees.Add(CSharpSyntaxTree.ParseText(Switch, parse));
        SyntaxTree[] whole = [.. trees];
        CSharpCompilation compilation = CSharpCompilation.Create("SheetGen.Layout", trees, references,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable, allowUnsafe: true));
        if (compilation.GetDiagnostics().FirstOrDefault(d => d.Severity == DiagnosticSeverity.Error) is { } fault)
            throw new InvalidOperationException("the library does not compile as it is: " + fault);
        var dropped = new HashSet<int>();
        var keptConst = new HashSet<string>(StringComparer.Ordinal);
        var mutants = new Dictionary<int, Mutant>();
        var open = whole.Where(t => rooms.Any(r => t.FilePath.StartsWith(Path.Combine(source, r) + separator, StringComparison.Ordinal))).ToDictionary(t => t.FilePath, StringComparer.Ordinal);
        // A file's mutants keep their numbers in every round.
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        int next = 1;
        for (int round = 0; round < 100; round++)
        {
            var faults = new List<Diagnostic>();
            foreach ((string file, SyntaxTree tree) in open)
            {
                int from = first.TryGetValue(file, out int known) ? known : first[file] = next;
                var rewriter = new Rewriter(tree, source, from, dropped, keptConst, mutants);
                SyntaxTree written = CSharpSyntaxTree.Create((CSharpSyntaxNode)rewriter.Visit(tree.GetRoot())!, parse, file);
                next = Math.Max(next, rewriter.Next);
                compilation = compilation.ReplaceSyntaxTree(compilation.SyntaxTrees.First(t => t.FilePath == file), written);
            }
            foreach (string file in open.Keys)
                faults.AddRange(compilation.GetSemanticModel(compilation.SyntaxTrees.First(t => t.FilePath == file)).GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error));
            if (faults.Count == 0)
            {
                Microsoft.CodeAnalysis.Emit.EmitResult emitted = compilation.Emit(library);
                if (emitted.Success)
                    return mutants;
                faults.AddRange(emitted.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error));
            }
            int before = dropped.Count + keptConst.Count;
            foreach (Diagnostic one in faults)
                Drop(one, dropped, keptConst);
            if (dropped.Count + keptConst.Count == before)
                throw new InvalidOperationException("the mutants do not compile: " + faults[0]);
            var touched = faults.Select(f => f.Location.SourceTree!.FilePath).ToHashSet(StringComparer.Ordinal);
            foreach (string file in open.Keys.Where(f => !touched.Contains(f)).ToArray())
                open.Remove(file);
            foreach (SyntaxTree tree in whole.Where(t => touched.Contains(t.FilePath)))
                open[tree.FilePath] = tree;
            foreach (int gone in dropped)
                mutants.Remove(gone);
        }
        throw new InvalidOperationException("the mutants do not compile");
    }

    /// <summary>Leaves out what brought a fault: the innermost mutant around it, a constant made switchable, else all of the member's mutants.</summary>
    private static void Drop(Diagnostic fault, HashSet<int> dropped, HashSet<string> keptConst)
    {
        SyntaxNode root = fault.Location.SourceTree!.GetRoot();
        SyntaxNode at = root.FindNode(fault.Location.SourceSpan, getInnermostNodeForTie: true);
        if (fault.Id is "CS0133" or "CS9135" or "CS0150" or "CS1736" && at.DescendantNodesAndSelf().OfType<IdentifierNameSyntax>().Select(n => n.Identifier.Text).FirstOrDefault(n => root.DescendantNodes().OfType<PropertyDeclarationSyntax>().Any(p => p.Identifier.Text == n && p.HasAnnotations("const"))) is { } name)
        {
            keptConst.Add(name);
            return;
        }
        if (at.AncestorsAndSelf().SelectMany(n => n.GetAnnotations("mutant")).FirstOrDefault() is { } mutant)
        {
            dropped.Add(int.Parse(mutant.Data!, CultureInfo.InvariantCulture));
            return;
        }
        SyntaxNode member = at.AncestorsAndSelf().FirstOrDefault(n => n is MemberDeclarationSyntax and not BaseTypeDeclarationSyntax) ?? root;
        IEnumerable<SyntaxNode> inside = member.DescendantNodesAndSelf();
        // An unassigned variable: the statement that assigned it is in there.
        int[] statements = [.. inside.OfType<IfStatementSyntax>().SelectMany(n => n.GetAnnotations("mutant")).Select(a => int.Parse(a.Data!, CultureInfo.InvariantCulture)).Where(i => !dropped.Contains(i))];
        dropped.UnionWith(statements.Length > 0 ? statements : inside.SelectMany(n => n.GetAnnotations("mutant")).Select(a => int.Parse(a.Data!, CultureInfo.InvariantCulture)));
    }

    private sealed class Rewriter(SyntaxTree tree, string source, int first, HashSet<int> dropped, HashSet<string> keptConst, Dictionary<int, Mutant> mutants) : CSharpSyntaxRewriter
    {
        public int Next { get; private set; } = first;

        public override SyntaxNode? Visit(SyntaxNode? node)
        {
            if (node is null or AttributeListSyntax or UsingDirectiveSyntax)
                return node;
            (SyntaxNode Is, SyntaxNode Was)[] changes = [.. Changes(node)];
            int id = Next;
            Next += changes.Length;
            SyntaxNode? visited = base.Visit(node);
            foreach ((SyntaxNode changed, SyntaxNode was) in changes)
            {
                int own = id++;
                if (dropped.Contains(own))
                    continue;
                Microsoft.CodeAnalysis.Text.LinePosition at = tree.GetLineSpan(was.Span).StartLinePosition;
                mutants[own] = new Mutant(own, Path.GetRelativePath(source, tree.FilePath), at.Line + 1, at.Character + 1, One(was), One(changed));
                var tag = new SyntaxAnnotation("mutant", own.ToString(CultureInfo.InvariantCulture));
                ExpressionSyntax on = SyntaxFactory.ParseExpression($"global::MutantSwitch.Is({own.ToString(CultureInfo.InvariantCulture)})");
                if (node is ExpressionStatementSyntax)
                {
                    visited = SyntaxFactory.IfStatement(SyntaxFactory.PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, on), SyntaxFactory.Block((StatementSyntax)visited!.WithoutTrivia()))
                        .NormalizeWhitespace().WithTriviaFrom(node).WithAdditionalAnnotations(tag);
                    continue;
                }
                visited = SyntaxFactory.ParenthesizedExpression(SyntaxFactory.ConditionalExpression(on.WithTrailingTrivia(SyntaxFactory.Space),
                    SyntaxFactory.ParenthesizedExpression((ExpressionSyntax)changed.WithoutTrivia()).WithLeadingTrivia(SyntaxFactory.Space).WithTrailingTrivia(SyntaxFactory.Space),
                    SyntaxFactory.ParenthesizedExpression((ExpressionSyntax)visited!.WithoutTrivia()).WithLeadingTrivia(SyntaxFactory.Space))).WithTriviaFrom(node).WithAdditionalAnnotations(tag);
            }
            return visited;
        }

        /// <summary>A constant is made a property, so that it can be switched.</summary>
        public override SyntaxNode? VisitFieldDeclaration(FieldDeclarationSyntax node)
        {
            var visited = (FieldDeclarationSyntax)base.VisitFieldDeclaration(node)!;
            if (!node.Modifiers.Any(SyntaxKind.ConstKeyword) || node.Declaration.Variables.Count != 1 || node.Declaration.Variables[0] is not { Initializer: { } value } variable || keptConst.Contains(variable.Identifier.Text) || node.Declaration.Type.ToString() is not ("int" or "double" or "bool" or "long"))
                return visited;
            return SyntaxFactory.PropertyDeclaration(node.Declaration.Type.WithTrailingTrivia(SyntaxFactory.Space), variable.Identifier.WithoutTrivia())
                .WithModifiers(SyntaxFactory.TokenList(node.Modifiers.Select(m => m.IsKind(SyntaxKind.ConstKeyword) ? SyntaxFactory.Token(SyntaxKind.StaticKeyword).WithTriviaFrom(m) : m)))
                .WithExpressionBody(SyntaxFactory.ArrowExpressionClause(visited.Declaration.Variables[0].Initializer!.Value))
                .WithSemicolonToken(SyntaxFactory.Token(SyntaxKind.SemicolonToken)).WithTriviaFrom(node).WithAdditionalAnnotations(new SyntaxAnnotation("const"));
        }

        private static IEnumerable<(SyntaxNode Is, SyntaxNode Was)> Changes(SyntaxNode node)
        {
            switch (node)
            {
                case BinaryExpressionSyntax binary when Other(binary.Kind()) is { } kinds:
                    foreach (SyntaxKind kind in kinds)
                        yield return (SyntaxFactory.BinaryExpression(kind, binary.Left, binary.Right), binary);
                    break;
                case LiteralExpressionSyntax { RawKind: (int)SyntaxKind.TrueLiteralExpression }:
                    yield return (SyntaxFactory.LiteralExpression(SyntaxKind.FalseLiteralExpression), node);
                    break;
                case LiteralExpressionSyntax { RawKind: (int)SyntaxKind.FalseLiteralExpression }:
                    yield return (SyntaxFactory.LiteralExpression(SyntaxKind.TrueLiteralExpression), node);
                    break;
                case LiteralExpressionSyntax { RawKind: (int)SyntaxKind.NumericLiteralExpression } number when number.Token.Value is int or double:
                    string text = number.Token.Value is int whole ? (whole + 1).ToString(CultureInfo.InvariantCulture) : ((double)number.Token.Value! * 1.5 + 0.01).ToString("0.0###############", CultureInfo.InvariantCulture);
                    yield return (SyntaxFactory.ParseExpression(text), node);
                    break;
                case PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression or (int)SyntaxKind.LogicalNotExpression } unary:
                    yield return (unary.Operand, node);
                    break;
                case ConditionalExpressionSyntax choice:
                    yield return (choice.WithWhenTrue(choice.WhenFalse.WithTriviaFrom(choice.WhenTrue)).WithWhenFalse(choice.WhenTrue.WithTriviaFrom(choice.WhenFalse)), node);
                    break;
                case InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax { Identifier.Text: "Math" }, Name.Identifier.Text: "Min" or "Max" or "Floor" or "Ceiling" } call } invocation:
                    string turned = call.Name.Identifier.Text switch { "Min" => "Max", "Max" => "Min", "Floor" => "Ceiling", _ => "Floor" };
                    yield return (invocation.WithExpression(call.WithName(SyntaxFactory.IdentifierName(turned))), invocation);
                    break;
                case ExpressionStatementSyntax { Expression: InvocationExpressionSyntax or AssignmentExpressionSyntax } statement when !Declares(statement):
                    yield return (SyntaxFactory.EmptyStatement(), statement);
                    break;
                case AssignmentExpressionSyntax { RawKind: (int)SyntaxKind.AddAssignmentExpression } added when added.Parent is not ExpressionStatementSyntax { Parent: null }:
                    yield return (SyntaxFactory.AssignmentExpression(SyntaxKind.SubtractAssignmentExpression, added.Left, added.Right), added);
                    break;
            }
            // The condition of a branch: what is a comparison already has its mutants.
            if (node is ExpressionSyntax condition && node.Parent is IfStatementSyntax branch && branch.Condition == condition && !Declares(condition) && condition is not (BinaryExpressionSyntax or PrefixUnaryExpressionSyntax))
                yield return (SyntaxFactory.PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, SyntaxFactory.ParenthesizedExpression(condition.WithoutTrivia())), condition);
        }

        private static bool Declares(SyntaxNode node) => node.DescendantNodesAndSelf().Any(n => n is DeclarationExpressionSyntax or SingleVariableDesignationSyntax);
    }

    private static string One(SyntaxNode node)
    {
        string text = string.Join(' ', node.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return text.Length > 90 ? text[..90] + "..." : text;
    }

    private static SyntaxKind[]? Other(SyntaxKind kind) => kind switch
    {
        SyntaxKind.AddExpression => [SyntaxKind.SubtractExpression],
        SyntaxKind.SubtractExpression => [SyntaxKind.AddExpression],
        SyntaxKind.MultiplyExpression => [SyntaxKind.DivideExpression],
        SyntaxKind.DivideExpression => [SyntaxKind.MultiplyExpression],
        SyntaxKind.LessThanExpression => [SyntaxKind.LessThanOrEqualExpression, SyntaxKind.GreaterThanExpression],
        SyntaxKind.LessThanOrEqualExpression => [SyntaxKind.LessThanExpression, SyntaxKind.GreaterThanExpression],
        SyntaxKind.GreaterThanExpression => [SyntaxKind.GreaterThanOrEqualExpression, SyntaxKind.LessThanExpression],
        SyntaxKind.GreaterThanOrEqualExpression => [SyntaxKind.GreaterThanExpression, SyntaxKind.LessThanExpression],
        SyntaxKind.EqualsExpression => [SyntaxKind.NotEqualsExpression],
        SyntaxKind.NotEqualsExpression => [SyntaxKind.EqualsExpression],
        SyntaxKind.LogicalAndExpression => [SyntaxKind.LogicalOrExpression],
        SyntaxKind.LogicalOrExpression => [SyntaxKind.LogicalAndExpression],
        _ => null,
    };
}
