namespace SheetGen.Dxf;

/// <summary>A window from a layout into model space (VIEWPORT). It stands in <see cref="DxfLayout.Viewports"/>.</summary>
/// <param name="Layer">Name of its layer; its frame shows if that layer does.</param>
/// <param name="Center">Its middle on the paper.</param>
/// <param name="Width">Width on the paper, above 0.</param>
/// <param name="Height">Height on the paper, above 0.</param>
/// <param name="ViewCenter">The model point seen in its middle.</param>
/// <param name="ViewHeight">The height of model space seen, above 0.</param>
public sealed record DxfViewport(
    string Layer, DxfPoint Center, double Width, double Height, DxfPoint ViewCenter, double ViewHeight) : DxfItem(Layer)
{
    /// <summary>Whether the scale is locked.</summary>
    public bool Locked { get; init; } = true;

    /// <summary>Turn of the view in degrees: the model is seen turned by this angle counter-clockwise.</summary>
    public double Twist { get; init; }

    /// <summary>Names of layers not shown in this viewport.</summary>
    public DxfSequence<string> FrozenLayers { get; init; } = [];

    /// <summary>Model units for one paper unit.</summary>
    public double Scale => ViewHeight / Height;

    /// <summary>A viewport of a given scale.</summary>
    /// <param name="layer">Name of its layer.</param>
    /// <param name="center">Its middle on the paper.</param>
    /// <param name="width">Width on the paper.</param>
    /// <param name="height">Height on the paper.</param>
    /// <param name="viewCenter">The model point seen in its middle.</param>
    /// <param name="scale">Model units for one paper unit, above 0: feet on inches at 1 in = 10 ft is 10.</param>
    public static DxfViewport AtScale(
        string layer, DxfPoint center, double width, double height, DxfPoint viewCenter, double scale) =>
        new(layer, center, width, height, viewCenter, height * scale);
}
