using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace SheetGen.ProjectFile.Tree;

/// <summary>A node tree as YAML: blocks of keys line by line, lists of single values in brackets.</summary>
internal static class YamlText
{
    private static readonly JsonSerializerOptions Quotes = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(Node root)
    {
        var text = new StringBuilder();
        Write(text, root, 0);
        return text.ToString();
    }

    private static void Write(StringBuilder text, Node node, int indent)
    {
        switch (node)
        {
            case MapNode { Entries.Count: > 0 } map:
                foreach ((ScalarNode name, Node value) in map.Entries)
                {
                    text.Append(' ', indent).Append(Scalar(name)).Append(':');
                    WriteValue(text, value, indent + 2);
                }
                break;
            case ListNode { Items.Count: > 0 } list:
                foreach (Node item in list.Items)
                {
                    text.Append(' ', indent).Append('-');
                    WriteValue(text, item, indent + 2);
                }
                break;
            default:
                text.Append(' ', indent).Append(Flow(node)).Append('\n');
                break;
        }
    }

    private static void WriteValue(StringBuilder text, Node value, int indent)
    {
        if (IsFlow(value))
        {
            text.Append(' ').Append(Flow(value)).Append('\n');
            return;
        }
        text.Append('\n');
        Write(text, value, indent);
    }

    private static bool IsFlow(Node node) => node switch
    {
        MapNode map => map.Entries.Count == 0,
        ListNode list => list.Items.All(IsFlow),
        _ => true,
    };

    /// <summary>A node in one line, in brackets and braces.</summary>
    public static string Flow(Node node) => node switch
    {
        ScalarNode { IsEmpty: true } => "~",
        ScalarNode scalar => Scalar(scalar),
        ListNode list => "[" + string.Join(", ", list.Items.Select(Flow)) + "]",
        MapNode map => "{" + string.Join(", ", map.Entries.Select(e => $"{Scalar(e.Key)}: {Flow(e.Value)}")) + "}",
        _ => "{}",
    };

    /// <summary>Plain where nothing in it could be read otherwise; else in double quotes, whose escapes are those of JSON.</summary>
    private static string Scalar(ScalarNode scalar)
    {
        string text = scalar.Text;
        bool isPlain = !scalar.Quoted && text.Length > 0 && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '+' or '_' or '-' or ' ' or '/') && char.IsAsciiLetterOrDigit(text[0]) && text[^1] != ' ';
        bool isNumber = !scalar.Quoted && text.Length > 1 && text[0] is '-' or '+' && text.Length > 1 && text[1..].All(c => char.IsAsciiDigit(c) || c == '.');
        return isPlain || isNumber ? text : JsonSerializer.Serialize(text, Quotes);
    }
}
