namespace SheetGen.Dxf;

/// <summary>A rectangle that hides what was drawn before it, in the colour of the background (WIPEOUT).</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Corner">The corner from which both sides go.</param>
/// <param name="Along">The one side, not 0.</param>
/// <param name="Up">The other side, not 0 and not parallel to the first.</param>
public sealed record DxfWipeout(string Layer, DxfPoint Corner, DxfPoint Along, DxfPoint Up) : DxfEntity(Layer);
