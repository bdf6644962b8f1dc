namespace SheetGen.Drawing.Templating;

/// <summary>A layer of the layer list.</summary>
/// <param name="Color">Colour index of the DXF palette, 1 to 255.</param>
/// <param name="Linetype">Name of a line type of the list, or Continuous.</param>
/// <param name="Weight">Line weight in millimetres.</param>
/// <param name="Screen">Darkness of the print in percent, 100 black.</param>
public sealed record LayerDefinition(string Name, int Color, string Linetype, double Weight, int Screen, string Description, bool Plot = true);
