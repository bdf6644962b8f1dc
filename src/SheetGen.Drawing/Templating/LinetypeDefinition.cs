namespace SheetGen.Drawing.Templating;

/// <summary>A line type: dashes (over 0), gaps (under 0) and dots (0) in millimetres of paper.</summary>
public sealed record LinetypeDefinition(string Name, string Description, IReadOnlyList<double> Pattern);
