using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.Drawing.Set;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing;

/// <summary>What sheets say, with every finding and remark of a run: words of the trade and never keys of the project file, in the right number, nothing said twice.</summary>
public class TradeWordTests
{
    /// <summary>A key of the project file: words joined by an underscore, or the key of a block with what stands in it.</summary>
    private static readonly Regex Keys = new(
        @"(?<![\w.])[a-z]+(_[a-z]+)+\b|\b[A-Z]+(_[A-Z]+)+\b|\b(rules|rates|rows): ?[a-z]|\((facing|rates|panels|drainage|prices|lifts)[:)]");

    private static readonly Regex Twice = new(@"\b(wall|muro) (wall|muro)\b", RegexOptions.IgnoreCase);

    /// <summary>One of what is said of many.</summary>
    private static readonly Regex Many = new(
        @"(?<![\d.,+#/-])(?<!\d )1 (nails|hours|bars|rows|panels|sheets|details|part rows|verification test nails|clavos|horas|barras|filas|paneles|hojas|detalles|etapas)\b|\b(DETAILS|DETALLES) \d+ (ON|EN) \S+$", RegexOptions.IgnoreCase);

    public static TheoryData<string, string> Walls()
    {
        var walls = new TheoryData<string, string>();
        foreach (string language in new[] { "english", "spanish" })
        {
            foreach (string wall in new[] { "heron-street-bridge", "quarry-lane", "two walls", "metric", "corner", "given", "random 0", "random 3", "random 7" })
                walls.Add(wall, language);
        }
        return walls;
    }

    private static string Yaml(string wall) => wall switch
    {
        "two walls" => SampleWalls.TwoWalls,
        "metric" => SampleWalls.Metric,
        "corner" => MarkWalls.Corner,
        "given" => GivenProject.Yaml,
        _ when wall.StartsWith("random ", StringComparison.Ordinal) => RandomWall.Yaml(ulong.Parse(wall[7..], System.Globalization.CultureInfo.InvariantCulture) + 700),
        _ => Repository.Read("demo", wall, "wall.yaml"),
    };

    [Theory]
    [MemberData(nameof(Walls))]
    public void No_text_has_a_key_or_a_wrong_number_or_says_wall_twice(string wall, string language)
    {
        DrawingContext context = PlacedWall.Whole(Yaml(wall), language);
        SheetSet set = PlacedWall.Sheets(context);
        string[] texts = [.. set.Sheets.SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<Text>().Select(t => t.Value).Distinct()];
        // A table breaks long sentences over lines: they are looked at whole.
        string[] sentences = [.. context.Report.Findings.Select(f => context.Language.Sentence(f.Message)), .. context.Layout.LeftOut.Select(l => context.Language.Sentence(l.Reason))];

        Assert.True(texts.Length > 100);
        string[] faults = [.. texts.Concat(sentences).Distinct().Where(t => Keys.IsMatch(t) || Twice.IsMatch(t) || Many.IsMatch(t))];
        Assert.True(faults.Length == 0, string.Join("\n", faults));
    }

    /// <summary>What is not said in Spanish would stand in English among the findings.</summary>
    [Theory]
    [InlineData("heron-street-bridge")]
    [InlineData("quarry-lane")]
    [InlineData("two walls")]
    [InlineData("metric")]
    [InlineData("corner")]
    [InlineData("given")]
    public void Every_finding_of_a_run_has_spanish_words(string wall)
    {
        DrawingContext context = PlacedWall.Whole(Yaml(wall), "spanish");
        var english = new Regex(@"\b(the|is|are|and|of|within|clear|required|allowed|nail|nails|into|because|turned|degrees|missing|slip|would|asked|beside)\b");
        string[] given = [.. context.Project.Walls.SelectMany(w => w.ClosedStretches.Select(c => c.Reason)).OfType<string>(), .. context.Report.Findings.Select(f => f.AcceptedBy).OfType<Acceptance>().SelectMany(a => new[] { a.Reason, a.By })];

        Assert.NotEmpty(context.Report.Findings);
        string[] left = [.. context.Report.Findings.Select(f => context.Language.TrySentence(f.Message) ?? "without Spanish words, of " + f.Message)
            .Where(s => english.IsMatch(given.Aggregate(s, (t, g) => t.Replace(g, "", StringComparison.Ordinal))))];
        Assert.True(left.Length == 0, string.Join("\n", left));
    }

    [Theory]
    [InlineData("english", "1 NAIL", "2 NAILS", "SEE DETAIL 6 ON SN-08", "SEE DETAILS 6, 7 ON SN-08", "1 HOUR")]
    [InlineData("spanish", "1 CLAVO", "2 CLAVOS", "VER DETALLE 6 ON SN-08", "VER DETALLES 6, 7 ON SN-08", "1 HORA")]
    public void A_phrase_counts(string language, string one, string two, string detail, string details, string hour)
    {
        Language spoken = TemplateReader.Default(null, null, language).Language;

        Assert.Equal((one, two), (spoken.Say(Phrase.NailCount, "1"), spoken.Say(Phrase.NailCount, "2")));
        Assert.Equal((detail, details), (spoken.Say(Phrase.SeeDetails, "6 ON SN-08", "1"), spoken.Say(Phrase.SeeDetails, "6, 7 ON SN-08", "2")));
        Assert.Equal(hour, spoken.Say(Phrase.Hours, "1"));
    }

    /// <summary>No fixed text says a plural behind a value that may be one.</summary>
    [Theory]
    [InlineData("english", "ROWS|NAILS|HOURS|DAYS|BARS|DETAILS|SHEETS|GAPS|SPACES|PANELS")]
    [InlineData("spanish", "FILAS|CLAVOS|HORAS|BARRAS|DETALLES|HOJAS|SEPARACIONES|PANELES")]
    public void No_text_counts_in_one_number_only(string language, string plurals)
    {
        string list = Repository.Read("templates", "text", language + ".json");

        string[] wrong = [.. Regex.Matches(list, $@"(?<="": "").*(\{{\d\}} ({plurals})|(DETAILS|SHEETS|DETALLES|HOJAS) \{{\d\}}).*$", RegexOptions.Multiline | RegexOptions.IgnoreCase)
            .Select(m => m.Value.Trim()).Where(l => !Regex.IsMatch(l, "MarkKey|page \\{0\\}"))];
        Assert.Equal([], wrong);
    }

    /// <summary>What no sheet says in the project file's keys.</summary>
    [Theory]
    [InlineData("no coping (facing: coping): Wall 2, wall North", "no coping: Wall 2, wall North", "falta remate: Wall 2, muro North")]
    [InlineData("INCOMPLETE, no shotcrete thickness (facing: shotcrete): Wall 2; no drainage strips (drainage): wall B", "INCOMPLETE, no shotcrete thickness: Wall 2; no drainage strips: wall B",
        "INCOMPLETA, falta espesor de concreto lanzado: Wall 2; falta drenes de tira: muro B")]
    [InlineData("no coping (facing: coping): wall Muro 2, section A, wall MURO 3", "no coping: wall Muro 2, design zone A, wall MURO 3", "falta remate: Muro 2, ZONA DE DISEÑO A, MURO 3")]
    [InlineData("a panel column is only 0.3 ft wide: move first_break, or let its neighbour take it", "a panel column is only 0.3 ft wide: move the first panel break, or let its neighbour take it",
        "una columna de paneles mide solo 0.3 ft de ancho: mueva la primera junta de panel o déjela a su vecina")]
    [InlineData("section A: 1 nail (16 ft) has its head below the finished grade, the deepest 1.00 ft (A-3-01); rules: heads_below_grade: allow or none says what the engineer wants",
        "design zone A: 1 nail (16 ft) has its head below the finished grade, the deepest 1.00 ft (A-3-01); the engineer decides whether that is allowed",
        "ZONA DE DISEÑO A: 1 clavo tiene (16 ft) la cabeza bajo la rasante final, el más hondo 1.00 ft (A-3-01); el ingeniero decide si se permite")]
    [InlineData("section A: 10 of 90 nails (240 ft) stand in 1 part row between grid rows that are cut off by the top or the bottom; rows: level would need 2 of these (88 nails in all), rows: top_parallel would need none of these (1 nail in all)",
        "design zone A: 10 of 90 nails (240 ft) stand in 1 part row between grid rows that are cut off by the top or the bottom; rows level would need 2 of these (88 nails in all), rows level but for a first one parallel to the top would need none of these (1 nail in all)",
        "ZONA DE DISEÑO A: 10 de 90 clavos (240 ft) están en 1 fila parcial entre filas de la retícula que la corona o la base cortan; filas a nivel necesitarían 2 de estos (88 clavos en total), filas a nivel salvo la primera, paralela a la corona no necesitarían ninguno de estos (1 clavo en total)")]
    public void A_sentence_is_said_in_words_of_the_trade(string said, string english, string spanish)
    {
        Assert.Equal(english, TemplateReader.Default().Language.WithZone(null).Sentence(said));
        Assert.Equal(spanish, TemplateReader.Default(null, null, "spanish").Language.WithZone(null).Sentence(said));
    }
}
