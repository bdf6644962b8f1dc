using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Sheets;

/// <summary>A sheet as it is seen: everything in paper coordinates, references and dimensions as lines and texts.</summary>
public static class SheetPicture
{
    /// <summary>What stands on the sheet, with the window that cuts it (null for the paper itself).</summary>
    public static IEnumerable<(Primitive Primitive, Box? Window)> Of(SheetSet set, Sheet sheet)
    {
        Dictionary<string, BlockDefinition> blocks = set.Blocks.ToDictionary(b => b.Name);
        Dictionary<string, DimensionStyle> styles = set.DimensionStyles.ToDictionary(s => s.Name);
        foreach (Viewport viewport in sheet.Viewports)
        {
            PlaneTransform toPaper = viewport.ToPaper;
            Box reach = viewport.Frame.Grown(40);
            foreach (Primitive primitive in set.Model)
            {
                if (!Extents.Points(primitive).Any())
                    continue;
                Box box = Box.Around(Extents.Points(primitive).Select(toPaper.Apply));
                if (!box.Grown(0.001).Overlaps(reach))
                    continue;
                foreach (Primitive part in Parts(primitive, blocks, styles))
                    yield return (toPaper.Apply(part), viewport.Frame);
            }
        }
        foreach (Primitive primitive in sheet.Paper.SelectMany(p => Parts(p, blocks, styles)))
            yield return (primitive, null);
    }

    private static IEnumerable<Primitive> Parts(
        Primitive primitive, Dictionary<string, BlockDefinition> blocks, Dictionary<string, DimensionStyle> styles) => primitive switch
        {
            BlockReference r => blocks[r.Block].Expand(r).Select(p => p with { Nail = r.Nail }),
            Leader l => l.Picture(),
            Dimension d => DimensionPicture.Draw(d, styles[d.Style]),
            _ => [primitive],
        };
}
