using System.Globalization;
using System.Text;
using System.Text.Json;

namespace SheetGen.Drawing.Templating;

/// <summary>Where each value of a JSON text stands, so that a fault can be told with its place.</summary>
public sealed class JsonPlaces
{
    private readonly Dictionary<string, (int Line, int Column)> _places = new(StringComparer.OrdinalIgnoreCase);

    private JsonPlaces()
    {
    }

    /// <summary>Every path of the text in order: <c>layers.Fill.color</c>, <c>linetypes[0].pattern[1]</c>.</summary>
    public IEnumerable<string> Paths => _places.Keys;

    /// <summary>Paths of keys that stand twice in their block, in the same case or not, with the second place.</summary>
    public List<(string Path, bool SameCase, int Line, int Column)> Twice { get; } = [];

    /// <summary>Every text of the file with its path.</summary>
    public List<(string Path, string Text)> Texts { get; } = [];

    /// <summary>Places of a well-formed text; what comes behind a fault of the text has none.</summary>
    public static JsonPlaces In(string json)
    {
        var places = new JsonPlaces();
        byte[] bytes = Encoding.UTF8.GetBytes(json);
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        var open = new Stack<(string Path, int Next)>();
        var exact = new HashSet<string>(StringComparer.Ordinal);
        string? key = null;
        int line = 1, lineStart = 0, seen = 0;
        try
        {
            while (reader.Read())
            {
                int at = (int)reader.TokenStartIndex;
                for (; seen < at; seen++)
                {
                    if (bytes[seen] == '\n')
                        (line, lineStart) = (line + 1, seen + 1);
                }
                var place = (line, Encoding.UTF8.GetCharCount(bytes, lineStart, at - lineStart) + 1);
                if (reader.TokenType == JsonTokenType.PropertyName)
                {
                    key = reader.GetString()!;
                    continue;
                }
                if (reader.TokenType is JsonTokenType.EndObject or JsonTokenType.EndArray)
                {
                    open.Pop();
                    continue;
                }
                string path = PathOf(open, key);
                key = null;
                bool sameCase = !exact.Add(path);
                if (!places._places.TryAdd(path, place))
                    places.Twice.Add((path, sameCase, place.line, place.Item2));
                if (reader.TokenType == JsonTokenType.String)
                    places.Texts.Add((path, reader.GetString()!));
                if (reader.TokenType == JsonTokenType.StartObject)
                    open.Push((path, -1));
                else if (reader.TokenType == JsonTokenType.StartArray)
                    open.Push((path, 0));
            }
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            // The parser that reads the values tells of it.
        }
        return places;
    }

    /// <summary>Whether the file has a value at that path.</summary>
    public bool Has(string path) => _places.ContainsKey(path);

    /// <summary>Place of a value; of what holds it where it is not there.</summary>
    public (int Line, int Column) Of(string path)
    {
        while (path.Length > 0)
        {
            if (_places.TryGetValue(path, out (int, int) place))
                return place;
            path = path[..Math.Max(0, Math.Max(path.LastIndexOf('.'), path.LastIndexOf('[')))];
        }
        return (1, 1);
    }

    private static string PathOf(Stack<(string Path, int Next)> open, string? key)
    {
        if (!open.TryPop(out (string Path, int Next) top))
            return "";
        open.Push((top.Path, top.Next + (key is null ? 1 : 0)));
        if (key is null)
            return top.Path + "[" + top.Next.ToString(CultureInfo.InvariantCulture) + "]";
        return top.Path.Length == 0 ? key : top.Path + "." + key;
    }
}
