using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>One window of a wall's elevation as it lies on its sheet.</summary>
public sealed record ElevationView(DrawingContext Context, ElevationStrip Strip, SheetWindow Window, Viewport Viewport, ViewLabels Labels)
{
    private PlaneTransform ToPaper { get; } = Viewport.ToPaper;

    public Wall Wall => Window.Wall;

    public Point2 At(double along, double elevation) => ToPaper.Apply(Strip.At(along, elevation));

    /// <summary>Direction of up-station on the drawing: +1 to the right.</summary>
    public int Sign => Strip.Sign;

    /// <summary>Left and right edge of the window on paper.</summary>
    public double LeftEdge => Math.Min(At(Window.Start, 0).X, At(Window.End, 0).X);

    public double RightEdge => Math.Max(At(Window.Start, 0).X, At(Window.End, 0).X);

    /// <summary>Height on paper of the station axis, with room for its words below, mm.</summary>
    public double AxisAt => Viewport.Frame.Bottom + Math.Max(7, 2.5 + 1.35 * Context.StyleOf(TextRole.Label).Height);

    public IReadOnlyList<Nail> Nails { get; } = [.. Context.NailsOf(Window.Wall).Where(n => Window.Has(n.Along))];

    /// <summary>Tells the placer what stands in the view already.</summary>
    public void Crowd(IEnumerable<Primitive> model)
    {
        Crowd crowd = Labels.Placer.Crowd;
        // Nails beside the window show at its edge, too.
        foreach (Nail nail in Context.NailsOf(Wall))
        {
            Point2 at = At(nail.Along, nail.Elevation);
            foreach (Box box in NailSymbols.Footprint(nail, Sign))
                crowd.Add(new Box(box.Left + at.X, box.Bottom + at.Y, box.Right + at.X, box.Top + at.Y), ownsLeader: true);
        }
        foreach (Primitive primitive in model.Where(p => p is Line or Polyline && p.Layer != LayerRole.Viewport))
            crowd.Add(ToPaper.Apply(primitive), primitive.Layer == LayerRole.Wall ? LineKind.NoText : LineKind.Soft);
    }

    /// <summary>Keeps the places of marks that were found before.</summary>
    public void Keep(MarkSet marks)
    {
        foreach (PlacedMark mark in marks.Marks)
            Labels.Keep(mark.Text, mark.Leader);
    }
}
