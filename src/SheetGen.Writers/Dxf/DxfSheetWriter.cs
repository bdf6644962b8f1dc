using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;

namespace SheetGen.Writers.Dxf;

/// <summary>
/// Writes a sheet set as DXF (AC1015): model space at full size, a layout a sheet with scaled, locked viewports, in inches on sizes of inches
/// and in millimetres on others.
/// </summary>
public static class DxfSheetWriter
{
    private const double Inch = 25.4;

    /// <summary>Edge that plotters do not reach, mm (this program's own figure): well inside the border.</summary>
    private const double PlotMargin = 6;

    public static void Write(SheetSet set, Stream stream)
    {
        bool inches = set.Sheets.Any(s => IsOfInches(s.Size));
        double paper = inches ? 1 / Inch : 1;
        var toPaper = new PlaneTransform(paper, 0, default);
        var drawing = new DxfDrawing(set, withBlocks: true, paper);
        DxfDocument document = drawing.Document;
        document.Model.AddRange(drawing.Space(set.Model));
        foreach (Sheet sheet in set.Sheets)
        {
            var layout = new DxfLayout(sheet.Name, sheet.Width, sheet.Height)
            {
                PaperName = sheet.Size,
                Unit = inches ? DxfPaperUnit.Inch : DxfPaperUnit.Millimetre,
                Margin = PlotMargin,
                PlotStyleTable = "monochrome.ctb",
            };
            foreach (Viewport v in sheet.Viewports)
                layout.Viewports.Add(ViewportOf(v, drawing.NameOf(LayerRole.Viewport), paper));
            layout.Entities.AddRange(drawing.Space([.. sheet.Paper.Select(toPaper.Apply)]));
            document.Layouts.Add(layout);
        }
        DxfWriter.Write(document, stream);
    }

    private static bool IsOfInches(string size) =>
        size.StartsWith("ANSI", StringComparison.OrdinalIgnoreCase) || size.StartsWith("ARCH", StringComparison.OrdinalIgnoreCase);

    private static DxfViewport ViewportOf(Viewport v, string layer, double paper) =>
        new(layer, new(v.Frame.Center.X * paper, v.Frame.Center.Y * paper), v.Frame.Width * paper, v.Frame.Height * paper,
            new(v.Center.X, v.Center.Y), v.Frame.Height * v.UnitsPerMillimetre)
        {
            Twist = v.Twist * 180 / Math.PI,
        };
}
