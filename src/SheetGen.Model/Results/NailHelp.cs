namespace SheetGen.Model.Results;

/// <summary>The least relaxation of one rule that frees nails that are left unresolved; tried with the search, not guessed.</summary>
/// <param name="Nails">Marks of the nails; those of a group stand near each other.</param>
/// <param name="Station">Printed station of the first of them.</param>
/// <param name="ToStation">Printed station of the last.</param>
/// <param name="Relaxation">Which rule: <c>length</c>, <c>clearance</c>, <c>redirect.maximum</c>, <c>redirect.inclination</c>, <c>leave_out</c> (with one nail added), <c>columns</c>, <c>corner_rows</c>.</param>
/// <param name="Value">Its value that frees them, as it would be written in the project file; empty where nothing that was tried does.</param>
/// <param name="Result">What happens then, in words.</param>
/// <param name="NeedsApproval">True where a rule of safety is relaxed, so that the engineer of record must agree.</param>
public sealed record NailHelp(
    Wall Wall, IReadOnlyList<string> Nails, double Station, double ToStation, string Relaxation, string Value, string Result, bool NeedsApproval);
