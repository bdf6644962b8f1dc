using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Keys;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace SheetGen.ProjectFile.Tree;

/// <summary>
/// Loads a YAML text as plain nodes with their places. Limits on size, nesting and number of values, and the refusal of anchors and
/// aliases, keep a hostile file from costing more than its own length.
/// </summary>
internal sealed class YamlLoader
{
    public const int MostCharacters = 4_000_000;
    public const int MostNodes = 400_000;
    public const int DeepestNesting = 32;

    private readonly string _file;
    private readonly string _text;
    private readonly ProblemList _problems;
    private readonly IParser _events;
    private readonly Stack<SourceSpot> _openBrackets = new();
    private int _nodes;

    private YamlLoader(string text, string file, ProblemList problems)
    {
        _text = text;
        _file = file;
        _problems = problems;
        _events = new Parser(new StringReader(text));
    }

    /// <summary>The root node; null where the text cannot be loaded, which is then reported.</summary>
    public static Node? Load(string text, string file, ProblemList problems)
    {
        var start = new SourceSpot(file, 1, 1);
        if (text.Length > MostCharacters)
        {
            problems.Add(ProblemCodes.TooLarge, start, FormattableString.Invariant($"the file has {text.Length} characters; the limit is {MostCharacters}"));
            return null;
        }
        if (SourceLines.ControlCharacter(text) is { } place)
        {
            problems.Add(ProblemCodes.Syntax, new SourceSpot(file, place.Line, place.Column), "a control character stands here", "remove it; save the file as plain UTF-8 text");
            return null;
        }
        var loader = new YamlLoader(BareBars.Mask(text), file, problems);
        try
        {
            return loader.LoadDocument();
        }
        catch (YamlException e)
        {
            loader.ReportSyntax(e.Start, e.Message);
        }
        catch (StoppedException)
        {
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException or KeyNotFoundException or NullReferenceException or FormatException or OverflowException)
        {
            // The YAML package fails with these on some malformed texts, such as a bracket that is not closed.
            int at = (int)(loader._events.Current?.End.Line ?? 1);
            if (loader.ReportSlip(Math.Max(at, loader._openBrackets.TryPeek(out SourceSpot open) ? open.Line : 1)))
                return null;
            if (loader._openBrackets.TryPeek(out SourceSpot bracket))
                problems.Add(ProblemCodes.Syntax, bracket, "the YAML cannot be read: this bracket is not closed, or what is in it is malformed", loader.CommentHint() ?? "close it, and check the commas");
            else
                loader.ReportSyntax(loader._events.Current?.End ?? Mark.Empty, "malformed text");
        }
        return null;
    }

    private Node? LoadDocument()
    {
        Expect<StreamStart>();
        if (Next() is StreamEnd)
        {
            _problems.Add(ProblemCodes.Syntax, new SourceSpot(_file, 1, 1), "the file is empty", "\"start\" writes a commented starter project");
            return null;
        }
        Node root = LoadNode(Next(), 0);
        while (Next() is not StreamEnd)
        {
            if (_events.Current is DocumentStart second)
                Stop(ProblemCodes.NotUsed, Spot(second), "a second YAML document starts here", "keep one document in a file");
        }
        return root;
    }

    private Node LoadNode(ParsingEvent at, int depth)
    {
        if (++_nodes > MostNodes)
            Stop(ProblemCodes.TooLarge, Spot(at), FormattableString.Invariant($"the file has more than {MostNodes} values"));
        if (depth > DeepestNesting)
            Stop(ProblemCodes.TooLarge, Spot(at), FormattableString.Invariant($"the file is nested more than {DeepestNesting} deep"));
        if (at is AnchorAlias alias)
            Stop(ProblemCodes.NotUsed, Spot(at), $"aliases are not used in project files: *{Shown.Short(alias.Value.Value)}", "write the value out");
        if (at is NodeEvent { Anchor.IsEmpty: false } anchored)
            Stop(ProblemCodes.NotUsed, Spot(at), $"anchors are not used in project files: &{Shown.Short(anchored.Anchor.Value)}", "write the value out where it is needed");
        if (at is NodeEvent { Tag.IsEmpty: false } tagged)
            Stop(ProblemCodes.NotUsed, Spot(at), $"tags are not used in project files: {Shown.Short(tagged.Tag.ToString())}", "remove the tag");
        return at switch
        {
            Scalar scalar => LoadScalar(scalar),
            SequenceStart => LoadList(at, depth),
            MappingStart => LoadMap(at, depth),
            _ => throw new InvalidOperationException("unexpected YAML event"),
        };
    }

    private ScalarNode LoadScalar(Scalar scalar)
    {
        string text = scalar.Value;
        if (text.StartsWith(BareBars.StandIn))
        {
            text = "#" + text[1..];
            _problems.Add(ProblemCodes.EmptyValue, Spot(scalar), "a # outside quotes starts a comment", $"write the size in quotes: \"{Shown.Short(text)}\"");
        }
        return new ScalarNode(text, scalar.Style != ScalarStyle.Plain, Spot(scalar));
    }

    private ListNode LoadList(ParsingEvent start, int depth)
    {
        var items = new List<Node>();
        Open(start);
        while (Next() is not SequenceEnd)
            items.Add(LoadNode(_events.Current!, depth + 1));
        Close(start);
        return new ListNode(items, Spot(start));
    }

    private MapNode LoadMap(ParsingEvent start, int depth)
    {
        var entries = new List<KeyValuePair<ScalarNode, Node>>();
        var seen = new Dictionary<string, SourceSpot>();
        Open(start);
        while (Next() is not MappingEnd)
        {
            ParsingEvent at = _events.Current!;
            if (LoadNode(at, depth + 1) is not ScalarNode key)
            {
                Stop(ProblemCodes.NotUsed, Spot(at), "a key must be a plain word", "look for a missing colon or bracket");
                break;
            }
            if (key is { Text: "<<", Quoted: false })
                Stop(ProblemCodes.NotUsed, key.Spot, "merge keys (<<) are not used in project files", "write the keys out");
            Node value = LoadNode(Next(), depth + 1);
            if (seen.TryGetValue(key.Text, out SourceSpot first))
            {
                string where = FormattableString.Invariant($"line {first.Line}");
                _problems.Add(ProblemCodes.DuplicateKey, key.Spot, $"\"{Shown.Short(key.Text)}\" is given twice, first in {where}", "remove one of the two", first);
                continue;
            }
            seen.Add(key.Text, key.Spot);
            entries.Add(new(key, value));
        }
        Close(start);
        return new MapNode(entries, Spot(start));
    }

    private void Open(ParsingEvent start)
    {
        if (IsBracket(start))
            _openBrackets.Push(Spot(start));
    }

    private void Close(ParsingEvent start)
    {
        if (IsBracket(start))
            _openBrackets.Pop();
    }

    private static bool IsBracket(ParsingEvent start) =>
        start is SequenceStart { Style: SequenceStyle.Flow } or MappingStart { Style: MappingStyle.Flow };

    private ParsingEvent Next()
    {
        if (!_events.MoveNext())
            throw new InvalidOperationException("unexpected end");
        return _events.Current!;
    }

    private void Expect<T>()
        where T : ParsingEvent
    {
        if (Next() is not T)
            throw new InvalidOperationException("unexpected YAML event");
    }

    private SourceSpot Spot(ParsingEvent e)
    {
        int length = e is Scalar && e.Start.Line == e.End.Line ? (int)(e.End.Column - e.Start.Column) : 1;
        return new SourceSpot(_file, (int)e.Start.Line, (int)e.Start.Column, Math.Max(1, length));
    }

    private void ReportSyntax(Mark mark, string message)
    {
        // The end of the text may be reported as a line behind the last one.
        int last = SourceLines.Count(_text);
        int line = Math.Clamp((int)mark.Line, 1, last);
        int column = mark.Line > last ? SourceLines.Line(_text, last).Length + 1 : Math.Max(1, (int)mark.Column);
        if (message.Contains("tab", StringComparison.Ordinal) && SourceLines.IndentingTab(_text, line) is { } tab)
        {
            _problems.Add(ProblemCodes.Syntax, new SourceSpot(_file, tab.Line, tab.Column), "a tab is used as indentation", "indent with spaces");
            return;
        }
        if (ReportSlip(line))
            return;
        _problems.Add(ProblemCodes.Syntax, new SourceSpot(_file, line, column), $"the YAML cannot be read: {Plain(message)}", CommentHint() ?? BracketHint() ?? "look at this place and just before it");
    }

    /// <summary>Reports the slip that the lines show; false where they show none.</summary>
    private bool ReportSlip(int stopped)
    {
        if (SyntaxAdvice.Find(_text, stopped, KeyNames.All) is not { } slip)
            return false;
        _problems.Add(ProblemCodes.Syntax, new SourceSpot(_file, slip.Line, slip.Column), slip.Message.Replace(BareBars.StandIn, '#'), slip.Hint.Replace(BareBars.StandIn, '#'));
        return true;
    }

    /// <summary>A hint where a # may have cut off the rest of an open bracket; else null.</summary>
    private string? CommentHint() =>
        _openBrackets.TryPeek(out SourceSpot bracket) && SourceLines.Line(_text, bracket.Line).Contains(" #", StringComparison.Ordinal)
            ? "a # outside quotes starts a comment: write \"#8\""
            : null;

    private string? BracketHint() =>
        _openBrackets.TryPeek(out SourceSpot bracket) ? FormattableString.Invariant($"the bracket at {bracket.Line}:{bracket.Column} is open here") : null;

    private static string Plain(string message)
    {
        string text = message.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal).TrimEnd('.', ' ');
        int place = text.StartsWith('(') ? text.IndexOf("): ", StringComparison.Ordinal) : -1;
        text = place >= 0 ? text[(place + 3)..] : text;
        return text.Length == 0 ? "malformed" : char.ToLowerInvariant(text[0]) + text[1..];
    }

    private void Stop(ProblemCode code, SourceSpot spot, string message, string hint = "")
    {
        _problems.Add(code, spot, message, hint);
        throw new StoppedException();
    }

    /// <summary>Ends the loading after its reason has been reported.</summary>
    private sealed class StoppedException : Exception;
}
