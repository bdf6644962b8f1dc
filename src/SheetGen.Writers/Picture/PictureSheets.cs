using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;

namespace SheetGen.Writers.Picture;

/// <summary>The sheets that show plan and elevation, one below the other on one large paper, for a picture to look at.</summary>
internal sealed class PictureSheets
{
    private const double Gap = 10;
    private readonly SheetSet _set;

    public PictureSheets(SheetSet set)
    {
        _set = set;
        Sheets = [.. set.Sheets.Where(s => s.IsView)];
        Width = Sheets.Max(s => s.Width);
        Height = Sheets.Sum(s => s.Height) + Gap * (Sheets.Count - 1);
    }

    public IReadOnlyList<Sheet> Sheets { get; }

    public double Width { get; }

    public double Height { get; }

    /// <summary>Everything that prints, layer by layer in the order of drawing, with the window that cuts it; y counts down from the top.</summary>
    public IEnumerable<(LayerRole Layer, Box? Window, Primitive Primitive)> Content()
    {
        double top = Height;
        foreach (Sheet sheet in Sheets)
        {
            double below = top - sheet.Height;
            var moved = new PlaneTransform(1, 0, new Point2(0, below));
            foreach (var layer in SheetPicture.Of(_set, sheet).Where(p => _set.LayerOf(p.Primitive.Layer).Plot).GroupBy(p => p.Primitive.Layer).OrderBy(g => g.Key))
            {
                foreach ((Primitive primitive, Box? window) in layer)
                    yield return (layer.Key, window is Box w ? new Box(w.Left, w.Bottom + below, w.Right, w.Top + below) : null, moved.Apply(primitive));
            }
            top = below - Gap;
        }
    }
}
