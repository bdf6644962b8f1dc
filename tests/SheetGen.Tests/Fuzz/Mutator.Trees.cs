using System.IO.Compression;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SheetGen.Tests.Fuzz;

/// <summary>Files that are trees.</summary>
internal sealed partial class Mutator
{
    /// <summary>A JSON text: mostly a value, a member or an item of its tree becomes another, is left out, doubled or moved; else a character.</summary>
    public string Json(string text)
    {
        if (random.Next(3) > 0 && JsonNode.Parse(text, documentOptions: new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true }) is { } root)
        {
            for (int n = Changes(3); n > 0; n--)
                ChangeOne(root);
            return root.ToJsonString();
        }
        for (int n = Changes(3); n > 0; n--)
            text = random.Next(3) == 0 ? Characters(text) : WithValue(text);
        return text;
    }

    /// <summary>An XML text: values of attributes and of elements change, elements are left out, doubled, moved or named otherwise.</summary>
    public string Xml(string text)
    {
        List<string> parts = [.. XmlPart().Matches(text).Select(m => m.Value)];
        for (int n = Changes(4); n > 0 && parts.Count > 3; n--)
        {
            int at = random.Next(parts.Count), other = random.Next(parts.Count);
            int end = EndOfElement(parts, at), otherEnd = EndOfElement(parts, other);
            switch (random.Next(9))
            {
                case 0 or 1 or 2:
                    // Words of a tag's name change too, which closes another element than was opened.
                    parts[at] = WithValue(parts[at]);
                    break;
                case 3:
                    parts.RemoveRange(at, end - at);
                    break;
                case 4:
                    parts.InsertRange(at, parts.GetRange(other, Math.Min(otherEnd - other, 60)));
                    break;
                case 5:
                    List<string> moved = parts.GetRange(at, end - at);
                    parts.RemoveRange(at, end - at);
                    parts.InsertRange(Math.Min(other, parts.Count), moved);
                    break;
                case 6:
                    parts[at] = Characters(parts[at]);
                    break;
                case 7:
                    parts[at] = Quoted().Replace(parts[at], _ => $"=\"{Values[random.Next(Values.Length)].Replace("\"", "&quot;", StringComparison.Ordinal)}\"", 1);
                    break;
                default:
                    if (random.Next(10) == 0)
                        parts.RemoveRange(at, parts.Count - at);
                    else if (random.Next(5) == 0)
                        parts.Insert(1, "<!DOCTYPE a [<!ENTITY b \"c\"><!ENTITY d \"&b;&b;\">]>");
                    break;
            }
        }
        return string.Concat(parts);
    }

    /// <summary>A zip of XML parts, such as a workbook: mostly one part changes, a sheet more often than others; a part is left out or stands twice; or bytes of the whole change.</summary>
    public byte[] Zip(byte[] bytes)
    {
        if (idle)
            return bytes;
        if (random.Next(10) == 0)
            return Bytes(bytes);
        using var memory = new MemoryStream();
        memory.Write(bytes);
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Update, leaveOpen: true))
        {
            ZipArchiveEntry[] sheets = [.. zip.Entries.Where(e => e.FullName.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal))];
            ZipArchiveEntry part = random.Next(4) > 0 && sheets.Length > 0 ? sheets[random.Next(sheets.Length)] : zip.Entries[random.Next(zip.Entries.Count)];
            string name = part.FullName, text;
            using (var reader = new StreamReader(part.Open()))
                text = reader.ReadToEnd();
            int fate = random.Next(12);
            if (fate > 0)
                part.Delete();
            if (fate > 1)
            {
                using var writer = new StreamWriter(zip.CreateEntry(name).Open());
                writer.Write(Xml(text));
            }
            else if (fate == 0)
                zip.CreateEntry(name);
        }
        return memory.ToArray();
    }

    private void ChangeOne(JsonNode root)
    {
        List<JsonNode> nodes = [];
        void Collect(JsonNode? node)
        {
            if (node is JsonObject or JsonArray)
                nodes.Add(node);
            foreach (JsonNode? child in node switch { JsonObject o => o.Select(p => p.Value), JsonArray a => a, _ => [] })
                Collect(child);
        }
        Collect(root);
        JsonNode at = nodes[random.Next(nodes.Count)];
        JsonNode? odd = random.Next(6) switch
        {
            0 => null,
            1 => JsonValue.Create(Values[random.Next(Values.Length)]),
            2 => JsonValue.Create(new[] { 0, -1, 0.5, 1e308, -1e308, 1e-300, 255, 256, 2147483648.0, 1e15 }[random.Next(10)]),
            3 => new JsonArray(),
            4 => new JsonObject(),
            _ => nodes[random.Next(nodes.Count)].DeepClone(),
        };
        if (at is JsonObject { Count: > 0 } members)
        {
            string key = members.ElementAt(random.Next(members.Count)).Key;
            if (random.Next(4) == 0)
                members.Remove(key);
            else if (random.Next(5) == 0)
                members[Values[random.Next(Values.Length)]] = odd;
            else
                members[key] = odd;
        }
        else if (at is JsonArray items)
        {
            if (items.Count > 0 && random.Next(3) == 0)
                items.RemoveAt(random.Next(items.Count));
            else if (items.Count > 0 && random.Next(2) == 0)
                items[random.Next(items.Count)] = odd;
            else
                items.Insert(random.Next(items.Count + 1), odd);
        }
    }

    /// <summary>Behind the last part of the element that begins at a part; the next part where none begins there.</summary>
    private static int EndOfElement(List<string> parts, int at)
    {
        int depth = 0;
        for (int i = at; i < parts.Count; i++)
        {
            string part = parts[i];
            depth += part.Length == 0 || part[0] != '<' || part.StartsWith("<?", StringComparison.Ordinal) || part.StartsWith("<!", StringComparison.Ordinal) || part.EndsWith("/>", StringComparison.Ordinal) ? 0
                : part.StartsWith("</", StringComparison.Ordinal) ? -1 : 1;
            if (depth <= 0)
                return i + 1;
        }
        return at + 1;
    }

    [GeneratedRegex("<[^>]*>|[^<]+")]
    private static partial Regex XmlPart();

    [GeneratedRegex("=\"[^\"]*\"")]
    private static partial Regex Quoted();
}
