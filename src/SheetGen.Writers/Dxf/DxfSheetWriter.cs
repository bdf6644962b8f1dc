using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;

namespace SheetGen.Writers.Dxf;

/// <summary>
/// Writes a sheet set as DXF (AC1015): model space at full size, a layout in millimetres a sheet with scaled, locked viewports.
/// </summary>
public static class DxfSheetWriter
{
    public static void Write(SheetSet set, Stream stream)
    {
        var drawing = new DxfDrawing(set, withBlocks: true);
        DxfDocument document = drawing.Document;
        document.Model.AddRange(drawing.Space(set.Model));
        foreach (Sheet sheet in set.Sheets)
        {
            var layout = new DxfLayout(sheet.Name, sheet.Width, sheet.Height) { PaperName = sheet.Size };
            foreach (Viewport v in sheet.Viewports)
                layout.Viewports.Add(ViewportOf(v, drawing.NameOf(LayerRole.Viewport)));
            layout.Entities.AddRange(drawing.Space(sheet.Paper));
            document.Layouts.Add(layout);
        }
        DxfWriter.Write(document, stream);
    }

    private static DxfViewport ViewportOf(Viewport v, string layer) =>
        new(layer, new(v.Frame.Center.X, v.Frame.Center.Y), v.Frame.Width, v.Frame.Height,
            new(v.Center.X, v.Center.Y), v.Frame.Height * v.UnitsPerMillimetre)
        {
            Twist = v.Twist * 180 / Math.PI,
        };
}
