using System.Globalization;
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
    public static IReadOnlyList<Finding> Findings(SheetSet set)
    {
        IEnumerable<Primitive> all = set.Model.Concat(set.Sheets.SelectMany(s => s.Paper)).Concat(set.Blocks.SelectMany(b => b.Primitives));
        (string Text, int Sign)[] lacking =
        [
            .. all.SelectMany(TextsOf).Distinct().SelectMany(t => SheetFont.Lacking(t).Select(c => (t, c))).DistinctBy(p => p.c).Take(20),
        ];
        if (lacking.Length == 0)
            return [];
        string signs = string.Join(", ", lacking.Select(p => string.Create(CultureInfo.InvariantCulture, $"U+{p.Sign:X4}")));
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
