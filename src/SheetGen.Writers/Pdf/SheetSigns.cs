using System.Globalization;
using System.Text;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Pdf;

/// <summary>Names the signs of the sheets' texts that the sheet font lacks: the PDF has their code points in their place.</summary>
public static class SheetSigns
{
    /// <summary>One warning for all of them; none where the font has every sign.</summary>
    /// <param name="place">Where the project file has a sign; null where it comes from another file (notes, layers, a drawing), in which the quoted text is to be looked for.</param>
    public static IReadOnlyList<Finding> Findings(SheetSet set, Func<Rune, SourceSpot?> place)
    {
        IEnumerable<Primitive> all = set.Model.Concat(set.Sheets.SelectMany(s => s.Paper)).Concat(set.Blocks.SelectMany(b => b.Primitives));
        (string Text, int Sign)[] lacking =
        [
            .. all.SelectMany(TextsOf).Distinct().SelectMany(t => SheetFont.Lacking(t).Select(c => (t, c))).DistinctBy(p => p.c).Take(20),
        ];
        if (lacking.Length == 0)
            return [];
        // The file by its name alone: the same bytes in whatever folder the project file stands.
        string Place(int sign) => place(new Rune(sign)) is { } spot ? $" (in {spot with { File = Path.GetFileName(spot.File) }})" : "";
        string signs = string.Join(", ", lacking.Select(p => string.Create(CultureInfo.InvariantCulture, $"U+{p.Sign:X4}{Place(p.Sign)}")));
        return
        [
            new Finding
            {
                Code = FindingCode.Sheet,
                Severity = Severity.Warning,
                Message = $"the sheet font has no sign for {signs} (first in \"{lacking[0].Text}\"): the PDF has [U+{lacking[0].Sign:X4}] and the like in their place; the DXF has the signs, in a font of the machine that opens it",
            },
        ];
    }

    private static IEnumerable<string> TextsOf(Primitive primitive) => primitive switch
    {
        Text text => [text.Value],
        BlockReference block => block.Attributes.Select(a => a.Value),
        _ => [],
    };
}
