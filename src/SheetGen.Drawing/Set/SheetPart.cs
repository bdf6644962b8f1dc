using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Set;

/// <summary>What a part of a sheet shows; the sheet is named after its parts.</summary>
public enum PartKind
{
    Section,
    Detail,
    Table,
    Notes,
}

/// <summary>A part of a sheet that takes a rectangle of the paper: it is placed first and drawn when every sheet has its name.</summary>
/// <param name="Width">With the room beside it, mm.</param>
/// <param name="Height">With the room below it, mm.</param>
/// <param name="Draw">Draws it with its upper left corner at a point of the sheet, once all sheets have their names.</param>
public sealed record SheetPart(PartKind Kind, double Width, double Height, Func<Point2, SheetRefs, SheetContent> Draw)
{
    /// <summary>What it takes of the sheet with its upper left corner at a point.</summary>
    public Box BoxAt(Point2 at) => new(at.X, at.Y - Height, at.X + Width, at.Y);

    /// <summary>Scale of what it shows; null where it has none, or several.</summary>
    public SheetScale? Scale { get; init; }

    /// <summary>The sheet to which notes belong, as they name it; null for other parts.</summary>
    public string? Of { get; init; }

    /// <summary>True for a piece of a part that was cut: its pieces stand in their order.</summary>
    public bool IsPiece { get; init; }

    /// <summary>Cuts the part so that its first piece is no higher than a height; null where it cannot be cut or nothing worth it fits.</summary>
    public Func<double, (SheetPart First, SheetPart Others)?>? Cut { get; init; }
}

/// <summary>A sheet on which parts have their places, by their upper left corners.</summary>
public sealed record PackedSheet(IReadOnlyList<(SheetPart Part, Point2 At)> Parts)
{
    /// <summary>The scale of all that it shows; null where that has none, or several.</summary>
    public SheetScale? Scale => Parts.Select(p => p.Part.Scale).Distinct().ToArray() is [SheetScale one] ? one : null;

    /// <summary>The share of an area that its parts take.</summary>
    public double Filled(Box area) => Parts.Sum(p => p.Part.Width * p.Part.Height) / (area.Width * area.Height);

    public IEnumerable<PartKind> Kinds => Parts.Select(p => p.Part.Kind).Distinct().Order();

    public SheetContent Draw(SheetRefs refs) => SheetContent.Together([.. Parts.Select(p => p.Part.Draw(p.At, refs))]);
}
