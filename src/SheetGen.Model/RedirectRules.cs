namespace SheetGen.Model;

/// <summary>How far and in what steps a nail may be turned. Degrees.</summary>
/// <param name="FieldTolerance">Largest splay or change of inclination without a plan note (10: common practice, no source).</param>
/// <param name="Step">Step of both angles.</param>
/// <param name="Maximum">Largest splay and largest change of inclination.</param>
/// <param name="LeastInclination">Least inclination of a turned nail.</param>
/// <param name="GreatestInclination">Greatest inclination of a turned nail.</param>
/// <param name="Lengthen">True where a nail beyond the field tolerance keeps its reach behind the face.</param>
public sealed record RedirectRules(
    double FieldTolerance, double Step, double Maximum, double LeastInclination, double GreatestInclination, bool Lengthen);
