using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Dxf;
using SheetGen.Model.Problems;

namespace SheetGen.Writers.Dxf;

/// <summary>
/// Reads a title block that the user drew: model space where it holds attribute definitions or there is no block with any,
/// else the block with the most of them, about its base point and turned as it is inserted; the first layout with anything on it where that is all there is.
/// </summary>
public static class TitleBlockFile
{
    private const LayerRole On = LayerRole.TitleBlock;

    /// <summary>Widest drawing and largest distance from the origin on paper, mm: sheets are some 1,200 wide.</summary>
    private const double Widest = 5_000, Farthest = 1_000_000;

    /// <summary>Text heights on paper outside of which something is wrong, mm.</summary>
    private const double LeastText = 0.5, GreatestText = 100;

    private const int MostWarnings = 20;

    /// <summary>The title block in millimetres of paper; null, with a problem, where the file cannot be read or draws nothing.</summary>
    /// <param name="name">The file as the problems name it.</param>
    public static TitleBlock? Read(byte[] file, string name, List<Problem> problems)
    {
        TitleBlock? Refuse(string message, string hint, int line = 1)
        {
            problems.Add(new Problem(Severity.Error, "T02", message, new SourceSpot(name, Math.Max(1, line), 1), hint));
            return null;
        }
        DxfReadResult read = DxfReader.Read(file);
        if (!read.Succeeded)
            return Refuse("not a title block drawing: " + read.Error.Message, "save the title block as an ASCII DXF file", read.Error.Line);
        DxfDocument document = read.Document;
        DxfBlock? block = document.Model.OfType<DxfAttributeDefinition>().Any()
            ? null
            : document.Blocks.Where(b => b.AttributeDefinitions.Any()).MaxBy(b => b.AttributeDefinitions.Count());
        DxfLayout? paper = block is null && document.Model.Count == 0 ? document.Layouts.FirstOrDefault(l => l.Entities.Count > 0) : null;
        IEnumerable<DxfEntity> entities = block?.Entities ?? paper?.Entities ?? document.Model;
        DxfPoint from = block?.BasePoint ?? default;
        if (new TitleBlockLimits(document).Fault(entities) is { } tooMuch)
            return Refuse("the title block drawing is too much: " + tooMuch, "explode the blocks, and leave out what the sheets do not need");
        if (Stretched(entities, document, []) is { } stretched)
            return Refuse($"the title block drawing holds the block \"{stretched}\" at unlike scales along x and y", "explode that block reference in the drawing");
        Primitive[] lines = [.. entities.SelectMany(e => Draw(e, document))];
        BlockAttribute[] fields = [.. entities.OfType<DxfAttributeDefinition>().Select(FieldOf).DistinctBy(f => f.Tag)];
        if (lines.Length + fields.Length == 0)
        {
            string[] kinds = [.. Warnings(read).Select(w => w.Message), .. entities.Select(NotDrawn).OfType<string>()];
            return Refuse("the title block drawing " + (kinds.Length == 0 ? "is empty" : "holds only what a sheet cannot show: " + string.Join("; ", kinds.Distinct().Take(MostWarnings))),
                "draw it in model space or as a block with attributes, of lines, polylines, arcs, circles, ellipses, texts, hatches and solids");
        }
        Box box = Box.Around(lines.SelectMany(Extents.Points).Concat(fields.Select(f => f.Position)));
        double scale = paper is null ? MillimetresPerUnit(document.Header.Units, box.Width) : paper.Unit == DxfPaperUnit.Inch ? 25.4 : 1;
        (double turned, double times) = Inserted(document, block, Math.Max(box.Width, box.Height) * scale);
        scale *= times;
        var toPaper = new PlaneTransform(scale, turned * Math.PI / 180, new Point2(from.X, from.Y).Turned(turned * Math.PI / 180) * -scale);
        var drawn = new TitleBlock([.. lines.Select(toPaper.Apply).Select(Printable)],
            [.. fields.Select(f => f with { Position = toPaper.Apply(f.Position), Height = f.Height * scale, Rotation = f.Rotation + turned })]);
        if (OutOfReason(drawn) is { } odd)
            return Refuse(odd, "draw it at paper size near the origin, and check the drawing's unit ($INSUNITS)");
        Warn(read, entities, drawn, name, problems);
        return drawn;
    }

    /// <summary>Smaller than this, mm of paper, no border is: then the scale at which a block is inserted counts.</summary>
    private const double SmallestBorder = 150;

    /// <summary>How the one insert of a block turns it, in degrees, and enlarges it where it is drawn too small for a sheet; else not at all.</summary>
    private static (double Degrees, double Times) Inserted(DxfDocument document, DxfBlock? block, double size)
    {
        DxfInsert[] inserts = block is null ? [] : [.. document.Model.Concat(document.Layouts.SelectMany(l => l.Entities)).OfType<DxfInsert>().Where(i => string.Equals(i.Block, block.Name, StringComparison.OrdinalIgnoreCase))];
        return inserts is [DxfInsert one] ? (one.Rotation, size < SmallestBorder ? Math.Abs(one.ScaleX) : 1) : (0, 1);
    }

    /// <summary>What the reader said of the drawing: a table that it made good changes nothing that a sheet shows.</summary>
    private static IEnumerable<DxfProblem> Warnings(DxfReadResult read) =>
        read.Warnings.Where(w => w.Kind is not (DxfProblemKind.Definition or DxfProblemKind.DimensionStyle));

    /// <summary>Sizes and places that no sheet has; null where all can be.</summary>
    private static string? OutOfReason(TitleBlock block)
    {
        Box box = Box.Around(block.Lines.SelectMany(Extents.Points).Concat(block.Fields.Select(f => f.Position)));
        double far = new[] { box.Left, box.Right, box.Bottom, box.Top }.Max(Math.Abs);
        if (!(far <= Farthest))
            return FormattableString.Invariant($"the title block lies {far / 1000:0.###e+0} m from the origin on paper");
        if (box.Width > Widest || box.Height > Widest)
            return FormattableString.Invariant($"the title block is {box.Width:0} by {box.Height:0} mm on paper");
        double tallest = block.Lines.OfType<Text>().Select(t => t.Height).Concat(block.Fields.Select(f => f.Height)).DefaultIfEmpty(0).Max();
        return tallest <= Widest ? null : FormattableString.Invariant($"a text of the title block is {tallest:0} mm high on paper");
    }

    /// <summary>Says what the reader left out or changed, what a title block does not show, and texts of a size that no one can have meant.</summary>
    private static void Warn(DxfReadResult read, IEnumerable<DxfEntity> entities, TitleBlock block, string name, List<Problem> problems)
    {
        var said = new List<(int Line, string Message)>(Warnings(read).Select(w => (w.Line, w.Message + (w.Count > 1 ? $" ({w.Count} times)" : ""))));
        IEnumerable<DxfEntity> all = entities.Concat(read.Document!.Blocks.SelectMany(b => b.Entities)).Distinct();
        said.AddRange(all.Select(NotDrawn).OfType<string>().CountBy(k => k).OrderBy(k => k.Key, StringComparer.Ordinal)
            .Select(k => (1, $"{k.Value} x {k.Key}: a title block does not show it")));
        said.AddRange(block.Lines.OfType<Text>().Select(t => (t.Height, t.Value))
            .Concat(block.Fields.Select(f => (f.Height, Value: f.Tag)))
            .Where(t => t.Height is < LeastText or > GreatestText)
            .Select(t => (1, FormattableString.Invariant($"the text \"{Short(t.Value)}\" is {t.Height:0.###} mm high on paper"))));
        said.AddRange(entities.OfType<DxfAttributeDefinition>().CountBy(a => a.Tag.ToUpperInvariant()).Where(t => t.Value > 1)
            .Select(t => (1, $"the tag {Short(t.Key)} stands {t.Value} times: only the first is filled")));
        foreach ((int line, string message) in said.Take(MostWarnings))
            problems.Add(new Problem(Severity.Warning, "T03", "title block: " + message, new SourceSpot(name, Math.Max(1, line), 1), "the sheets are drawn without it"));
        if (said.Count > MostWarnings)
            problems.Add(new Problem(Severity.Warning, "T03", $"title block: {said.Count - MostWarnings} more of these", new SourceSpot(name, 1, 1)));
    }

    private static string? NotDrawn(DxfEntity entity) => entity switch
    {
        DxfDimension => "dimension",
        DxfPointEntity => "point",
        DxfHatch { Boundaries.Count: > 1 } => "hole in a fill",
        _ => null,
    };

    private static string Short(string text) => text.Length <= 30 ? text : text[..30] + "...";

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

    private static IEnumerable<Primitive> Draw(DxfEntity entity, DxfDocument document) => entity switch
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
        DxfInsert i => Inside(i, document),
        _ => [],
    };

    /// <summary>A hatch by the first family of its lines; solid without a pattern.</summary>
    private static Fill Hatched(Fill fill, DxfHatchPattern? pattern) => pattern is { Lines: [DxfPatternLine first, ..] }
        ? fill with { Spacing = Place(first.Offset).Length, Angle = first.Angle }
        : fill;

    /// <summary>A hatch on paper: lines closer together than can be printed are a solid fill.</summary>
    private static Primitive Printable(Primitive primitive) => primitive is Fill { Spacing: > 0 and < ClosestLines } fill ? fill with { Spacing = 0 } : primitive;

    private const double ClosestLines = 0.3;

    /// <summary>The first block that is drawn at unlike scales, which turns circles and texts into shapes that a sheet cannot show.</summary>
    private static string? Stretched(IEnumerable<DxfEntity> entities, DxfDocument document, HashSet<string> seen) => entities.OfType<DxfInsert>()
        .Select(i => Math.Abs(Math.Abs(i.ScaleX) - Math.Abs(i.ScaleY)) > 1e-6 * Math.Abs(i.ScaleX)
            ? i.Block
            : seen.Add(i.Block) ? Stretched(document.Blocks[i.Block].Entities, document, seen) : null)
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

    private static IEnumerable<Primitive> Inside(DxfInsert insert, DxfDocument document)
    {
        DxfBlock block = document.Blocks[insert.Block];
        double turn = insert.Rotation * Math.PI / 180, scale = Math.Abs(insert.ScaleX);
        Point2 move = Place(insert.Position) - Place(block.BasePoint).Turned(turn) * scale;
        var place = new PlaneTransform(scale, turn, move);
        return block.Entities.SelectMany(e => Draw(e, document)).Select(place.Apply)
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
