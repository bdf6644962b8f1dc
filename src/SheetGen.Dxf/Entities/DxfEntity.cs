namespace SheetGen.Dxf;

/// <summary>Something drawn in model space, on a layout or in a block. It takes its looks from its layer.</summary>
public abstract record DxfEntity(string Layer) : DxfItem(Layer);
