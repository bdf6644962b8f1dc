using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;

namespace SheetGen.Review;

/// <summary>
/// The page's own modules as one script. Browsers load no modules from disk, so each module becomes a function that gives what it exports, after
/// those that it imports. Names are handed on as they are when a module ends: what is exported may not be assigned to later (no <c>export let</c>).
/// </summary>
public static partial class PageBundle
{
    private const string Entry = "main.js";

    /// <summary>Names of the modules in the order in which they run.</summary>
    public static IReadOnlyList<string> Order { get; } = Sorted();

    public static string Style { get; } = Read("page.css");

    public static string Frame { get; } = Read("page.html");

    public static string Script { get; } = Join();

    /// <summary>The text of a file of the page's folder.</summary>
    public static string Read(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("page/" + name)
            ?? throw new InvalidOperationException("the page has no part " + name);
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    /// <summary>Names that a module imports, by the file that they come from.</summary>
    public static IEnumerable<(string File, IReadOnlyList<string> Names)> Imports(string text) =>
        Import().Matches(text).Select(m => (m.Groups["file"].Value, (IReadOnlyList<string>)[.. m.Groups["names"].Value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)]));

    private static List<string> Sorted()
    {
        var order = new List<string>();
        var open = new HashSet<string>();
        Visit(Entry);
        return order;

        void Visit(string name)
        {
            if (order.Contains(name))
                return;
            if (!open.Add(name))
                throw new InvalidOperationException("modules of the page import each other in a ring: " + name);
            foreach ((string file, _) in Imports(Read(name)))
                Visit(file);
            order.Add(name);
        }
    }

    private static string Join()
    {
        var script = new StringBuilder("\"use strict\";\n(() => {\n");
        foreach (string name in Order)
        {
            string text = Read(name);
            IEnumerable<string> exports = Export().Matches(text).Select(m => m.Groups["name"].Value);
            script.Append(CultureInfo.InvariantCulture, $"const {Variable(name)} = (() => {{\n");
            foreach ((string file, IReadOnlyList<string> names) in Imports(text))
                script.Append(CultureInfo.InvariantCulture, $"const {{ {string.Join(", ", names)} }} = {Variable(file)};\n");
            script.Append(Export().Replace(Import().Replace(text, ""), "${what} ${name}"));
            script.Append(CultureInfo.InvariantCulture, $"return {{ {string.Join(", ", exports)} }};\n}})();\n");
        }
        return script.Append("})();\n").ToString();
    }

    private static string Variable(string file) => "$" + Path.GetFileNameWithoutExtension(file);

    [GeneratedRegex("""^import \{(?<names>[^}]*)\} from "\./(?<file>[a-z0-9]+\.js)";\n""", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex Import();

    [GeneratedRegex(@"^export (?<what>(async )?(const|let|function|class)) (?<name>\w+)", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex Export();
}
