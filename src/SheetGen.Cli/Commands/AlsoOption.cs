using System.CommandLine;
using System.CommandLine.Parsing;
using SheetGen.Exchange;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.Cli.Commands;

/// <summary><c>--also</c>: open formats that a build writes beside its results.</summary>
public sealed class AlsoOption
{
    private const string Everything = "all";

    public AlsoOption() => Option.Validators.Add(Check);

    /// <summary>All words that it takes.</summary>
    public static string Words { get; } = string.Join(", ", ExchangeFormat.All.Select(f => f.Word).Append(Everything));

    public Option<string[]> Option { get; } = new("--also")
    {
        Description = $"Open formats to write too, with commas between: {Words}.",
        HelpName = "FORMATS",
        DefaultValueFactory = _ => [],
    };

    /// <summary>The formats asked for, each once, in their own order.</summary>
    public IReadOnlyList<ExchangeFormat> Of(ParseResult parsed)
    {
        List<string> words = [.. (parsed.GetValue(Option) ?? []).SelectMany(Split)];
        return [.. ExchangeFormat.All.Where(f => words.Contains(f.Word) || words.Contains(Everything))];
    }

    private static void Check(OptionResult result)
    {
        string[] known = [.. ExchangeFormat.All.Select(f => f.Word), Everything];
        foreach (string text in result.Tokens.Select(t => t.Value))
        {
            IEnumerable<string> words = Split(text);
            if (!words.Any())
                result.AddError($"Option '--also' needs the name of a format: {Words}.");
            foreach (string word in words.Where(w => !known.Contains(w)))
            {
                result.AddError(Suggestion.Nearest(word, known) is { } near
                    ? $"--also knows no format \"{word}\": did you mean {near}?"
                    : $"--also knows no format \"{word}\"; the formats are {Words}");
            }
        }
    }

    private static IEnumerable<string> Split(string text) =>
        text.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(w => w.ToLowerInvariant());
}
