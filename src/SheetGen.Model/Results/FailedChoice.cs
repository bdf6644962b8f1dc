namespace SheetGen.Model.Results;

/// <summary>A cheaper choice for a nail that cannot be taken.</summary>
/// <param name="Station">Printed station of the head tried.</param>
/// <param name="Blocker">What it hits first, or the rule that it breaks.</param>
/// <param name="Clear">Clear distance met; null where a rule of spacing is broken.</param>
public sealed record FailedChoice(double Station, double Splay, double Inclination, string Blocker, double? Clear);
