using SheetGen.Dxf;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>Something of a drawing that gives no figure, and why.</summary>
internal sealed record Ignored(Source Source, string Why, InsertPart? Insert);

/// <summary>All figures of a drawing's model space, inserts taken apart, in the drawing's own coordinates.</summary>
internal sealed class Drawing
{
    /// <summary>Most entities that nested and arrayed inserts may come to: counted before any is made.</summary>
    public const long MostEntities = 400_000;

    private const int MostDepth = 24;
    private const double MostCoordinate = 1e12;
    private readonly DxfContent _content;
    private readonly double _error;
    private readonly List<Figure> _figures = [];
    private readonly List<Ignored> _ignored = [];
    private int _inserts;

    private Drawing(DxfContent content, double error) => (_content, _error) = (content, error);

    public IReadOnlyList<Figure> Figures => _figures;

    public IReadOnlyList<Ignored> Ignored => _ignored;

    public DxfContent Content => _content;

    /// <summary>Entities of paper space, which are not looked at.</summary>
    public int InPaperSpace { get; private set; }

    /// <summary>Takes a drawing apart.</summary>
    /// <param name="error">Greatest distance between curves and what stands for them, in the drawing's unit.</param>
    /// <returns>The drawing, or why its inserts come to too much.</returns>
    public static (Drawing? Drawing, string? Why) Of(DxfContent content, double error)
    {
        long count = Count(content, content.Entities, [], [], 0);
        if (count > MostEntities)
            return (null, FormattableString.Invariant($"its nested inserts come to {(count >= long.MaxValue / 4 ? "a number without end" : count.ToString("N0", System.Globalization.CultureInfo.InvariantCulture))} entities; the limit is {MostEntities:N0}"));
        var drawing = new Drawing(content, error);
        drawing.Walk(content.Entities, Placing.None, null, null, 0);
        return (drawing, null);
    }

    /// <summary>How many entities a list comes to with all its inserts; each block is counted once, and a block that holds itself counts without end.</summary>
    private static long Count(DxfContent content, IReadOnlyList<DxfRecord> records, Dictionary<string, long> known, HashSet<string> open, int depth)
    {
        const long End = long.MaxValue / 4;
        long sum = 0;
        foreach (DxfRecord record in records)
        {
            long one = 1;
            if (record.Kind == "INSERT" && content.Blocks.TryGetValue(record.Text(2).Trim(), out DxfBlockContent? block))
            {
                if (!known.TryGetValue(block.Name, out long inside))
                {
                    if (depth > MostDepth || !open.Add(block.Name))
                        return End;
                    inside = Count(content, block.Records, known, open, depth + 1);
                    open.Remove(block.Name);
                    known[block.Name] = inside;
                }
                long copies = Math.Max(1L, record.Whole(70, 1)) * Math.Max(1L, record.Whole(71, 1));
                one = inside >= End || copies > End / Math.Max(1, inside) ? End : 1 + inside * copies;
            }
            sum = Math.Min(End, sum + one);
        }
        return sum;
    }

    private void Walk(IReadOnlyList<DxfRecord> records, Placing placing, string? outerLayer, InsertPart? insert, int depth)
    {
        for (int i = 0; i < records.Count; i++)
        {
            DxfRecord record = records[i];
            int end = i + 1;
            if (record.Kind is "POLYLINE" || (record.Kind == "INSERT" && record.Whole(66) == 1))
            {
                while (end < records.Count && records[end].Kind is "VERTEX" or "ATTRIB")
                    end++;
            }
            DxfRecord[] following = [.. records.Skip(i + 1).Take(end - i - 1)];
            i = end - 1;
            if (record.Kind is "SEQEND" or "VERTEX" or "ATTRIB" or "ATTDEF")
                continue;
            if (record.InPaperSpace)
            {
                InPaperSpace++;
                continue;
            }
            string layer = record.Layer == "0" && outerLayer is not null ? outerLayer : record.Layer;
            var source = new Source(Called(record.Kind), record.Handle, layer, record.Line);
            if (record.IsInvisible)
                _ignored.Add(new Ignored(source, "it is invisible", insert));
            else if (FaultOfNumbers(following.Prepend(record)) is { } fault)
                _ignored.Add(new Ignored(source, fault, insert));
            else if (record.Kind == "INSERT")
                Insert(record, following, placing, source, insert, depth);
            else
                Entity(record, following, placing, source, insert);
        }
    }

    private const string Beyond = "its coordinates are not those of a drawing";

    /// <summary>What is wrong with points, sizes, angles and bulges, before anything is computed with them; null for nothing.</summary>
    private static string? FaultOfNumbers(IEnumerable<DxfRecord> records)
    {
        foreach (DxfGroup group in records.SelectMany(r => r.Groups).Where(g => g.Code is >= 10 and <= 59))
        {
            if (DxfRecord.Number(group.Value) is not { } number)
                return FormattableString.Invariant($"the value in line {group.Line} is not a number");
            if (Math.Abs(number) > MostCoordinate)
                return Beyond;
        }
        return null;
    }

    private void Entity(DxfRecord record, DxfRecord[] following, Placing placing, Source source, InsertPart? insert)
    {
        (IReadOnlyList<Figure> figures, string? why) = EntityFigures.Of(record, following, source, _error / Math.Max(1e-12, placing.Stretch));
        if (why is not null)
            _ignored.Add(new Ignored(source, why, insert));
        foreach (Figure figure in figures.Select(f => Through(f, placing)))
        {
            if (figure.Points.Any(p => !(Math.Abs(p.X) <= MostCoordinate && Math.Abs(p.Y) <= MostCoordinate && Math.Abs(p.Z) <= MostCoordinate)))
                _ignored.Add(new Ignored(source, Beyond, insert));
            else
                _figures.Add(figure with { Insert = insert });
        }
    }

    private static Figure Through(Figure figure, Placing placing)
    {
        if (placing == Placing.None)
            return figure;
        bool round = figure.Kind != FigureKind.Circle || placing.IsUniform;
        return figure with
        {
            Kind = round ? figure.Kind : FigureKind.Closed,
            Strokes = [.. figure.Strokes.Select(s => s.Through(placing))],
            Center = placing.Point(figure.Center),
            Radius = figure.Radius * placing.X.PlanLength,
            Corners = [.. figure.Corners.Select(placing.Point)],
            Thickness = figure.Thickness * placing.Z.Z,
        };
    }

    private void Insert(DxfRecord record, DxfRecord[] attributes, Placing placing, Source source, InsertPart? outer, int depth)
    {
        string name = record.Text(2).Trim();
        if (!_content.Blocks.TryGetValue(name, out DxfBlockContent? block))
        {
            _ignored.Add(new Ignored(source, $"there is no block \"{Tree.Shown.Short(name)}\" in the file", outer));
            return;
        }
        if (block.IsExternal && block.Records.Count == 0)
        {
            _ignored.Add(new Ignored(source, $"block \"{Tree.Shown.Short(name)}\" is an external reference: its content is not in the file; bind it", outer));
            return;
        }
        double sx = record.Real(41, 1), sy = record.Real(42, 1), sz = record.Real(43, 1), angle = record.Real(50) * Math.PI / 180;
        if (sx == 0 || sy == 0)
        {
            _ignored.Add(new Ignored(source, "its scale is 0", outer));
            return;
        }
        Placing own = Placing.Of(new Point3(record.Real(210), record.Real(220), record.Real(230, 1)));
        var turned = new Placing(new(Math.Cos(angle), Math.Sin(angle), 0), new(-Math.Sin(angle), Math.Cos(angle), 0), new(0, 0, 1), new(record.Real(10), record.Real(20), record.Real(30)));
        var scaled = new Placing(new(sx, 0, 0), new(0, sy, 0), new(0, 0, sz == 0 ? 1 : sz), default);
        var based = Placing.None with { Origin = new Point3(-block.Base[0], -block.Base[1], -block.Base[2]) };
        int columns = Math.Max(1, record.Whole(70, 1)), rows = Math.Max(1, record.Whole(71, 1));
        Dictionary<string, string> values = new(StringComparer.OrdinalIgnoreCase);
        foreach (DxfRecord attribute in attributes.Where(a => a.Kind == "ATTRIB"))
            values.TryAdd(attribute.Text(2).Trim(), attribute.Text(1).Trim());
        if (outer is not null)
        {
            foreach ((string tag, string value) in outer.Attributes)
                values.TryAdd(tag, value);
        }
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                var moved = Placing.None with { Origin = new Point3(column * record.Real(44), row * record.Real(45), 0) };
                Placing inner = placing.After(own).After(turned).After(moved).After(scaled).After(based);
                var part = new InsertPart(_inserts++, name, source, values, [.. outer?.Layers ?? [], source.Layer], [.. outer?.Blocks ?? [], name]);
                Walk(block.Records, inner, source.Layer, part, depth + 1);
            }
        }
    }

    private static string Called(string kind) => kind switch
    {
        "LWPOLYLINE" or "POLYLINE" => "polyline",
        "3DFACE" => "3D face",
        _ => kind.ToLowerInvariant(),
    };
}
