#:package Microsoft.CodeAnalysis.CSharp@5.0.0
#:property ManagePackageVersionsCentrally=false
#:property RestorePackagesWithLockFile=false
#:property PublishAot=false

// Mutation testing of a room of SheetGen.Layout: changes one place of its source at a time, compiles it, and runs the tests that should see it.
//
//   dotnet run tests/Tools/mutants.cs -- ROOM COUNT SEED MINUTES REPORT -- xunit arguments
//   dotnet run tests/Tools/mutants.cs -- Clearance 60 1 20 mutants.txt -- -class SheetGen.Tests.Clearance.*
//
// Needs a release build of tests/SheetGen.Tests. Every line of the report is a mutant: killed, survived, or slow (did not end in ten times the time of
// the tests as they are, and so is killed), with its place and what was changed. Mutants that do not compile are none.

using System.Diagnostics;
using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

int split = Array.IndexOf(args, "--");
if (split < 0)
    split = args.Length;
if (split < 5)
{
    Console.Error.WriteLine("usage: mutants ROOM COUNT SEED MINUTES REPORT -- xunit arguments");
    return 2;
}
string room = args[0], report = args[4];
int count = int.Parse(args[1], CultureInfo.InvariantCulture), seed = int.Parse(args[2], CultureInfo.InvariantCulture);
TimeSpan allowed = TimeSpan.FromMinutes(double.Parse(args[3], CultureInfo.InvariantCulture));
string[] tests = args[Math.Min(args.Length, split + 1)..];

int ran = 0;
string root = Directory.GetCurrentDirectory();
while (!File.Exists(Path.Combine(root, "SheetGen.sln")))
    root = Path.GetDirectoryName(root) ?? throw new InvalidOperationException("run it inside of the repository");
string source = Path.Combine(root, "src", "SheetGen.Layout"), built = Path.Combine(root, "tests", "SheetGen.Tests", "bin", "Release", "net10.0");
// Beside the tests' own folder, so that they find the repository above it.
string work = built + "-mutants-" + Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
Copy(built, work);
try
{
    var parse = new CSharpParseOptions(LanguageVersion.Latest);
    var trees = Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories)
        .Where(f => !f.Contains(Path.DirectorySeparatorChar + "bin" + Path.DirectorySeparatorChar, StringComparison.Ordinal) && (!f.Contains(Path.DirectorySeparatorChar + "obj" + Path.DirectorySeparatorChar, StringComparison.Ordinal) || f.EndsWith("GlobalUsings.g.cs", StringComparison.Ordinal)))
        .Order(StringComparer.Ordinal).Select(f => CSharpSyntaxTree.ParseText(File.ReadAllText(f), parse, f)).ToList();
    MetadataReference[] references =
    [
        .. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Where(p => Path.GetFileName(p).StartsWith("System.", StringComparison.Ordinal) || Path.GetFileName(p) is "netstandard.dll" or "mscorlib.dll" or "Microsoft.CSharp.dll").Select(p => MetadataReference.CreateFromFile(p)),
        MetadataReference.CreateFromFile(Path.Combine(built, "SheetGen.Model.dll")), MetadataReference.CreateFromFile(Path.Combine(built, "NetTopologySuite.dll")),
    ];
    // What the project grants to the tests.
    trees.Add(CSharpSyntaxTree.ParseText("[assembly: System.Runtime.CompilerServices.InternalsVisibleTo(\"SheetGen.Tests\")] [assembly: System.Runtime.CompilerServices.InternalsVisibleTo(\"SheetGen.Benchmarks\")]", parse));
    if (trees.Any(t => t.FilePath.EndsWith("AssemblyInfo.cs", StringComparison.Ordinal)))
        trees.RemoveAt(trees.Count - 1);
    // The tests were built against this version.
    trees.Add(CSharpSyntaxTree.ParseText($"[assembly: System.Reflection.AssemblyVersion(\"{System.Reflection.AssemblyName.GetAssemblyName(Path.Combine(built, "SheetGen.Layout.dll")).Version}\")]", parse));
    CSharpCompilation whole = CSharpCompilation.Create("SheetGen.Layout", trees, references,
        new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable, allowUnsafe: true));
    Diagnostic[] faults = [.. whole.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error)];
    if (faults.Length > 0)
    {
        Console.Error.WriteLine(string.Join('\n', faults.Take(10).Select(f => f.ToString())));
        return 2;
    }
    string library = Path.Combine(work, "SheetGen.Layout.dll");
    whole.Emit(library);
    Stopwatch clock = Stopwatch.StartNew();
    if (Run(TimeSpan.FromMinutes(20)) != true || ran == 0)
    {
        Console.Error.WriteLine(ran == 0 ? "no test is chosen" : "the tests fail without a mutant");
        return 2;
    }
    Console.WriteLine(FormattableString.Invariant($"{ran} tests as they are: {clock.Elapsed.TotalSeconds:0} s"));
    TimeSpan usual = clock.Elapsed;
    (SyntaxTree Tree, SyntaxNode Node, SyntaxNode Changed)[] all = [.. trees.Where(t => t.FilePath.StartsWith(Path.Combine(source, room), StringComparison.Ordinal)).SelectMany(t => Mutants(t.GetRoot()).Select(m => (t, m.Node, m.Changed)))];
    var random = new Random(seed);
    random.Shuffle(all);
    var lines = new List<string>();
    int killed = 0, survived = 0, slow = 0;
    clock.Restart();
    foreach ((SyntaxTree tree, SyntaxNode node, SyntaxNode changed) in all)
    {
        if (killed + survived + slow >= count || clock.Elapsed > allowed)
            break;
        SyntaxTree mutant = CSharpSyntaxTree.Create((CSharpSyntaxNode)tree.GetRoot().ReplaceNode(node, changed), parse, tree.FilePath);
        if (!whole.ReplaceSyntaxTree(tree, mutant).Emit(library).Success)
            continue;
        bool? passed = Run(usual * 10 + TimeSpan.FromSeconds(60));
        (killed, survived, slow) = passed switch { false => (killed + 1, survived, slow), true => (killed, survived + 1, slow), null => (killed, survived, slow + 1) };
        LinePosition at = tree.GetLineSpan(node.Span).StartLinePosition;
        string line = FormattableString.Invariant($"{(passed switch { false => "killed", true => "SURVIVED", null => "slow" })} {Path.GetRelativePath(source, tree.FilePath)}:{at.Line + 1}:{at.Character + 1} {One(node)} -> {One(changed)}");
        File.AppendAllText(report, line + "\n");
        Console.WriteLine(line);
    }
    string summary = FormattableString.Invariant($"{room}: {killed + survived + slow} mutants of {all.Length} places, {killed} killed, {slow} slow, {survived} survived: {100.0 * (killed + slow) / Math.Max(1, killed + slow + survived):0.0} %");
    File.AppendAllText(report, summary + "\n");
    Console.WriteLine(summary);
    return 0;
}
finally
{
    Directory.Delete(work, recursive: true);
}

// True where all tests pass, false where one fails, null where they do not end.
bool? Run(TimeSpan patience)
{
    var info = new ProcessStartInfo(Path.Combine(work, "SheetGen.Tests")) { RedirectStandardOutput = true, RedirectStandardError = true };
    foreach (string argument in new[] { "-stopOnFail", "-noColor", "-noLogo" }.Concat(tests))
        info.ArgumentList.Add(argument);
    using Process process = Process.Start(info)!;
    process.OutputDataReceived += (_, line) =>
    {
        int at = line.Data?.IndexOf("Total: ", StringComparison.Ordinal) ?? -1;
        if (at >= 0)
            ran = int.Parse(line.Data![(at + 7)..].Split(',')[0], CultureInfo.InvariantCulture);
    };
    process.ErrorDataReceived += (_, _) => { };
    process.BeginOutputReadLine();
    process.BeginErrorReadLine();
    if (process.WaitForExit(patience))
    {
        process.WaitForExit();
        return process.ExitCode == 0;
    }
    process.Kill(entireProcessTree: true);
    return null;
}

static string One(SyntaxNode node)
{
    string text = string.Join(' ', node.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    return text.Length > 90 ? text[..90] + "..." : text;
}

static void Copy(string from, string to)
{
    Directory.CreateDirectory(to);
    foreach (string file in Directory.EnumerateFiles(from))
        File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
    foreach (string folder in Directory.EnumerateDirectories(from).Where(f => Path.GetFileName(f) is "runtimes"))
        Copy(folder, Path.Combine(to, Path.GetFileName(folder)));
}

static IEnumerable<(SyntaxNode Node, SyntaxNode Changed)> Mutants(SyntaxNode rootNode)
{
    foreach (SyntaxNode node in rootNode.DescendantNodes().Where(n => !n.Ancestors().Any(a => a is AttributeListSyntax)))
    {
        switch (node)
        {
            case BinaryExpressionSyntax binary when Other(binary.Kind()) is { } kinds:
                foreach (SyntaxKind kind in kinds)
                    yield return (binary, SyntaxFactory.BinaryExpression(kind, binary.Left, binary.Right).WithTriviaFrom(binary));
                break;
            case LiteralExpressionSyntax { RawKind: (int)SyntaxKind.TrueLiteralExpression } yes:
                yield return (yes, SyntaxFactory.LiteralExpression(SyntaxKind.FalseLiteralExpression).WithTriviaFrom(yes));
                break;
            case LiteralExpressionSyntax { RawKind: (int)SyntaxKind.FalseLiteralExpression } no:
                yield return (no, SyntaxFactory.LiteralExpression(SyntaxKind.TrueLiteralExpression).WithTriviaFrom(no));
                break;
            case LiteralExpressionSyntax { RawKind: (int)SyntaxKind.NumericLiteralExpression } number when number.Token.Value is int or double:
                string text = number.Token.Value is int whole ? (whole + 1).ToString(CultureInfo.InvariantCulture) : ((double)number.Token.Value! * 1.5 + 0.01).ToString("0.0###############", CultureInfo.InvariantCulture);
                yield return (number, SyntaxFactory.ParseExpression(text).WithTriviaFrom(number));
                break;
            case PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression or (int)SyntaxKind.LogicalNotExpression } unary:
                yield return (unary, unary.Operand.WithTriviaFrom(unary));
                break;
            case IfStatementSyntax branch when !branch.Condition.DescendantNodesAndSelf().Any(n => n is PatternSyntax or DeclarationExpressionSyntax):
                yield return (branch.Condition, SyntaxFactory.PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, SyntaxFactory.ParenthesizedExpression(branch.Condition)));
                break;
            case ConditionalExpressionSyntax choice:
                yield return (choice, choice.WithWhenTrue(choice.WhenFalse.WithTriviaFrom(choice.WhenTrue)).WithWhenFalse(choice.WhenTrue.WithTriviaFrom(choice.WhenFalse)));
                break;
            case MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax { Identifier.Text: "Math" }, Name.Identifier.Text: "Min" or "Max" or "Floor" or "Ceiling" } call:
                string turned = call.Name.Identifier.Text switch { "Min" => "Max", "Max" => "Min", "Floor" => "Ceiling", _ => "Floor" };
                yield return (call, call.WithName(SyntaxFactory.IdentifierName(turned)));
                break;
            case ExpressionStatementSyntax { Expression: InvocationExpressionSyntax or AssignmentExpressionSyntax } statement:
                yield return (statement, SyntaxFactory.EmptyStatement().WithTriviaFrom(statement));
                break;
            case AssignmentExpressionSyntax { RawKind: (int)SyntaxKind.AddAssignmentExpression } added:
                yield return (added, SyntaxFactory.AssignmentExpression(SyntaxKind.SubtractAssignmentExpression, added.Left, added.Right).WithTriviaFrom(added));
                break;
        }
    }
}

static SyntaxKind[]? Other(SyntaxKind kind) => kind switch
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
