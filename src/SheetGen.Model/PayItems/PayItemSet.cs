namespace SheetGen.Model.PayItems;

/// <summary>The pay items of an agency for one length unit.</summary>
public sealed record PayItemSet(string Name, string Notice, IReadOnlyList<PayItem> Items);
