using System.Globalization;
using System.Text;
using System.Text.Json;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile;

/// <summary>Problems in three forms: one plain line, with the source line and a caret for a terminal, and JSON.</summary>
public static class ProblemPrinter
{
    /// <summary>Characters of a source line that are shown.</summary>
    private const int Widest = 160;

    /// <summary>file:line:column: severity code: message (hint)</summary>
    public static string Plain(Problem problem) =>
        Head(problem) + (problem.Hint.Length == 0 ? "" : $" ({problem.Hint})");

    /// <summary>The head line, the source line with a caret under the place, and the hint. Lines end with a line feed.</summary>
    /// <param name="text">Text of the file.</param>
    public static string WithSource(Problem problem, string text)
    {
        SourceSpot spot = problem.Spot;
        string number = spot.Line.ToString(CultureInfo.InvariantCulture);
        string margin = new(' ', number.Length);
        string source = spot.Sheet is null ? SourceLines.Line(text, spot.Line) : "";
        var form = new StringBuilder();
        form.Append(Head(problem)).Append('\n');
        if (source.Trim().Length > 0)
        {
            int cut = Math.Max(0, Math.Min(spot.Column, source.Length) - Widest / 2);
            source = source[cut..Math.Min(source.Length, cut + Widest)];
            int start = Math.Clamp(spot.Column - 1 - cut, 0, source.Length);
            int end = Math.Clamp(start + spot.Length, start, source.Length);
            string carets = new('^', Math.Max(1, Blank(source[start..end]).Length));
            form.Append(CultureInfo.InvariantCulture, $"  {number} | {Visible(source)}\n");
            form.Append(CultureInfo.InvariantCulture, $"  {margin} | {Blank(source[..start])}{carets}\n");
        }
        if (problem.Hint.Length > 0)
            form.Append(CultureInfo.InvariantCulture, $"  {margin} = {problem.Hint}\n");
        if (problem.Other is { } other)
            form.Append(CultureInfo.InvariantCulture, $"  {margin} = see also {other}\n");
        return form.ToString();
    }

    /// <summary>A JSON list of all problems.</summary>
    public static string Json(IEnumerable<Problem> problems)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartArray();
            foreach (Problem problem in problems)
            {
                json.WriteStartObject();
                json.WriteString("severity", Severity(problem));
                json.WriteString("code", problem.Code);
                json.WriteString("message", problem.Message);
                if (problem.Hint.Length > 0)
                    json.WriteString("hint", problem.Hint);
                WriteSpot(json, "place", problem.Spot);
                if (problem.Other is { } other)
                    WriteSpot(json, "other_place", other);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        }
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void WriteSpot(Utf8JsonWriter json, string name, SourceSpot spot)
    {
        json.WriteStartObject(name);
        json.WriteString("file", spot.File);
        if (spot.Sheet is not null)
        {
            json.WriteString("sheet", spot.Sheet);
            json.WriteString("cell", spot.Cell);
        }
        json.WriteNumber("line", spot.Line);
        json.WriteNumber("column", spot.Column);
        json.WriteNumber("length", spot.Length);
        json.WriteEndObject();
    }

    private static string Head(Problem problem) => Visible($"{problem.Spot}: {Severity(problem)} {problem.Code}: {problem.Message}");

    private static string Severity(Problem problem) => ResultWords.Of(problem.Severity);

    /// <summary>Control characters other than tabs would move the cursor.</summary>
    private static string Visible(string source) => new([.. source.Select(c => c != '\t' && char.IsControl(c) ? ' ' : c)]);

    /// <summary>White space as wide as a text: tabs stay, and what takes no place of its own is left out.</summary>
    private static string Blank(string text)
    {
        var blank = new StringBuilder();
        foreach (char c in text)
        {
            bool noPlace = char.IsLowSurrogate(c)
                || CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark;
            if (!noPlace)
                blank.Append(c == '\t' ? '\t' : ' ');
        }
        return blank.ToString();
    }
}
