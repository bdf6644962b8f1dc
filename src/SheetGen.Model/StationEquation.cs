namespace SheetGen.Model;

/// <summary>
/// A place where stations jump: the same point is the back station for what lies before it and the ahead station for what follows.
/// Ahead under back makes stations that exist twice (an overlap), ahead over back stations that do not exist (a gap).
/// </summary>
/// <param name="Along">Distance along the layout line.</param>
/// <param name="Back">Printed station at the end of what lies before.</param>
/// <param name="Ahead">Printed station at the start of what follows.</param>
public sealed record StationEquation(double Along, PrintedStation Back, PrintedStation Ahead);
