namespace SheetGen.Dxf;

/// <summary>Extended data of one application.</summary>
/// <param name="AppId">Name of an application of the document.</param>
/// <param name="Values">Its values, in order.</param>
public sealed record DxfXData(string AppId, DxfSequence<DxfXValue> Values);
