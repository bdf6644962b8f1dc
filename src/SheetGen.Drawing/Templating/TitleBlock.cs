using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;

namespace SheetGen.Drawing.Templating;

/// <summary>A title block that the user drew, in millimetres of paper from the lower left corner of the sheet.</summary>
/// <param name="Fields">Its attributes; those whose tags the program knows are filled, the others keep their default.</param>
public sealed record TitleBlock(IReadOnlyList<Primitive> Lines, IReadOnlyList<BlockAttribute> Fields)
{
    /// <summary>The title block where it stands, or moved to the middle of the sheet where it would leave it; null where it is larger than the sheet.</summary>
    public TitleBlock? On(SheetSize size)
    {
        Box box = Box.Around(Lines.SelectMany(Extents.Points).Concat(Fields.Select(f => f.Position)));
        if (new Box(0, 0, size.Width, size.Height).Grown(0.5).Contains(box))
            return this;
        if (box.Width > size.Width + 1 || box.Height > size.Height + 1)
            return null;
        var move = new PlaneTransform(1, 0, new Point2(size.Width / 2, size.Height / 2) - box.Center);
        return new([.. Lines.Select(move.Apply)], [.. Fields.Select(f => f with { Position = move.Apply(f.Position) })]);
    }
}
