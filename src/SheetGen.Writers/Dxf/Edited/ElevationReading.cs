using System.Globalization;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>Nails read from the elevations of an edited sheets.dxf.</summary>
internal sealed class ElevationReading
{
    private const string NailBlockPrefix = "NAIL-";

    private readonly DxfDocument _document;
    private readonly WallProject _project;
    private readonly NailLayout _layout;
    private readonly Dictionary<string, BlockReference> _built;
    private readonly List<NailBlock> _blocks;
    private readonly List<string> _notRead = [];
    private readonly List<string> _notes = [];
    private readonly double _tolerance;
    private readonly Polyline[] _outlines;
    private List<ElevationFrame> _frames = [];

    public ElevationReading(DxfDocument document, WallProject project, NailLayout layout, SheetSet built)
    {
        _document = document;
        _project = project;
        _layout = layout;
        _built = EditedDrawing.Blocks(built);
        _blocks = [.. document.Model.OfType<DxfInsert>().Select(NailBlock.Of).OfType<NailBlock>()];
        _tolerance = EditedDrawing.Tolerance(project);
        _frames = [.. built.Model.OfType<Polyline>().Select(p => ElevationFrame.Of(p.Data, [.. p.Vertices.Select(v => (v.Point.X, v.Point.Y))])).OfType<ElevationFrame>()];
        _outlines = [.. built.Model.OfType<Polyline>().Where(p => p.Vertices.All(v => FrameAt(Point(v.Point), null) is not null))];
    }

    public bool HasNails => _blocks.Count > 0;

    /// <summary>Nail blocks in model space.</summary>
    public int BlockCount => _blocks.Count;

    /// <summary>True where most symbols of nails are mirrored or stretched in one direction, and most known nails do not stand where they stood.</summary>
    public bool IsDistorted
    {
        get
        {
            NailBlock[] known = [.. _blocks.Where(b => b.Mark is not null && _built.ContainsKey(b.Mark))];
            return 2 * _blocks.Count(b => Math.Abs(b.Insert.ScaleX / b.Insert.ScaleY - 1) > 1e-3) > _blocks.Count
                && 2 * known.Count(b => (b.Insert.Position - Point(_built[b.Mark!].Position)).Length <= _tolerance) <= known.Length;
        }
    }

    /// <summary>Null where nothing of the drawing stands where the project has it.</summary>
    public DrawingReading? Read()
    {
        ElevationFrame[] drawn = [.. _document.Model.OfType<DxfPolyline>()
            .Select(p => ElevationFrame.Of(NailBlock.XDataOf(p), [.. p.Vertices.Select(v => (v.Point.X, v.Point.Y))])).OfType<ElevationFrame>()];
        if (Locate(drawn) is not { } place)
            return null;
        foreach (NailBlock block in _blocks)
            block.At = place.Back(block.Insert.Position);
        TellPlace(place, drawn);
        List<DxfPoint> circles = [.. _document.Model.OfType<DxfCircle>()
            .Where(c => _built.Count > 0 && Math.Abs(c.Radius / (NailSymbols.Radius * _built.Values.First().Scale * place.Scale) - 1) < 0.02).Select(c => place.Back(c.Center))];
        var standing = new PointGrid(circles, _tolerance);
        Dictionary<Nail, NailBlock> known = new NailMatching(_project, _layout, _built, _blocks, _tolerance, _notes).Match(n => standing.Has(Point(_built[n.Mark].Position)));
        var nails = new List<DrawnNail>();
        HashSet<NailBlock> used = [.. known.Values];
        foreach (Nail nail in _layout.Nails)
        {
            if (known.TryGetValue(nail, out NailBlock? block))
                nails.Add(Known(nail, block, place));
        }
        Exploded(circles, known, nails);
        foreach (NailBlock block in _blocks.Where(b => !used.Contains(b)))
        {
            if (Added(block) is { } added)
                nails.Add(added);
        }
        Elsewhere();
        return new DrawingReading(nails, _notRead, _notes);
    }

    /// <summary>Scale, turn and shift of the drawing: what its outlines, or else most of the known nails, agree on.</summary>
    private DrawingPlace? Locate(ElevationFrame[] drawn)
    {
        double[] scales = [.. drawn.Select(f => (f.Right - f.Left) / (f.Pairs[^1].Developed - f.Pairs[0].Developed)), 12, 1 / 12.0, Lengths.MetresPer(_project.Unit), 1 / Lengths.MetresPer(_project.Unit), 1000, 25.4];
        if (drawn.Length > 0 && !drawn.All(d => _frames.Exists(f => f.Wall == d.Wall && f.IsLike(d))) && drawn.All(d => _project.Walls.Any(w => w.Name == d.Wall)))
        {
            // The project has changed since: the drawing's own frames say how to read it.
            _frames = [.. drawn, .. _frames.Where(f => !drawn.Any(d => d.Wall == f.Wall))];
            ElevationFrame first = drawn[0];
            double scale = (first.Right - first.Left) / (first.Pairs[^1].Developed - first.Pairs[0].Developed);
            scale = Math.Abs(scale - 1) < 1e-6 ? 1 : scale;
            double left = Math.Min(first.Sign * first.Pairs[0].Developed, first.Sign * first.Pairs[^1].Developed) + first.OriginX;
            double shift = first.Left - left * scale;
            return new DrawingPlace(scale, 0, Math.Abs(shift) < 1e-6 ? default : new DxfPoint(shift, 0));
        }
        bool IsKnown(NailBlock b) => b.Mark is not null && _built.ContainsKey(b.Mark);
        (double Scale, double Turn)[] symbols = [.. _blocks.Where(b => !IsKnown(b)).GroupBy(b => (b.Insert.ScaleX / _built.Values.First().Scale, b.Insert.Rotation)).OrderByDescending(g => g.Count()).Take(1).Select(g => g.Key)];
        DrawingPlace? place = new PlaceSearch(_tolerance)
        {
            Pairs = [.. _blocks.Where(IsKnown).Select(b => (b.Insert.Position, Point(_built[b.Mark!].Position)))],
            Nails = ([.. _blocks.Where(b => !IsKnown(b)).Select(b => b.Insert.Position)], _blocks.Exists(IsKnown) ? [] : [.. _built.Values.Select(b => Point(b.Position))]),
            Outlines = ([.. _document.Model.OfType<DxfPolyline>().SelectMany(p => p.Vertices).Select(v => v.Point)], [.. _outlines.SelectMany(p => p.Vertices).Select(v => Point(v.Point))]),
            Scales = scales.Concat(symbols.Select(s => s.Scale)),
            Turns = symbols.Select(s => s.Turn),
            Likely = symbols.Select(s => (double?)s.Turn).FirstOrDefault(),
        }.Find();
        return place ?? (drawn.Length > 0 ? DrawingPlace.Same : null);
    }

    private void TellPlace(DrawingPlace place, ElevationFrame[] drawn)
    {
        _notes.AddRange(place.Notes());
        foreach (Wall wall in _project.Walls.Where(w => !drawn.Any(d => d.Wall == w.Name)))
            _notes.Add($"the frame of the elevation of {wall.Name} is gone, or has lost its data; that of the project as it is now was taken");
        if (drawn.Any(d => d.Hash != _project.InputHash))
            _notes.Add("the drawing was made from another state of the project file: what changed there since counts as changed here too");
        foreach (IGrouping<string, ElevationFrame> twice in drawn.GroupBy(d => d.Wall).Where(g => g.Count() > 1))
            _notRead.Add($"{twice.Key}: its elevation stands on the drawing {twice.Count()} times; nails on the copies are read as added");
        foreach (ElevationFrame other in drawn.Where(d => !_project.Walls.Any(w => w.Name == d.Wall)))
            _notRead.Add($"the elevation of \"{other.Wall}\": the project has no such wall");
    }

    /// <summary>The frame that a place stands in, or the nearest of a wall.</summary>
    private ElevationFrame? FrameAt(DxfPoint at, string? wall)
    {
        double margin = 2 * Lengths.Quantum(_project.Unit);
        return _frames.Find(f => f.Contains(at.X, at.Y, margin) && (wall is null || f.Wall == wall)) ?? _frames.Find(f => f.Contains(at.X, at.Y, margin))
            ?? (wall is null ? null : _frames.Find(f => f.Wall == wall));
    }

    private DrawnNail Known(Nail nail, NailBlock block, DrawingPlace place)
    {
        BlockReference was = _built[nail.Mark];
        var attributes = new AttributeReading(_project, nail, was, block, _notRead);
        bool stands = (block.At - Point(was.Position)).Length <= _tolerance;
        Wall wall = nail.Wall;
        double along = nail.Along;
        double? elevation = nail.Elevation;
        if (!stands && FrameAt(block.At, nail.Wall.Name) is { } frame)
        {
            wall = _project.Walls.FirstOrDefault(w => w.Name == frame.Wall) ?? wall;
            along = frame.StationAt(block.At.X) - wall.LayoutLine.StartStation;
            elevation = frame.ElevationAt(block.At.Y);
            if (!frame.Contains(block.At.X, block.At.Y, 0))
                _notRead.Add($"{nail.Mark}: its block stands beyond the elevation of {frame.Wall}; it is read there all the same");
        }
        attributes.Place(stands);
        double turn = Math.IEEERemainder(block.Insert.Rotation - was.Rotation - place.Turn, 360);
        if (Math.Abs(turn) > 0.01 && !attributes.IsTurned && NailSymbols.BlockOf(nail) == block.Insert.Block)
            _notRead.Add(FormattableString.Invariant($"{nail.Mark}: its block is turned by {turn:0.##} degrees on the drawing, which says nothing of the hole; SPLAY and INCLINATION count, and they are as they were"));
        return new DrawnNail(nail, wall, along, elevation, attributes.Splay, attributes.Inclination, attributes.Length);
    }

    private DrawnNail? Added(NailBlock block)
    {
        string called = block.Mark ?? block.Value(NailSymbols.Mark) ?? $"a block {block.Insert.Block}";
        ElevationFrame? frame = FrameAt(block.At, null);
        Wall? wall = frame is null ? null : _project.Walls.FirstOrDefault(w => w.Name == frame.Wall);
        if (frame is null || wall is null)
        {
            _notRead.Add(FormattableString.Invariant($"{called} at {block.Insert.Position.X:0.###}, {block.Insert.Position.Y:0.###} stands on no wall's elevation: not read"));
            return null;
        }
        double along = frame.StationAt(block.At.X) - wall.LayoutLine.StartStation;
        if (along < wall.Start - _tolerance || along > wall.End + _tolerance)
        {
            _notRead.Add($"{called}: added beyond the ends of {wall.Name}: not read");
            return null;
        }
        var attributes = new AttributeReading(_project, null, null, block, _notRead);
        return new DrawnNail(null, wall, along, frame.ElevationAt(block.At.Y), attributes.Splay, attributes.Inclination, attributes.Length);
    }

    /// <summary>Nails whose block is gone but whose symbol stands where it stood: the block was exploded, its attributes are lost.</summary>
    private void Exploded(List<DxfPoint> circles, Dictionary<Nail, NailBlock> known, List<DrawnNail> nails)
    {
        Nail[] missing = [.. _layout.Nails.Where(n => !known.ContainsKey(n))];
        foreach (Nail nail in missing)
        {
            int at = circles.FindIndex(c => (c - Point(_built[nail.Mark].Position)).Length <= _tolerance);
            if (at < 0)
                continue;
            circles.RemoveAt(at);
            nails.Add(new DrawnNail(nail, nail.Wall, nail.Along, nail.Elevation, null, null, null));
            _notRead.Add($"{nail.Mark}: its block is exploded; its symbol stands where it stood, so the nail is taken as it was");
        }
        foreach (DxfPoint circle in circles.Where(c => FrameAt(c, null) is not null && !_layout.Nails.Any(n => (c - Point(_built[n.Mark].Position)).Length <= _tolerance)
            && !_blocks.Exists(b => (b.At - c).Length <= _tolerance)))
        {
            ElevationFrame frame = FrameAt(circle, null)!;
            _notRead.Add(string.Create(CultureInfo.InvariantCulture,
                $"a circle like a nail's symbol at {StationText(frame, circle.X)}, elevation {frame.ElevationAt(circle.Y).ToString("F" + Lengths.Decimals(_project.Unit), CultureInfo.InvariantCulture)} on {frame.Wall}: it is no nail block, so it is not read"));
        }
    }

    private string StationText(ElevationFrame frame, double x) =>
        _project.Walls.FirstOrDefault(w => w.Name == frame.Wall)?.TextOf(frame.StationAt(x), _project.Unit) ?? new PrintedStation(frame.StationAt(x)).Text(_project.Unit);

    /// <summary>Nail blocks that stand inside of other blocks or on a sheet of paper.</summary>
    private void Elsewhere()
    {
        HashSet<string> placed = [.. _document.Model.OfType<DxfInsert>().Select(i => i.Block)];
        foreach (DxfBlock block in _document.Blocks.Where(b => placed.Contains(b.Name) && !b.Name.StartsWith(NailBlockPrefix, StringComparison.OrdinalIgnoreCase)))
            Tell(block.Entities, $"inside of the block {block.Name}: explode it");
        foreach (DxfLayout sheet in _document.Layouts)
            Tell(sheet.Entities, $"on the paper of {sheet.Name}: a nail stands in model space");
    }

    private void Tell(IEnumerable<DxfEntity> entities, string where)
    {
        string[] marks = [.. entities.OfType<DxfInsert>().Select(NailBlock.Of).OfType<NailBlock>().Select(b => b.Mark ?? b.Value(NailSymbols.Mark) ?? b.Insert.Block)];
        if (marks.Length > 0)
            _notRead.Add($"{string.Join(", ", marks.Take(8))}{(marks.Length > 8 ? FormattableString.Invariant($" and {marks.Length - 8} more") : "")} {(marks.Length == 1 ? "stands" : "stand")} {where}");
    }

    private static DxfPoint Point(Point2 p) => new(p.X, p.Y);
}
