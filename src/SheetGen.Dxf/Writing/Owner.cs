namespace SheetGen.Dxf;

/// <summary>Who owns the entities written: a block record or an insert, in model space or on paper.</summary>
internal readonly record struct Owner(int Handle, bool Paper);
