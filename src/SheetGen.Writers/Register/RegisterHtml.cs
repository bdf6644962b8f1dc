using System.Globalization;
using System.Text;

namespace SheetGen.Writers.Register;

/// <summary>Tables as one page of HTML that needs nothing from outside; links lead to the sets beside it.</summary>
public static class RegisterHtml
{
    private const string Style = """
        body{font:14px/1.4 "Liberation Sans",Arial,Helvetica,sans-serif;margin:1.5em;color:#111;background:#fff}
        h1{font-size:1.5em;margin:0 0 .2em}h2{font-size:1.15em;margin:1.6em 0 .2em}p{margin:.2em 0 .6em;max-width:70em}
        nav a{margin-right:1em}.scroll{overflow-x:auto}table{border-collapse:collapse;font-size:13px}
        th,td{border:1px solid #bbb;padding:.2em .45em;text-align:left;vertical-align:top}th{background:#e9edf0;position:sticky;top:0}
        td.n,th.n{text-align:right;font-variant-numeric:tabular-nums}td.w{background:#fde2dd;font-weight:bold}.caution{border-left:.3em solid #b33;padding-left:.6em}
        figure{margin:1em 0}figure svg{max-width:100%;height:auto;border:1px solid #ccc}
        @media print{th{position:static}.scroll{overflow:visible}}
        """;

    /// <param name="summary">One line of what was found.</param>
    /// <param name="pictures">SVG texts with their captions, shown above the tables.</param>
    public static byte[] Bytes(string title, string summary, string caution, IReadOnlyList<RegisterTable> tables, string version, IReadOnlyList<(string Caption, string Svg)>? pictures = null)
    {
        var page = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n");
        page.Append(CultureInfo.InvariantCulture, $"<title>{Escaped(title)}</title>\n<style>\n{Style.ReplaceLineEndings("\n")}\n</style></head><body>\n");
        page.Append(CultureInfo.InvariantCulture, $"<h1>{Escaped(title)}</h1>\n<p>{Escaped(summary)}</p>\n<p class=\"caution\">{Escaped(caution)} Program version {Escaped(version)}.</p>\n<nav>");
        foreach (RegisterTable table in tables)
            page.Append(CultureInfo.InvariantCulture, $"<a href=\"#{Escaped(table.Name)}\">{Escaped(table.Title)}</a>");
        page.Append("</nav>\n");
        foreach ((string caption, string svg) in pictures ?? [])
            page.Append(CultureInfo.InvariantCulture, $"<figure>{svg[svg.IndexOf("<svg", StringComparison.Ordinal)..]}<figcaption>{Escaped(caption)}</figcaption></figure>\n");
        foreach (RegisterTable table in tables)
            Append(page, table);
        return Encoding.UTF8.GetBytes(page.Append("</body></html>\n").ToString());
    }

    private static void Append(StringBuilder page, RegisterTable table)
    {
        page.Append(CultureInfo.InvariantCulture, $"<h2 id=\"{Escaped(table.Name)}\">{Escaped(table.Title)}</h2>\n<p>{Escaped(table.Note)}</p>\n");
        if (table.Rows.Count == 0)
        {
            page.Append("<p>None.</p>\n");
            return;
        }
        page.Append("<div class=\"scroll\"><table><thead><tr>");
        foreach (RegisterColumn column in table.Columns)
            page.Append(CultureInfo.InvariantCulture, $"<th{(column.IsNumeric ? " class=\"n\"" : "")}>{Escaped(column.Head)}</th>");
        page.Append("</tr></thead><tbody>\n");
        foreach (IReadOnlyList<RegisterCell> row in table.Rows)
        {
            page.Append("<tr>");
            for (int i = 0; i < row.Count; i++)
            {
                string kind = (table.Columns[i].IsNumeric ? "n" : "") + (row[i].IsWarning ? " w" : "");
                string text = Escaped(row[i].Shown);
                page.Append(kind.Length == 0 ? "<td>" : $"<td class=\"{kind.Trim()}\">");
                page.Append(row[i].Link is { } link ? $"<a href=\"{Escaped(Address(link))}\">{text}</a>" : text).Append("</td>");
            }
            page.Append("</tr>\n");
        }
        page.Append("</tbody></table></div>\n");
    }

    /// <summary>A relative path as an address; the place in the file stays.</summary>
    private static string Address(string link)
    {
        int place = link.LastIndexOf("#page=", StringComparison.Ordinal);
        string path = place < 0 ? link : link[..place];
        return string.Join('/', path.Split('/').Select(Uri.EscapeDataString)) + (place < 0 ? "" : link[place..]);
    }

    private static string Escaped(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal);
}
