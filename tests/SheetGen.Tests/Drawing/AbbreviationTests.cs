using System.Text.RegularExpressions;
using SheetGen.Drawing.Templating;
using Xunit;

namespace SheetGen.Tests.Drawing;

/// <summary>
/// Every abbreviation of the fixed texts and general notes stands in the list of abbreviations on the sheets: a short word that is neither
/// listed nor known here as a whole word fails, and so does one that ends in a point within a sentence.
/// </summary>
public class AbbreviationTests
{
    /// <summary>Whole words of up to five letters.</summary>
    private const string English = """
        A ABOUT ABOVE ADDED AFTER AHEAD ALL ALONG AN AND ANGLE ANY ARE AREA ARROW AS ASK AT BACK BAR BARS BE BEAR BEARS BEGIN BELOW BEVEL
        BLANK BOND BOTH BY CAP CAST CLAY CLEAN CLEAR CODE CODES CREEP CURVE CUT D DATE DATUM DAYS DELTA DEPTH DO DOWN DRAIN DRAWN DRIFT
        DRILL EACH END ENDS ERROR EVERY FACE FACES FEET FEWER FIELD FILE FILL FIRST FOR FORCE FOUND FOUR FREE FROM FRONT GAP GAPS GIVE
        GIVEN GIVES GRADE GRID GROUT HALF HAS HEAD HELD HERE HOLE HOLES HOUR HOURS INDEX INNER INTO IS IT ITS JACK JOINT KEEP KEPT KEY KIND LAP
        LAST LAYER LEAD LEAST LEAVE LEFT LESS LEVEL LIFE LIFT LIFTS LIMIT LINE LOAD LOADS LOCAL LONG LOWER MARK MARKS MATCH MAY MESH MORE
        MOVED NAIL NAILS NAME NAMED NEAR NEEDS NEXT NO NONE NOT NOTED NOTES NUT OF ON ONE ONLY ONTO OPEN OR OUT OVER OWN OWNER PAD PAGE
        PANEL PART PILE PIPE PIPES PLACE PLAN PLATE POINT PROOF RAIN RATIO READ RIGHT RING ROOM ROW ROWS RULES RUN RUNS SAME SCALE SEAL
        SEAT SEE SEEN SET SETS SHAFT SHARE SHEET SHORT SHOWN SHOWS SIDE SIZE SLIP SO SOIL SPACE STATE STEP STOP STRAY STRIP STUBS STUDS
        TABLE TEST TESTS THAN THAT THE THESE THEY THIS TIP TITLE TO TOP TOTAL TRIM TURN UNITS UP UPPER US VIEW WALER WALL WALLS WAS WATER
        WAY WEEP WET WHAT WHERE WHICH WHO WHOLE WHY WIDE WIRE WITH ZONE html m mm x SEALED TOUCHES DECIDE review CROSS FOOT PAID COVER ALSO SHAPE AXIS PILES ELSE ORDER
        """;

    private const string Spanish = """
        A ABAJO AGUA AL ALLÁ ALTO AMBOS ANCHO ANTES APOYE APOYO AQUÍ ATRÁS AVISO BAJA BAJO BARRA BASE BISEL BORDE CADA CARA CARGA CAUSA
        CERCA CLASE CLAVO COMO CON CORTE CURVA D DA DADO DADOS DAN DAR DATUM DE DEBE DEJAR DEJE DEL DELTA DESDE DIO DONDE DORSO DREN DÍAS
        EL ELIGE ELLA EN ENTRE ERROR ES ESTA ESTAS ESTE ESTÁ ESTÁN ETAPA FALLA FALTA FECHA FIJA FILA FILAS FIN FINAL FONDO FUERA GATO
        GIRAR GIRO HACE HACEN HACIA HASTA HAY HOJA HOJAS HONDO HORA HORAS JUEGO JUNTA LA LADO LARGA LARGO LAS LIBRE LLENO LO LOS LUGAR LÉASE
        LÍNEA MALLA MARCA MAYOR MEDIA MEJOR MENOR MENOS MIDE MIRA MISMA MURO MUROS MÁS NADA NI NIVEL NO NORTE NOTA NOTAS OBRA PANEL PARA
        PARTE PASO PASOS PIES PILA PLACA POR PUEDE PUNTA PUNTO QUE QUÉ RAZÓN RIGEN ROMBO RUMBO SE SEGÚN SELLO SI SIN SISMO SITIO SOBRE
        SOLO SON SU SUELO TABLA TIENE TIRA TOCAR TODO TODOS TORNO TOTAL TRAZO UN UNA UNO VARÍA VER VIDA VIGA VISTA VISTO VÍA Y ZONA html m mm x
        ÁREA ÚTIL PRIMERO ACOTAN ACEPTA review ASIENTO LLUVIA LARGOS JUNTO PIE PAGO FORMA EJE PILAS DEMÁS ORDEN
        """;

    private static IEnumerable<(string Word, string Text)> Words(string language)
    {
        DrawingTemplates templates = TemplateReader.Default(null, null, language);
        IEnumerable<string> texts = Enum.GetValues<Phrase>().Where(p => p != Phrase.AbbreviationList).Select(p => templates.Language.Say(p))
            .Concat(templates.Notes.SelectMany(n => n.Notes.Prepend(n.Heading)));
        foreach (string text in texts)
        {
            foreach (Match m in Regex.Matches(Regex.Replace(text, "\\{[a-z0-9_]+\\}", "#"), @"(?<![\p{L}-])\p{L}[\p{L}-]*\.?"))
                yield return (m.Value, text);
        }
    }

    [Theory]
    [InlineData("english", English)]
    [InlineData("spanish", Spanish)]
    public void Every_abbreviation_is_listed(string language, string whole)
    {
        HashSet<string> words = [.. whole.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];
        string list = TemplateReader.Default(null, null, language).Language.Say(Phrase.AbbreviationList);
        HashSet<string> listed = [.. list.Split(';').SelectMany(p => p.Split('=')[0].Split([',', ' '], StringSplitOptions.RemoveEmptyEntries))];

        HashSet<string> all = [.. Words(language).Select(w => w.Word)];

        string[] unknown = [.. Words(language).Where(w => !IsKnown(w.Word)).Select(w => $"{w.Word} in \"{w.Text}\"").Distinct()];

        Assert.True(unknown.Length == 0, string.Join("\n", unknown));

        bool IsKnown(string word)
        {
            string bare = word.TrimEnd('.');
            // A longer word is an abbreviation only where it ends in a point and stands nowhere without one.
            bool isPlain = bare.Length > 5 && (word == bare || bare.Length > 7 || all.Contains(bare));
            return isPlain || listed.Contains(word) || listed.Contains(bare) || words.Contains(bare);
        }
    }

    [Fact]
    public void A_point_that_ends_an_abbreviation_is_seen()
    {
        string list = TemplateReader.Default().Language.Say(Phrase.AbbreviationList);

        Assert.Contains("SPA.=", list, StringComparison.Ordinal);
        Assert.Contains("EMBED.=", list, StringComparison.Ordinal);
        Assert.DoesNotContain(English.Split((char[]?)null), w => w is "SPA" or "EMBED" or "MAX" or "MIN" or "TYP" or "CLR");
    }
}
