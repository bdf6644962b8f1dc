using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Composing;

/// <summary>What every part of the composer draws from.</summary>
public sealed record DrawingContext(
    WallProject Project, NailLayout Layout, ClearanceReport Report, IReadOnlyList<TableData> Tables, RunInfo Run,
    DrawingTemplates Templates)
{
    public Printed Print { get; } = new(Project.Unit, Project.Origin);

    public TextStyle StyleOf(TextRole role) => Templates.Texts[role];

    public IEnumerable<Nail> NailsOf(Wall wall) => Layout.Nails.Where(n => n.Wall == wall);

    public Text Write(LayerRole layer, TextRole role, Point2 at, string value, HorizontalAlign align = HorizontalAlign.Left, double rotation = 0) =>
        new(layer, role, at, StyleOf(role).Height, value, align, rotation);
}
