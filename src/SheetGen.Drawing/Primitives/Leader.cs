namespace SheetGen.Drawing.Primitives;

/// <summary>A pointing line.</summary>
/// <param name="From">What it points at.</param>
/// <param name="To">The words that speak of it.</param>
/// <param name="Arrow">Length of the arrowhead at what it points at; 0 where the line is too short for one.</param>
public sealed record Leader(Point2 From, Point2 To, double Arrow) : Primitive(LayerRole.Leader)
{
    /// <summary>Usual length of an arrowhead on paper, mm.</summary>
    public const double PaperArrow = 2;

    /// <summary>A leader on paper, with an arrowhead where it is long enough for one.</summary>
    public static Leader OnPaper(Point2 from, Point2 to) => new(from, to, (to - from).Length >= 1.6 * PaperArrow ? PaperArrow : 0);

    /// <summary>The lines that it is drawn of.</summary>
    public IEnumerable<Primitive> Picture()
    {
        yield return new Line(Layer, From, To) { Nail = Nail, Obstruction = Obstruction };
        if (Arrow <= 0)
            yield break;
        Point2 way = (To - From) * (1 / (To - From).Length), side = new(-way.Y, way.X), foot = From + way * Arrow;
        yield return Fill.Of(Layer, From, foot + side * (Arrow / 6), foot - side * (Arrow / 6)) with { Nail = Nail, Obstruction = Obstruction };
    }
}
