namespace SheetGen.Dxf;

/// <summary>A code and a value as they stand in a file.</summary>
/// <param name="Code">Group code.</param>
/// <param name="Value">Value without line end, not decoded further than its characters.</param>
/// <param name="Line">Line of the value.</param>
internal readonly record struct Group(int Code, string Value, int Line);
