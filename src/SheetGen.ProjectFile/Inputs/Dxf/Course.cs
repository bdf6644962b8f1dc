namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>A place on a curve with its direction there.</summary>
internal readonly record struct Knot(Point3 At, Point3 Along);

/// <summary>An entity, or several joined, where they stand in a drawing.</summary>
/// <param name="Kind">What it is called in messages, such as circle.</param>
/// <param name="Handle">Handle of the (first) entity; empty where it has none.</param>
/// <param name="Layer">Its layer.</param>
/// <param name="Line">Line of the file.</param>
internal sealed record Source(string Kind, string Handle, string Layer, int Line)
{
    public string Text => Handle.Length > 0 ? $"{Kind} {Handle} on layer {Tree.Shown.Short(Layer)}" : $"{Kind} on layer {Tree.Shown.Short(Layer)}";
}

/// <summary>A stretch of a curve between two places: straight where the directions are those of the line between them.</summary>
/// <param name="Error">Greatest distance of its knots' chords from the curve.</param>
internal sealed record Stroke(IReadOnlyList<Knot> Knots, double Error)
{
    public Point3 Start => Knots[0].At;

    public Point3 End => Knots[^1].At;

    public bool IsCurved => Error > 0;

    public Stroke Reversed => new([.. Knots.Reverse().Select(k => new Knot(k.At, k.Along * -1))], Error);

    public static Stroke Straight(Point3 a, Point3 b) => new([new Knot(a, b - a), new Knot(b, b - a)], 0);

    public Stroke Through(Placing placing) =>
        new([.. Knots.Select(k => new Knot(placing.Point(k.At), placing.Vector(k.Along)))], Error * placing.Stretch);
}

/// <summary>What is drawn: an open or closed course of strokes, a circle, a point, or loose corners of a body.</summary>
internal sealed record Figure(Source Source, FigureKind Kind, IReadOnlyList<Stroke> Strokes)
{
    /// <summary>Centre of a circle, place of a point or text.</summary>
    public Point3 Center { get; init; }

    public double Radius { get; init; }

    /// <summary>Corners of a body.</summary>
    public IReadOnlyList<Point3> Corners { get; init; } = [];

    /// <summary>Faces of a body, each by the places of its corners in <see cref="Corners"/>; empty where the drawing does not tell them.</summary>
    public IReadOnlyList<int[]> Faces { get; init; } = [];

    /// <summary>Height that the drawing gives it above its elevation.</summary>
    public double Thickness { get; init; }

    public string Text { get; init; } = "";

    /// <summary>The insert that it is part of; null for what stands alone.</summary>
    public InsertPart? Insert { get; init; }

    public IEnumerable<Point3> Points => Kind switch
    {
        FigureKind.Circle => [Center - new Point3(Radius, Radius, 0), Center + new Point3(Radius, Radius, 0)],
        FigureKind.Point or FigureKind.Text => [Center],
        FigureKind.Body => Corners,
        _ => Strokes.SelectMany(s => s.Knots).Select(k => k.At),
    };
}

/// <summary>Kind of a figure.</summary>
internal enum FigureKind
{
    Circle,
    Closed,
    Open,
    Point,
    Body,
    Text,
}

/// <summary>An insert of a block: its attributes, and the outermost layer that it stands on.</summary>
internal sealed record InsertPart(int Number, string Block, Source Source, IReadOnlyDictionary<string, string> Attributes, IReadOnlyList<string> Layers, IReadOnlyList<string> Blocks);
