using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;

namespace SheetGen.Writers.Pdf;

/// <summary>Writes a sheet set as PDF: a page and a bookmark a sheet, layers that can be switched, text that can be searched.</summary>
public static class PdfSheetWriter
{
    private static readonly Lock Setup = new();

    /// <summary>Writes the file. The same set and font give the same bytes.</summary>
    public static void Write(SheetSet set, Stream stream)
    {
        UseSheetFonts();
        using var document = new PdfDocument();
        var order = new List<LayerRole>();
        var cache = new Dictionary<(double, bool), XFont>();
        foreach (Sheet sheet in set.Sheets)
        {
            PdfPage page = document.AddPage();
            page.Width = XUnit.FromMillimeter(sheet.Width);
            page.Height = XUnit.FromMillimeter(sheet.Height);
            Draw(set, sheet, document, page, order, cache);
            document.Outlines.Add($"{sheet.Name} {sheet.Title}", page);
        }
        PdfLayers.Attach(document, set, order);
        Describe(document, set);
        using var memory = new MemoryStream();
        document.Save(memory, false);
        byte[] bytes = PdfBytes.Normalise(memory.ToArray(), set.InputHash + set.Number + set.Title);
        stream.Write(bytes);
    }

    private static void Draw(
        SheetSet set, Sheet sheet, PdfDocument document, PdfPage page, List<LayerRole> order, Dictionary<(double, bool), XFont> cache)
    {
        using XGraphics paper = XGraphics.FromPdfPage(page);
        (Primitive Primitive, Box? Window)[] seen = [.. SheetPicture.Of(set, sheet).Where(p => set.LayerOf(p.Primitive.Layer).Plot)];
        IEnumerable<(Primitive Primitive, Box? Window)> masks = seen.Where(p => p.Primitive is Text { Masked: true })
            .Select(p => ((Primitive)TextMask.Of((Text)p.Primitive, set.Templates.Texts[((Text)p.Primitive).Role]), p.Window));
        IGrouping<LayerRole, (Primitive Primitive, Box? Window)>[] byLayer = [.. seen.GroupBy(p => p.Primitive.Layer).OrderBy(g => g.Key)];
        foreach (var layer in byLayer.Where(g => !g.Key.IsAboveMasks())
            .Concat(masks.GroupBy(p => p.Primitive.Layer).OrderBy(g => g.Key))
            .Concat(byLayer.Where(g => g.Key.IsAboveMasks())))
        {
            var form = new XForm(document, page.Width, page.Height);
            using (XGraphics graphics = XGraphics.FromForm(form))
            {
                var pen = new PdfPen(graphics, sheet, set, layer.Key, cache);
                foreach (var window in layer.GroupBy(p => p.Window))
                {
                    XGraphicsState state = graphics.Save();
                    if (window.Key is Box box)
                        pen.Clip(box);
                    foreach ((Primitive primitive, _) in window)
                        pen.Draw(primitive);
                    graphics.Restore(state);
                }
            }
            paper.DrawImage(form, 0, 0);
            order.Add(layer.Key);
        }
    }

    private static void Describe(PdfDocument document, SheetSet set)
    {
        document.Info.Title = set.Title;
        document.Info.Subject = $"Soil nail wall sheets {set.Number}";
        document.Info.Author = "";
        document.Info.Creator = "SheetGen " + set.Version;
        document.Info.Keywords = $"input {set.InputHash}; font {SheetFont.Name}";
        DateTime date = DateTime.TryParse(set.Date, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out DateTime given)
            ? given
            : new DateTime(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        document.Info.CreationDate = date;
        document.Info.ModificationDate = date;
        document.PageMode = PdfPageMode.UseOutlines;
        var numbers = new PdfArray(document);
        for (int i = 0; i < set.Sheets.Count; i++)
        {
            var label = new PdfDictionary(document);
            label.Elements["/P"] = new PdfString(set.Sheets[i].Name);
            numbers.Elements.Add(new PdfInteger(i));
            numbers.Elements.Add(label);
        }
        var labels = new PdfDictionary(document);
        labels.Elements["/Nums"] = numbers;
        document.Internals.Catalog.Elements["/PageLabels"] = labels;
    }

    /// <summary>The package keeps one resolver for the whole process; whoever comes first sets it.</summary>
    internal static void UseSheetFonts()
    {
        lock (Setup)
        {
            if (GlobalFontSettings.FontResolver is not SheetFonts)
                GlobalFontSettings.FontResolver = new SheetFonts();
        }
    }
}
