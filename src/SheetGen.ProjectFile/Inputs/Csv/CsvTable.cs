using System.Text;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Records;
using SheetGen.ProjectFile.Tree;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Inputs.Csv;

/// <summary>A table of values parted by commas, semicolons or tabs (RFC 4180), with or without a row of heads.</summary>
/// <param name="Columns">Column of each known head.</param>
/// <param name="Rows">The rows of values.</param>
/// <param name="Heads">The heads as they stand; empty where the table has none.</param>
internal sealed record CsvTable(ForeignFile File, IReadOnlyDictionary<string, int> Columns, IReadOnlyList<IReadOnlyList<CsvCell>> Rows, IReadOnlyList<string> Heads)
{
    /// <summary>Other words for heads, in small letters without blanks, hyphens, dots and underlines.</summary>
    private static readonly (string Head, string[] Words)[] Known =
    [
        ("station", ["station", "sta", "chainage", "distance"]),
        ("elevation", ["elevation", "elev", "el", "z", "level", "height"]),
        ("northing", ["northing", "north", "n", "y"]),
        ("easting", ["easting", "east", "e", "x"]),
        ("offset", ["offset", "off"]),
        ("name", ["name", "point", "boring", "hole", "id", "pointid", "boringid", "holeid", "no", "number", "pointno", "boringno"]),
        ("top", ["top", "ground", "groundelevation", "surfaceelevation", "topelevation", "collar", "groundsurface"]),
        ("bottom", ["bottom", "bottomelevation", "toe"]),
        ("depth", ["depth", "totaldepth", "holedepth"]),
        ("water", ["water", "waterelevation", "groundwater", "gw"]),
        ("water_depth", ["waterdepth", "depthtowater", "groundwaterdepth"]),
        ("layer", ["layer", "soil", "description", "material", "stratum", "lithology"]),
        ("layer_from", ["from", "layerfrom", "depthfrom", "fromdepth", "depthtop", "topdepth"]),
        ("layer_to", ["to", "layerto", "depthto", "todepth", "depthbottom", "bottomdepth"]),
        ("layer_bottom", ["layerbottom", "layerelevation", "toelevation", "layertoelevation"]),
        ("plasticity_index", ["plasticityindex", "pi", "ip"]),
        ("code", ["code", "note", "notes", "remark", "remarks", "comment"]),
    ];

    public CsvCell? Cell(IReadOnlyList<CsvCell> row, string head) =>
        Columns.TryGetValue(head, out int column) && column < row.Count && row[column].Text.Trim().Length > 0 ? row[column] : null;

    public SourceSpot At(CsvCell cell) => File.At(cell.Line, cell.Column);

    /// <summary>The cell as a node for a value that has a unit of the file where it tells none itself.</summary>
    public Node Length(CsvCell cell, FileUnit unit) => Numbers.Parse(Spelling.Plain(cell.Text.Trim())).IsGood
        ? Nodes.Length(Spelling.Plain(cell.Text.Trim()), unit, At(cell))
        : new ScalarNode(cell.Text.Trim(), false, At(cell));

    /// <summary>The cell as a number without a unit; null where it is none, which is reported.</summary>
    public double? Number(CsvCell cell, string head, ProblemList problems)
    {
        Amount amount = Numbers.Parse(Spelling.Plain(cell.Text.Trim()));
        if (!amount.IsGood)
            problems.Add(ProblemCodes.WrongType, At(cell), $"the {head.Replace('_', ' ')} is not a number", amount.Why.Length > 0 ? amount.Why : "write a number, or leave the cell empty", File.Spot);
        return amount.IsGood ? amount.Value : null;
    }

    public Node Plain(CsvCell cell) => new ScalarNode(cell.Text.Trim(), true, At(cell));

    /// <summary>Reads the file; null where it is no such table, which is reported without any of its content.</summary>
    public static CsvTable? Read(ForeignFile file, ProblemList problems)
    {
        if (TextOf(file.Bytes) is not { } text)
        {
            problems.Add(ProblemCodes.NotThisKind, file.Spot, $"\"{Shown.Short(file.Name)}\" is not a table of values: it is not text", "save the table as CSV");
            return null;
        }
        var read = CsvText.Read(text, hasComments: true);
        if (FaultOf(read) is var (fault, line))
        {
            problems.Add(ProblemCodes.NotThisKind, file.At(line), $"\"{Shown.Short(file.Name)}\" is not a table of values: {fault}", "save the table as CSV", file.Spot);
            return null;
        }
        IReadOnlyList<IReadOnlyList<CsvCell>> rows = read.Rows;
        bool hasHeads = rows[0].Count(c => HeadOf(c.Text) is not null) >= 2 || rows[0].All(c => !Numbers.Parse(c.Text.Trim()).IsGood && !OtherValues.LooksLikeStation(c.Text));
        if (hasHeads)
        {
            var columns = new Dictionary<string, int>(StringComparer.Ordinal);
            for (int i = 0; i < rows[0].Count; i++)
            {
                if (HeadOf(rows[0][i].Text) is { } head)
                    columns.TryAdd(head, i);
            }
            CsvCell[] beyond = [.. rows.Select(r => r.Skip(rows[0].Count).FirstOrDefault(c => c.Text.Trim().Length > 0)).OfType<CsvCell>()];
            foreach (CsvCell cell in beyond)
                problems.Add(ProblemCodes.CannotUse, file.At(cell.Line, cell.Column), "this cell stands beyond the last head, so that the cells before it may stand under wrong heads", "quote a text that has commas in it, write numbers without commas, or complete the heads", file.Spot);
            return beyond.Length > 0 ? null : new CsvTable(file, columns, [.. rows.Skip(1)], [.. rows[0].Select(c => c.Text.Trim())]);
        }
        string[] usual = rows[0].Count switch
        {
            2 => ["station", "elevation"],
            3 => ["northing", "easting", "elevation"],
            _ => ["name", "northing", "easting", "elevation", "code"],
        };
        return new CsvTable(file, Enumerable.Range(0, Math.Min(usual.Length, rows[0].Count)).ToDictionary(i => usual[i], i => i), rows, []);
    }

    /// <summary>The unit of length that a head names in brackets, such as "elevation (m)"; null where it names none that is known.</summary>
    public static string? UnitOf(string head)
    {
        int open = head.IndexOfAny(['(', '[']);
        if (open < 0)
            return null;
        return new string([.. head[(open + 1)..].Split(')', ']')[0].ToLowerInvariant().Where(char.IsLetter)]) switch
        {
            "ft" or "foot" or "feet" => "ft",
            "usft" or "ftus" or "usfoot" or "usfeet" or "ussurveyfoot" or "ussurveyfeet" or "surveyfeet" => "us-ft",
            "m" or "metre" or "metres" or "meter" or "meters" => "m",
            "mm" => "mm",
            "cm" => "cm",
            "in" or "inch" or "inches" => "in",
            _ => null,
        };
    }

    private static string? HeadOf(string text)
    {
        string bare = new([.. text.Split('(', '[')[0].ToLowerInvariant().Where(char.IsLetterOrDigit)]);
        return bare.Length == 0 ? null : Known.FirstOrDefault(k => k.Words.Contains(bare)).Head;
    }

    /// <summary>Why a text is no table of values, and at which line; null where it is one.</summary>
    private static (string Fault, int Line)? FaultOf(CsvText read)
    {
        if (read.Beyond.Count > 0)
            return ("a text goes on behind its closing quote", read.Beyond[0].Line);
        if (read.Open is var (line, _))
            return ("a quote is not closed", line);
        if (read.TooLarge is var (what, at, _))
            return ("it has " + what, at);
        return read.Rows.Count == 0 ? ("it is empty", 1) : null;
    }

    private static string? TextOf(byte[] bytes)
    {
        // What spreadsheets call Unicode text.
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] && bytes.Length % 2 == 0)
            return (bytes[0] == 0xFF ? Encoding.Unicode : Encoding.BigEndianUnicode).GetString(bytes, 2, bytes.Length - 2);
        if (Array.IndexOf(bytes, (byte)0) >= 0)
            return null;
        try
        {
            return new UTF8Encoding(false, true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }
}
