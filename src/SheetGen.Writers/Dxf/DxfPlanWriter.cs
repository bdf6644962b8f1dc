using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;

namespace SheetGen.Writers.Dxf;

/// <summary>Writes the plan at true coordinates (x easting, y northing) as a DXF file of its own.</summary>
public static class DxfPlanWriter
{
    public static void Write(SheetSet set, Stream stream)
    {
        var drawing = new DxfDrawing(set, withBlocks: false);
        drawing.Document.Model.AddRange(drawing.Space(set.Plan));
        DxfWriter.Write(drawing.Document, stream);
    }
}
