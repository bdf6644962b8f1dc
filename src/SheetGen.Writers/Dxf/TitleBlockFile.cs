using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Dxf;
using SheetGen.Model.Problems;

namespace SheetGen.Writers.Dxf;

/// <summary>
/// Reads a title block that the user drew: model space where it holds attribute definitions or there is no block with any,
/// else the block with the most of them, about its base point.
/// </summary>
public static class TitleBlockFile
{
    private const LayerRole On = LayerRole.TitleBlock;
    private const int Deepest = 8;

    /// <summary>The title block in millimetres of paper; null, with a problem, where the file cannot be read or draws nothing.</summary>
    /// <param name="name">The file as the problems name it.</param>
    public static TitleBlock? Read(byte[] file, string name, List<Problem> problems)
    {
        DxfReadResult read = DxfReader.Read(file);
        if (!read.Succeeded)
        {
            problems.Add(new Problem(Severity.Error, "T02", "not a title block drawing: " + read.Error.Message,
                new SourceSpot(name, Math.Max(1, read.Error.Line), 1), "save the title block as an ASCII DXF file"));
            return null;
        }
        DxfDocument document = read.Document;
        DxfBlock? block = document.Model.OfType<DxfAttributeDefinition>().Any()
            ? null
            : document.Blocks.Where(b => b.AttributeDefinitions.Any()).MaxBy(b => b.AttributeDefinitions.Count());
        IEnumerable<DxfEntity> entities = block?.Entities ?? document.Model;
        DxfPoint from = block?.BasePoint ?? default;
        if (Stretched(entities, document, 0) is { } stretched)
        {
            problems.Add(new Problem(Severity.Error, "T02", $"the title block drawing holds the block \"{stretched}\" at unlike scales along x and y",
                new SourceSpot(name, 1, 1), "explode that block reference in the drawing"));
            return null;
        }
        Primitive[] lines = [.. entities.SelectMany(e => Draw(e, document, 0))];
        BlockAttribute[] fields = [.. entities.OfType<DxfAttributeDefinition>().Select(FieldOf).DistinctBy(f => f.Tag)];
        DxfProblem[] skipped = [.. read.Warnings.Where(w => w.Message.Contains("left out", StringComparison.Ordinal)), .. Undrawn(entities, document, 0).Distinct()];
        if (lines.Length + fields.Length == 0)
        {
            string what = skipped.Length == 0 ? "is empty" : "holds only what a sheet cannot show: " + string.Join("; ", skipped.Select(s => s.Message).Distinct());
            problems.Add(new Problem(Severity.Error, "T02", "the title block drawing " + what, new SourceSpot(name, Math.Max(1, skipped.Select(s => s.Line).FirstOrDefault()), 1),
                "draw it in model space or as a block with attributes, of lines, polylines, arcs, circles, ellipses, texts, hatches and solids"));
            return null;
        }
        problems.AddRange(skipped.Select(s => new Problem(Severity.Warning, "T03", "not drawn from the title block: " + s.Message,
            new SourceSpot(name, Math.Max(1, s.Line), 1), "turn it into lines, polylines, texts or hatches if the sheets need it")));
        double width = Box.Around(lines.SelectMany(Extents.Points).Concat(fields.Select(f => f.Position))).Width;
        double scale = MillimetresPerUnit(document.Header.Units, width);
        var toPaper = new PlaneTransform(scale, 0, new Point2(from.X, from.Y) * -scale);
        return new([.. lines.Select(toPaper.Apply)],
            [.. fields.Select(f => f with { Position = toPaper.Apply(f.Position), Height = f.Height * scale })]);
    }

    /// <summary>Without a unit, what is up to 60 wide is taken as inches: no sheet is so small in millimetres or so large in inches.</summary>
    private static double MillimetresPerUnit(DxfUnits units, double width) => units switch
    {
        DxfUnits.Inch => 25.4,
        DxfUnits.Foot or DxfUnits.UsSurveyFoot => 304.8,
        DxfUnits.Centimetre => 10,
        DxfUnits.Metre => 1000,
        DxfUnits.Millimetre => 1,
        _ => width <= 60 ? 25.4 : 1,
    };

    private static IEnumerable<Primitive> Draw(DxfEntity entity, DxfDocument document, int depth) => entity switch
    {
        DxfLine l => [new Line(On, Place(l.Start), Place(l.End))],
        DxfPolyline p => [new Polyline(On, Vertices(p.Vertices), p.Closed)],
        DxfCircle c => [new Circle(On, Place(c.Center), c.Radius)],
        DxfArc a => [new Arc(On, Place(a.Center), a.Radius, a.StartAngle, a.EndAngle)],
        DxfSolid s => [Fill.Of(On, Place(s.First), Place(s.Second), Place(s.Third), Place(s.Fourth))],
        DxfHatch h => h.Boundaries.Take(1).Select(b => Hatched(new Fill(On, Vertices(b)), h.Pattern)),
        DxfLeader l => [Polyline.Of(On, l.Points.Select(Place)), .. l.Note is DxfMText note ? Lines(note) : []],
        DxfText t => [TextOf(t)],
        DxfMText m => Lines(m),
        DxfEllipse e => [new Polyline(On, [.. Flattened(e)], IsWhole(e))],
        DxfInsert i when depth < Deepest => Inside(i, document, depth),
        _ => [],
    };

    /// <summary>A hatch by the first family of its lines; solid without a pattern.</summary>
    private static Fill Hatched(Fill fill, DxfHatchPattern? pattern) => pattern is { Lines: [DxfPatternLine first, ..] }
        ? fill with { Spacing = Place(first.Offset).Length, Angle = first.Angle }
        : fill;

    /// <summary>What was read but has no place on a sheet's frame.</summary>
    private static IEnumerable<DxfProblem> Undrawn(IEnumerable<DxfEntity> entities, DxfDocument document, int depth) => entities.SelectMany(e => e switch
    {
        DxfDimension => [new DxfProblem(0, "DIMENSION")],
        DxfPointEntity => [new DxfProblem(0, "POINT")],
        DxfInsert i when depth < Deepest => Undrawn(document.Blocks[i.Block].Entities, document, depth + 1),
        DxfInsert => [new DxfProblem(0, "INSERT, blocks in blocks more than 8 deep")],
        _ => Array.Empty<DxfProblem>(),
    });

    /// <summary>The first block that is drawn at unlike scales, which turns circles and texts into shapes that a sheet cannot show.</summary>
    private static string? Stretched(IEnumerable<DxfEntity> entities, DxfDocument document, int depth) => entities.OfType<DxfInsert>()
        .Select(i => Math.Abs(Math.Abs(i.ScaleX) - Math.Abs(i.ScaleY)) > 1e-6 * Math.Abs(i.ScaleX)
            ? i.Block
            : depth < Deepest ? Stretched(document.Blocks[i.Block].Entities, document, depth + 1) : null)
        .FirstOrDefault(b => b is not null);

    private static bool IsWhole(DxfEllipse e) => Math.Abs(e.EndParameter - e.StartParameter) >= 360 - 1e-9;

    /// <summary>An ellipse as a chain of short lines.</summary>
    private static IEnumerable<Vertex> Flattened(DxfEllipse e)
    {
        const int Steps = 48;
        const double Degree = Math.PI / 180;
        Point2 major = Place(e.MajorAxis), minor = new Point2(-major.Y, major.X) * e.Ratio, middle = Place(e.Center);
        double sweep = IsWhole(e) ? 360 : (e.EndParameter - e.StartParameter + 360) % 360;
        for (int i = 0; i < (IsWhole(e) ? Steps : Steps + 1); i++)
        {
            double at = (e.StartParameter + sweep * i / Steps) * Degree;
            yield return new Vertex(middle + major * Math.Cos(at) + minor * Math.Sin(at), 0);
        }
    }

    private static IEnumerable<Primitive> Inside(DxfInsert insert, DxfDocument document, int depth)
    {
        DxfBlock block = document.Blocks[insert.Block];
        double turn = insert.Rotation * Math.PI / 180, scale = Math.Abs(insert.ScaleX);
        Point2 move = Place(insert.Position) - Place(block.BasePoint).Turned(turn) * scale;
        var place = new PlaneTransform(scale, turn, move);
        return block.Entities.SelectMany(e => Draw(e, document, depth + 1)).Select(place.Apply)
            .Concat(insert.Attributes.Where(a => !a.Invisible).Select(a => TextOf(a.Text)));
    }

    private static BlockAttribute FieldOf(DxfAttributeDefinition a)
    {
        Text text = TextOf(a.Text);
        return new(a.Tag.ToUpperInvariant(), a.Prompt, text.Position, text.Height, !a.Invisible, text.Role, On)
        {
            Align = text.Align,
            Rotation = text.Rotation,
            Default = text.Value,
        };
    }

    private static Text TextOf(DxfText t)
    {
        double up = t.VerticalAlign switch
        {
            DxfTextVerticalAlign.Middle => -0.5,
            DxfTextVerticalAlign.Top => -1,
            DxfTextVerticalAlign.Bottom => 0.3,
            _ => 0,
        };
        HorizontalAlign align = t.Align switch
        {
            DxfTextAlign.Left => HorizontalAlign.Left,
            DxfTextAlign.Right => HorizontalAlign.Right,
            _ => HorizontalAlign.Center,
        };
        Point2 at = Place(t.Position) + new Point2(0, up * t.Height).Turned(t.Rotation * Math.PI / 180);
        return new(On, TextRole.TitleBlock, at, t.Height, t.Value, align, t.Rotation);
    }

    private static IEnumerable<Primitive> Lines(DxfMText m)
    {
        string[] lines = m.Value.Split('\n');
        double pitch = m.Height * 5 / 3 * m.LineSpacing, total = m.Height + (lines.Length - 1) * pitch;
        int column = ((int)m.Attachment - 1) % 3, row = ((int)m.Attachment - 1) / 3;
        var align = (HorizontalAlign)column;
        double top = row * total / 2;
        for (int i = 0; i < lines.Length; i++)
        {
            Point2 down = new Point2(0, top - m.Height - i * pitch).Turned(m.Rotation * Math.PI / 180);
            yield return new Text(On, TextRole.TitleBlock, Place(m.Position) + down, m.Height, lines[i], align, m.Rotation);
        }
    }

    private static Vertex[] Vertices(IEnumerable<DxfVertex> vertices) => [.. vertices.Select(v => new Vertex(Place(v.Point), v.Bulge))];

    private static Point2 Place(DxfPoint p) => new(p.X, p.Y);
}
