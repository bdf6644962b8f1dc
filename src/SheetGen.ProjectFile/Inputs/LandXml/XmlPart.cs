using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>An element of an XML file with its line; name spaces are left aside.</summary>
internal sealed record XmlPart(string Name, IReadOnlyDictionary<string, string> Attributes, IReadOnlyList<XmlPart> Parts, string Text, int Line, int Column)
{
    public string? Attribute(string name) => Attributes.GetValueOrDefault(name);

    public IEnumerable<XmlPart> All(string name) => Parts.Where(p => p.Name == name);

    public XmlPart? First(string name) => Parts.FirstOrDefault(p => p.Name == name);

    /// <summary>An attribute as a number; null where it is missing or none.</summary>
    public double? Number(string name) => Attribute(name) is { } text && TryNumber(text, out double value) ? value : null;

    /// <summary>The numbers of its text; null where any is none.</summary>
    public double[]? Numbers()
    {
        string[] words = Words();
        var numbers = new double[words.Length];
        for (int i = 0; i < words.Length; i++)
        {
            if (!TryNumber(words[i], out numbers[i]))
                return null;
        }
        return numbers;
    }

    public string[] Words() => Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Greatest amount of a number that is taken for one: no coordinate, station or radius on Earth in any unit of the format comes near it.</summary>
    private const double Greatest = 1e11;

    public static bool TryNumber(string text, out double value) =>
        double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out value) && Math.Abs(value) <= Greatest;

    /// <summary>
    /// Reads a file: no document type and no external entity is followed, and depth and count of elements are limited.
    /// </summary>
    /// <param name="skip">Names of elements that are passed over with all that is in them.</param>
    /// <exception cref="XmlException">The file is not well-formed, or beyond the limits.</exception>
    public static XmlPart Read(byte[] bytes, Predicate<string> skip)
    {
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersFromEntities = 0,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            IgnoreWhitespace = true,
        };
        var tags = new TagCounter();
        if (!tags.IsWithin(bytes))
        {
            ReadOnlySpan<byte> before = bytes.AsSpan(0, (int)tags.Start);
            throw new XmlException(FormattableString.Invariant($"there are more than {TagCounter.Most} bytes in one tag"), null, before.Count((byte)'\n') + 1, before.Length - before.LastIndexOf((byte)'\n'));
        }
        using XmlReader reader = CodePage(bytes) is { } page ? XmlReader.Create(new StreamReader(new MemoryStream(bytes), page), settings) : XmlReader.Create(new MemoryStream(bytes), settings);
        reader.MoveToContent();
        int count = 0;
        return Element(reader, skip, 0, ref count);
    }

    /// <summary>The encoding that the file's first line names, where it is a code page such as windows-1252, which the XML reader does not know by itself; else null.</summary>
    private static Encoding? CodePage(byte[] bytes)
    {
        Match told = Regex.Match(Encoding.Latin1.GetString(bytes, 0, Math.Min(bytes.Length, 200)), "^\\s*<\\?xml[^>]*?encoding\\s*=\\s*[\"']([A-Za-z0-9._-]+)[\"']");
        return told.Success ? CodePagesEncodingProvider.Instance.GetEncoding(told.Groups[1].Value) : null;
    }

    private static readonly Dictionary<string, string> NoAttributes = [];

    private const int MostDepth = 64;
    private const int MostElements = 2_000_000;

    private static XmlPart Element(XmlReader reader, Predicate<string> skip, int depth, ref int count)
    {
        var place = (IXmlLineInfo)reader;
        (int line, int column) = (place.LineNumber, place.LinePosition);
        if (depth > MostDepth || ++count > MostElements)
            throw new XmlException(depth > MostDepth ? $"elements stand in each other more than {MostDepth} deep" : FormattableString.Invariant($"there are more than {MostElements} elements"), null, line, column);
        string name = reader.LocalName;
        Dictionary<string, string> attributes = reader.HasAttributes ? new(StringComparer.Ordinal) : NoAttributes;
        for (bool more = reader.MoveToFirstAttribute(); more; more = reader.MoveToNextAttribute())
            attributes[reader.LocalName] = reader.Value;
        reader.MoveToElement();
        if (reader.IsEmptyElement)
        {
            reader.Read();
            return new XmlPart(name, attributes, [], "", line, column);
        }
        List<XmlPart>? parts = null;
        StringBuilder? text = null;
        reader.Read();
        while (reader.NodeType != XmlNodeType.EndElement)
        {
            if (reader.NodeType == XmlNodeType.Element)
            {
                if (skip(reader.LocalName))
                    reader.Skip();
                else
                    (parts ??= []).Add(Element(reader, skip, depth + 1, ref count));
                continue;
            }
            if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA)
                (text ??= new()).Append(reader.Value);
            if (!reader.Read())
                throw new XmlException("the file ends inside of an element", null, line, column);
        }
        reader.Read();
        return new XmlPart(name, attributes, parts ?? (IReadOnlyList<XmlPart>)[], text?.ToString() ?? "", line, column);
    }
}
