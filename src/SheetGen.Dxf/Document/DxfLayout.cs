namespace SheetGen.Dxf;

/// <summary>A paper-space layout: one sheet. Its origin is the lower left corner of the paper.</summary>
/// <param name="name">Name on the tab; not Model.</param>
/// <param name="paperWidth">Width of the paper in mm, whatever <see cref="Unit"/> is.</param>
/// <param name="paperHeight">Height of the paper in mm.</param>
public sealed class DxfLayout(string name, double paperWidth, double paperHeight) : IDxfNamed
{
    /// <inheritdoc/>
    public string Name { get; } = name;

    /// <summary>Width of the paper in mm, above 0.</summary>
    public double PaperWidth { get; } = paperWidth;

    /// <summary>Height of the paper in mm, above 0.</summary>
    public double PaperHeight { get; } = paperHeight;

    /// <summary>Unit of the coordinates of <see cref="Entities"/> and <see cref="Viewports"/>.</summary>
    public DxfPaperUnit Unit { get; init; } = DxfPaperUnit.Millimetre;

    /// <summary>Name of the paper in the plotter's list; empty: none named.</summary>
    public string PaperName { get; init; } = "";

    /// <summary>Name of the plotter; <c>none_device</c>: left open.</summary>
    public string Plotter { get; init; } = "none_device";

    /// <summary>Edge of the paper that the plotter does not reach, mm, 0 or more. Coordinates count from the paper's own corner all the same.</summary>
    public double Margin { get; init; }

    /// <summary>File name of the plot style table (<c>monochrome.ctb</c>); empty: none.</summary>
    public string PlotStyleTable { get; init; } = "";

    /// <summary>Windows from the paper into model space, in drawing order.</summary>
    public List<DxfViewport> Viewports { get; } = [];

    /// <summary>What stands on the paper itself.</summary>
    public List<DxfEntity> Entities { get; } = [];

    /// <summary>Width of the paper in <see cref="Unit"/>.</summary>
    public double Width => PaperWidth / UnitInMillimetres;

    /// <summary>Height of the paper in <see cref="Unit"/>.</summary>
    public double Height => PaperHeight / UnitInMillimetres;

    private double UnitInMillimetres => Unit == DxfPaperUnit.Inch ? 25.4 : 1;
}
