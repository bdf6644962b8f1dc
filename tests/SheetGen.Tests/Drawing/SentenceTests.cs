using System.Text.RegularExpressions;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Advice;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Drawing.Elevation;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Drawing;

/// <summary>What the checker and the layout say stands on the sheets in the language of the sheets.</summary>
public class SentenceTests
{
    private static readonly Language Spanish = TemplateReader.Default(null, null, "spanish").Language.WithZone(null);

    /// <summary>Words that a Spanish sentence cannot hold; keys of the project file stay as they are.</summary>
    private static readonly Regex English = new(@"\b(the|is|are|and|of|to|within|clear|required|allowed|nail|nails|section|into|because|turned|degrees)\b");

    [Fact]
    public void Every_sentence_of_the_checker_has_spanish_words()
    {
        var said = new HashSet<string>(StringComparer.Ordinal);
        foreach (string yaml in new[] { SampleWalls.TwoWalls, SampleWalls.Metric, MarkWalls.Corner, MarkWalls.Long }.Concat(Enumerable.Range(0, 12).Select(s => RandomWall.Yaml((ulong)(700 + s)))))
        {
            WallProject project = SampleLayout.Read(yaml);
            // A layout by a plain rule breaks every rule somewhere.
            NailLayout layout = SampleLayout.Make(project);
            said.UnionWith(Checker.Check(project, layout).Findings.Select(f => f.Message));
            said.UnionWith(LayoutAdvice.Of(project, layout).Select(f => f.Message));
        }
        foreach (string yaml in new[] { MarkWalls.Corner, Repository.Read("demo", "heron-street-bridge", "wall.yaml") })
        {
            WallProject project = SampleLayout.Read(yaml);
            NailLayout layout = Placer.Place(project, new PlacingOptions());
            said.UnionWith(Checker.Check(project, layout).Findings.Select(f => f.Message));
            said.UnionWith(LayoutAdvice.Of(project, layout).Select(f => f.Message));
            said.UnionWith(layout.LeftOut.Select(l => l.Reason.TrimEnd('.')));
        }

        string[] without = [.. said.Where(s => Spanish.TrySentence(s) is not string t || English.IsMatch(t.Replace("allow or none", "", StringComparison.Ordinal)))];

        Assert.True(said.Count > 100);
        Assert.True(without.Length == 0, string.Join("\n", without.Take(30).Select(w => $"{w} -> {Spanish.TrySentence(w)}")));
    }

    [Theory]
    [InlineData("A-1-02 and A-1-03 run 0.21 ft into each other; 0.50 ft clear is required", "A-1-02 y A-1-03 se cruzan 0.21 ft; se exigen 0.50 ft libres")]
    [InlineData("B-1-09 is turned 28 degrees to the RIGHT (down-station) and to an inclination of 18 degrees instead of 15, beyond the field tolerance of 10 degrees (accepted by A. B.: seen on site)",
        "B-1-09 gira 28 grados a la DERECHA (estación abajo) y a una inclinación de 18 grados en vez de 15, más de la tolerancia de obra de 10 grados (aceptado por A. B.: seen on site)")]
    [InlineData("section A, 10+00.00 to 10+05.00: the highest nail is 2.61 ft below the top; 2.50 ft is allowed", "ZONA DE DISEÑO A, 10+00.00 a 10+05.00: el clavo más alto está 2.61 ft bajo la corona; se permiten 2.50 ft")]
    [InlineData("grid place comes within 0.20 ft of shaft S1 (0.50 ft required); the gap between its neighbours is allowed", "lugar de retícula: pasa a 0.20 ft de pila S1 (se exigen 0.50 ft); la separación de sus vecinos se permite")]
    public void A_sentence_keeps_its_figures(string english, string spanish) => Assert.Equal(spanish, Spanish.Sentence(english));

    [Fact]
    public void English_says_what_the_checker_says()
    {
        Language english = TemplateReader.Default().Language;

        Assert.Equal("as it is", english.Sentence("as it is"));
        Assert.Equal("section A: 2 nails; the project allows none", english.Sentence("section A: 2 nails; rules: heads_below_grade allows none"));
    }
}
