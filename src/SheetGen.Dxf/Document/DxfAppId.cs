namespace SheetGen.Dxf;

/// <summary>The name under which an application keeps its extended data.</summary>
public sealed record DxfAppId(string Name) : IDxfNamed;
