namespace SheetGen.Model.Results;

/// <summary>Clear distance and drilling margins of one nail.</summary>
/// <param name="Nearest">Name of the nail or obstruction with the least clear distance; empty where there is none.</param>
/// <param name="LeastClear">Least clear distance; plus infinity where there is nothing else.</param>
/// <param name="MarginObstruction">Degrees by which the hole may stray before it touches an obstruction, 0 to 90.</param>
/// <param name="MarginNail">Degrees by which it may stray before it touches another nail's hole, 0 to 90.</param>
public sealed record NailClearance(string Nearest, double LeastClear, double MarginObstruction, double MarginNail);
