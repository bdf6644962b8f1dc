namespace SheetGen.Model;

/// <summary>Names and facts of the project that are printed and not computed with.</summary>
/// <param name="Facts">Printed facts by key (datum, coordinate zone, design loads, grout strength ...), in the order of the key table.</param>
public sealed record ProjectInfo(string Title, string Number, IReadOnlyDictionary<string, string> Facts);
