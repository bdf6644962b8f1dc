using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using SheetGen.Dxf;
using SheetGen.Model;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>What is handed on, with its licences, and what the two libraries that others may use offer in public. SHEETGEN_WRITE_DOCS=1 writes the lists of the latter anew.</summary>
public sealed partial class SupplyTests
{
    private static readonly string ThirdParty = Repository.Read("docs", "third-party.md");

    /// <summary>The packages that the program is locked to, with version and hash.</summary>
    private static Dictionary<string, (string Version, string Hash)> Locked(params string[] lockFile)
    {
        using JsonDocument locked = JsonDocument.Parse(Repository.Read(lockFile));
        return locked.RootElement.GetProperty("dependencies").GetProperty("net10.0").EnumerateObject().Where(p => p.Value.GetProperty("type").GetString() != "Project")
            .ToDictionary(p => p.Name, p => (p.Value.GetProperty("resolved").GetString()!, p.Value.GetProperty("contentHash").GetString()!));
    }

    /// <summary>A name with one of these signs cannot be checked out on Windows.</summary>
    [Fact]
    public void Every_file_has_a_name_that_all_systems_take()
    {
        string[] names = [.. new[] { "src", "tests", "docs", "demo", "templates", "packaging" }.SelectMany(folder => Directory.EnumerateFileSystemEntries(
            Repository.PathOf(folder), "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }))
            .Where(p => !p.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj" or "node_modules")).Select(p => Path.GetFileName(p))];
        Assert.True(names.Length > 1000);
        Assert.DoesNotContain(names, n => n.AsSpan().IndexOfAny("<>:\"|?*\\") >= 0 || n.EndsWith('.') || n.EndsWith(' '));
    }

    /// <summary>CycloneDX 1.5: every package once with version, SHA-512, licence and package URL, and a graph of references that all exist.</summary>
    [Fact]
    public void The_bill_of_materials_lists_every_package_of_the_program()
    {
        using JsonDocument bill = JsonDocument.Parse(Repository.Read("docs", "sbom.cdx.json"));
        JsonElement root = bill.RootElement;
        Assert.Equal("CycloneDX", root.GetProperty("bomFormat").GetString());
        Assert.Equal("1.5", root.GetProperty("specVersion").GetString());
        JsonElement[] components = [.. root.GetProperty("components").EnumerateArray()];
        // The runtime comes with the SDK and is in no lock file: its patch is the one of the SDK that wrote the bill.
        JsonElement[] runtimes = [.. components.Where(c => c.GetProperty("type").GetString() == "framework")];
        Assert.Equal(["linux-x64", "osx-arm64", "win-x64"], runtimes.Select(c => c.GetProperty("name").GetString()!.Replace("Microsoft.NETCore.App.Runtime.", "", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        Assert.All(runtimes, c => Assert.Matches($"^pkg:nuget/{c.GetProperty("name").GetString()}@10\\.0\\.[0-9]+$", c.GetProperty("purl").GetString()));
        Assert.All(runtimes, c => Assert.Equal(("MIT", 128), (c.GetProperty("licenses")[0].GetProperty("license").GetProperty("id").GetString(), c.GetProperty("hashes")[0].GetProperty("content").GetString()!.Length)));
        Dictionary<string, (string Version, string Hash)> listed = components.Except(runtimes).Where(c => c.GetProperty("purl").GetString()!.StartsWith("pkg:nuget/", StringComparison.Ordinal)).ToDictionary(
            c => c.GetProperty("name").GetString()!, c => (c.GetProperty("version").GetString()!, c.GetProperty("hashes")[0].GetProperty("content").GetString()!));
        Assert.Equal(
            Locked("src", "SheetGen.Cli", "packages.lock.json").Select(p => (p.Key, p.Value.Version, Convert.ToHexStringLower(Convert.FromBase64String(p.Value.Hash)))).Order(),
            listed.Select(p => (p.Key, p.Value.Version, p.Value.Hash)).Order());
        Assert.All(components, c => Assert.NotEmpty(c.GetProperty("licenses")[0].GetProperty("license").GetProperty("id").GetString()!));
        HashSet<string> references = [.. components.Select(c => c.GetProperty("bom-ref").GetString()!), "sheetgen"];
        Assert.Equal(components.Length + 1, references.Count);
        foreach (JsonElement link in root.GetProperty("dependencies").EnumerateArray())
            Assert.Equal([], link.GetProperty("dependsOn").EnumerateArray().Append(link.GetProperty("ref")).Select(d => d.GetString()!).Where(d => !references.Contains(d)));
        Assert.Contains(root.GetProperty("metadata").GetProperty("component").GetProperty("version").GetString()!, Repository.Read("src", "Directory.Build.props"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_package_of_the_program_stands_in_third_party_work_with_its_version_and_licence()
    {
        using JsonDocument bill = JsonDocument.Parse(Repository.Read("docs", "sbom.cdx.json"));
        string[] rows = [.. ThirdParty.Split('\n').Where(l => l.StartsWith('|'))];
        foreach (JsonElement part in bill.RootElement.GetProperty("components").EnumerateArray())
        {
            string name = part.GetProperty("name").GetString()!, licence = part.GetProperty("licenses")[0].GetProperty("license").GetProperty("id").GetString()!;
            string row = Assert.Single(rows, r => Named(r.Split('|')[1], name));
            Assert.True(row.Contains(part.GetProperty("version").GetString()!, StringComparison.Ordinal) || row.Contains(" asks ", StringComparison.Ordinal), $"{name}: another version");
            Assert.Contains(licence == "OFL-1.1" ? "SIL Open Font License 1.1" : licence, row, StringComparison.Ordinal);
        }
    }

    /// <summary>What only the tests use, of NuGet and of npm.</summary>
    [Fact]
    public void Everything_that_the_tests_ask_for_is_named_in_third_party_work()
    {
        IEnumerable<string> packages = Directory.EnumerateFiles(Repository.PathOf("tests"), "*.csproj", SearchOption.AllDirectories)
            .SelectMany(f => PackageReference().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))
            .Concat(PackageLine().Matches(Repository.Read("tests", "Tools", "mutants.cs")).Select(m => m.Groups[1].Value));
        using JsonDocument node = JsonDocument.Parse(Repository.Read("tests", "Tools", "node", "package.json"));
        IEnumerable<string> ofNode = node.RootElement.GetProperty("dependencies").EnumerateObject().Select(d => d.Name);
        Assert.Equal([], packages.Concat(ofNode).Distinct().Where(p => !ThirdParty.Contains(p, StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("model", typeof(WallProject))]
    [InlineData("dxf", typeof(DxfDocument))]
    public void The_public_members_of_a_library_are_those_of_its_list(string name, Type of)
    {
        string[] path = ["tests", "SheetGen.Tests", "Cases", $"public-{name}.txt"];
        string text = string.Concat(PublicLines(of.Assembly).Select(l => l + "\n"));
        if (Environment.GetEnvironmentVariable("SHEETGEN_WRITE_DOCS") == "1")
            File.WriteAllText(Repository.PathOf(path), text);
        string[] was = Repository.Read(path).ReplaceLineEndings("\n").Split('\n'), now = text.Split('\n');
        string change = string.Join('\n', was.Except(now).Select(l => "- " + l).Concat(now.Except(was).Select(l => "+ " + l)));
        Assert.True(change.Length == 0, $"the public members of SheetGen.{name} changed; where that is meant, run this test with SHEETGEN_WRITE_DOCS=1\n{change}");
    }

    /// <summary>Every public type and member, a line each, without those that the compiler adds to a record.</summary>
    private static IEnumerable<string> PublicLines(Assembly assembly)
    {
        const BindingFlags Own = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        static bool IsAdded(MemberInfo m) => m.IsDefined(typeof(CompilerGeneratedAttribute)) || m.Name.Contains('<', StringComparison.Ordinal);
        static bool IsOpen(MethodBase? m) => m is { } && (m.IsPublic || m.IsFamily || m.IsFamilyOrAssembly);
        foreach (Type type in assembly.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            string kind = type.IsEnum ? "enum" : type.IsInterface ? "interface" : type.IsValueType ? "struct" : type.IsAbstract && type.IsSealed ? "static class" : type.IsAbstract ? "abstract class" : type.IsSealed ? "sealed class" : "class";
            yield return $"{kind} {Shown(type)}";
            var members = new List<string>();
            if (type.IsEnum)
                members.AddRange(Enum.GetNames(type).Select(n => $"{n} = {Convert.ToInt64(Enum.Parse(type, n), System.Globalization.CultureInfo.InvariantCulture)}"));
            else
            {
                members.AddRange(type.GetConstructors(Own).Where(c => IsOpen(c) && !IsAdded(c) && !c.IsStatic).Select(c => $"new({Parameters(c)})"));
                members.AddRange(type.GetFields(Own).Where(f => (f.IsPublic || f.IsFamily) && !IsAdded(f)).Select(f => $"field {Shown(f.FieldType)} {f.Name}"));
                members.AddRange(type.GetProperties(Own).Where(p => (IsOpen(p.GetMethod) || IsOpen(p.SetMethod)) && p.Name != "EqualityContract" && !IsAdded(p)).Select(p => $"property {Shown(p.PropertyType)} {p.Name} {{{(IsOpen(p.GetMethod) ? " get;" : "")}{(IsOpen(p.SetMethod) ? " set;" : "")} }}"));
                members.AddRange(type.GetMethods(Own).Where(m => IsOpen(m) && !m.IsSpecialName && !IsAdded(m) || m.Name.StartsWith("op_", StringComparison.Ordinal) && !IsAdded(m)).Select(m => $"{(m.IsStatic ? "static " : "")}{Shown(m.ReturnType)} {m.Name}({Parameters(m)})"));
            }
            foreach (string member in members.Order(StringComparer.Ordinal))
                yield return "  " + member;
        }

        static string Parameters(MethodBase method) => string.Join(", ", method.GetParameters().Select(p => $"{Shown(p.ParameterType)} {p.Name}"));
    }

    private static string Shown(Type type)
    {
        if (type.IsByRef)
            return "ref " + Shown(type.GetElementType()!);
        if (type.IsArray)
            return Shown(type.GetElementType()!) + "[]";
        if (type.IsGenericParameter)
            return type.Name;
        string name = type.Namespace is "System" ? type.Name : type.IsNested ? Shown(type.DeclaringType!) + "." + type.Name : (type.Namespace!.StartsWith("System", StringComparison.Ordinal) ? "" : type.Namespace + ".") + type.Name;
        if (!type.IsGenericType)
            return name;
        var text = new StringBuilder(Arity().Replace(name, ""));
        return text.Append('<').AppendJoin(", ", type.GetGenericArguments().Select(Shown)).Append('>').ToString();
    }

    private static bool Named(string cell, string name) => cell.Contains(name, StringComparison.Ordinal) && Regex.IsMatch(cell, $@"(^|[ ,(]){Regex.Escape(name)}([ ,)]|$)")
        || name.StartsWith("Microsoft.Extensions.", StringComparison.Ordinal) && cell.Contains(name["Microsoft.Extensions".Length..], StringComparison.Ordinal) && cell.Contains("Microsoft.Extensions", StringComparison.Ordinal);

    [GeneratedRegex("<PackageReference Include=\"([^\"]+)\"")]
    private static partial Regex PackageReference();

    [GeneratedRegex("#:package ([^@\\s]+)")]
    private static partial Regex PackageLine();

    [GeneratedRegex("`[0-9]+")]
    private static partial Regex Arity();
}
