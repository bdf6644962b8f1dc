using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

/// <summary>Compares documents part by part, so that a failure shows the entity.</summary>
internal static class DocumentAssert
{
    internal static void Equal(DxfDocument expected, DxfDocument actual)
    {
        Assert.Equal(expected.Header, actual.Header);
        Assert.Equal(expected.Layers, actual.Layers);
        Assert.Equal(expected.Linetypes, actual.Linetypes);
        Assert.Equal(expected.TextStyles, actual.TextStyles);
        Assert.Equal(expected.DimStyles, actual.DimStyles);
        Assert.Equal(expected.AppIds, actual.AppIds);
        Assert.Equal(expected.Blocks.Select(b => (b.Name, b.BasePoint)), actual.Blocks.Select(b => (b.Name, b.BasePoint)));
        foreach (var block in expected.Blocks)
            Equal(block.Entities, actual.Blocks[block.Name].Entities);
        Equal(expected.Model, actual.Model);
        Assert.Equal(expected.Layouts.Select(Paper), actual.Layouts.Select(Paper));
        foreach (var layout in expected.Layouts)
        {
            Assert.Equal(layout.Viewports, actual.Layouts[layout.Name].Viewports);
            Equal(layout.Entities, actual.Layouts[layout.Name].Entities);
        }
    }

    private static void Equal(List<DxfEntity> expected, List<DxfEntity> actual)
    {
        Assert.Equal(expected.Count, actual.Count);
        for (var i = 0; i < expected.Count; i++)
            Assert.Equal(expected[i], actual[i]);
    }

    private static object Paper(DxfLayout layout) =>
        (layout.Name, layout.PaperWidth, layout.PaperHeight, layout.Unit, layout.PaperName, layout.Plotter, layout.PlotStyleTable);
}
