using SheetGen.Exchange.Common;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Ifc;

/// <summary>
/// Each layout line as an alignment: its horizontal layout by segments, the same as a composite curve, and referents that are placed along
/// it (start, section limits, corners, heads of nails). Directions turn left from east, radii are positive for a turn to the left.
/// </summary>
internal sealed class IfcAlignments
{
    private readonly IfcModel _model;
    private readonly IfcShapes _shapes;
    private readonly IfcProperties _properties;
    private readonly Dictionary<string, Line> _lines = [];

    public IfcAlignments(IfcModel model, IfcShapes shapes, IfcProperties properties, IfcPlaces places)
    {
        _model = model;
        _shapes = shapes;
        _properties = properties;
        foreach (LayoutLine line in model.Input.Project.LayoutLines)
            _lines[line.Name] = Add(line, places);
        model.Aggregate("alignments", places.Project, [.. _lines.Values.Select(l => l.Alignment)]);
        if (_lines.Count > 0)
            model.Root("IFCRELREFERENCEDINSPATIALSTRUCTURE", "references|alignments", null, null, _lines.Values.Select(l => l.Alignment).ToArray(), places.Site);
        foreach (LayoutLine line in model.Input.Project.LayoutLines)
            AddStations(line);
    }

    /// <summary>The head of a nail as a place along its layout line, and the nail's dependence on it.</summary>
    public void Position(Nail nail, StepRef element)
    {
        Line line = _lines[nail.Wall.LayoutLine.Name];
        LayoutLine layout = nail.Wall.LayoutLine;
        double left = (nail.Hole.Head.Plan - layout.PointAt(nail.Along)).Dot(-layout.TangentAt(nail.Along).Right);
        StepRef referent = _model.Root("IFCREFERENT", "referent|nail|" + nail.Mark, IfcModel.Label(nail.Mark), null, "NAIL HEAD",
            LinearPlacement(line, nail.Along, left, nail.Elevation, nail.Hole.Head), null, new StepEnum("POSITION"));
        line.Referents.Add((nail.Along, referent));
        _properties.Set("nail|" + nail.Mark, "Pset_Stationing", [referent], _properties.Length("Station", NailFigures.Station(nail)), _properties.Flag("HasIncreasingStation", true));
        _model.Root("IFCRELPOSITIONS", "positions|" + nail.Mark, null, null, referent, new[] { element });
    }

    public void Close()
    {
        foreach ((string name, Line line) in _lines)
            _model.Nest("referents|" + name, line.Alignment, [.. line.Referents.OrderBy(r => r.Along).Select(r => r.Referent)]);
    }

    private Line Add(LayoutLine line, IfcPlaces places)
    {
        var curveSegments = new List<StepRef>();
        var segments = new List<StepRef>();
        StepRef placement = places.AtOrigin();
        for (int i = 0; i <= line.Pieces.Count; i++)
        {
            bool closing = i == line.Pieces.Count; // The schema's users ask for a last segment without length.
            LayoutPiece piece = closing ? Closing(line.Pieces[^1]) : line.Pieces[i];
            curveSegments.Add(CurveSegment(piece, closing ? "DISCONTINUOUS" : Transition(line, i)));
            segments.Add(Segment(line, i, piece, placement));
        }
        StepRef composite = _model.Step.Add("IFCCOMPOSITECURVE", curveSegments, false);
        StepRef shape = _model.Step.Add("IFCPRODUCTDEFINITIONSHAPE", null, null, (object)new[]
        {
            _model.Step.Add("IFCSHAPEREPRESENTATION", _shapes.Axis, "Axis", "Curve2D", new[] { composite }),
        });
        StepRef alignment = _model.Root("IFCALIGNMENT", "alignment|" + line.Name, IfcModel.Label(line.Name), null, null, placement, shape, null);
        StepRef horizontal = _model.Root("IFCALIGNMENTHORIZONTAL", "horizontal|" + line.Name, IfcModel.Label(line.Name), null, null, placement, null);
        _model.Nest("alignment|" + line.Name, alignment, [horizontal]);
        _model.Nest("horizontal|" + line.Name, horizontal, segments);
        return new Line(alignment, placement, composite, []);
    }

    private void AddStations(LayoutLine line)
    {
        IEnumerable<(double Along, string Name)> named = _model.Input.Project.Walls.Where(w => w.LayoutLine == line)
            .SelectMany(w => w.Sections.SelectMany(s => new[] { s.Start, s.End })).Concat(line.Corners.Select(c => c.Along)).Append(0)
            .Concat(line.Stationing.Equations.Select(e => e.Along)).Distinct().Order().Select(a => (a, line.StationText(a, _model.Input.Project.Unit)));
        Line of = _lines[line.Name];
        foreach ((double along, string name) in named)
        {
            StepRef referent = _model.Root("IFCREFERENT", $"referent|{line.Name}|{StepFile.Real(along)}", name, null, null,
                LinearPlacement(of, along, 0, 0, line.PointAt(along).At(0)), null, new StepEnum("STATION"));
            of.Referents.Add((along, referent));
            _properties.Set($"station|{line.Name}|{StepFile.Real(along)}", "Pset_Stationing", [referent],
                _properties.Length("Station", line.Stationing.Printed(along).Number),
                _properties.Length("IncomingStation", line.Stationing.Equations.FirstOrDefault(e => e.Along == along)?.Back.Number),
                _properties.Flag("HasIncreasingStation", true));
        }
    }

    /// <summary>Distance along, left of the line, above zero; the same as coordinates for programs that do not know alignments.</summary>
    private StepRef LinearPlacement(Line line, double along, double left, double up, Vector3D at)
    {
        StepRef point = _model.Step.Add("IFCPOINTBYDISTANCEEXPRESSION", new StepTyped("IFCLENGTHMEASURE", along), left, up, null, line.Curve);
        return _model.Step.Add("IFCLINEARPLACEMENT", line.Placement, _model.Step.Add("IFCAXIS2PLACEMENTLINEAR", point, null, null), _model.Axes(at));
    }

    private StepRef Segment(LayoutLine line, int index, LayoutPiece piece, StepRef placement)
    {
        string key = FormattableString.Invariant($"{line.Name}|{index}");
        StepRef design = _model.Step.Add("IFCALIGNMENTHORIZONTALSEGMENT", null, null, _model.Point(piece.Point), Math.PI / 2 - piece.Azimuth,
            Radius(piece.Curvature), Radius(piece.CurvatureAt(piece.End)), piece.Length, null,
            new StepEnum(piece.IsSpiral ? "CLOTHOID" : piece.Curvature == 0 ? "LINE" : "CIRCULARARC"));
        return _model.Root("IFCALIGNMENTSEGMENT", "segment|" + key, null, null, null, placement, null, design);
    }

    private StepRef CurveSegment(LayoutPiece piece, string transition)
    {
        StepRef axes = _model.Step.Value("IFCAXIS2PLACEMENT2D", _model.Point(piece.Point), _model.Direction(Vector2D.FromAzimuth(piece.Azimuth)));
        if (piece.IsSpiral)
        {
            // The schema's clothoid has the curvature s * A / |A|^3 (to the left) at s; the segment is the stretch of it that has the piece's.
            double sharpness = -piece.Sharpness, constant = Math.Sign(sharpness) / Math.Sqrt(Math.Abs(sharpness));
            StepRef clothoid = _model.Step.Add("IFCCLOTHOID", Origin(), constant);
            return _model.Step.Add("IFCCURVESEGMENT", new StepEnum(transition), axes,
                new StepTyped("IFCLENGTHMEASURE", -piece.Curvature / sharpness), new StepTyped("IFCLENGTHMEASURE", piece.Length), clothoid);
        }
        double length = piece.Curvature > 0 ? -piece.Length : piece.Length;
        StepRef parent = piece.Curvature == 0
            ? _model.Step.Value("IFCLINE", _model.Point(default(Vector2D)), _model.Step.Value("IFCVECTOR", _model.Direction(new Vector2D(0, 1)), 1.0))
            : _model.Step.Value("IFCCIRCLE", Origin(), 1 / Math.Abs(piece.Curvature));
        return _model.Step.Add("IFCCURVESEGMENT", new StepEnum(transition), axes,
            new StepTyped("IFCLENGTHMEASURE", 0.0), new StepTyped("IFCLENGTHMEASURE", length), parent);
    }

    private StepRef Origin() => _model.Step.Value("IFCAXIS2PLACEMENT2D", _model.Point(default(Vector2D)), _model.Direction(new Vector2D(0, 1)));

    /// <summary>Radius as the schema has it: positive for a turn to the left, 0 for straight.</summary>
    private static double Radius(double curvature) => Math.Abs(curvature) < 1e-12 ? 0 : -1 / curvature;

    /// <summary>How a piece meets the next: bent at a corner, else with one tangent.</summary>
    private static string Transition(LayoutLine line, int index)
    {
        double end = line.Pieces[index].End;
        if (line.Corners.Any(c => Math.Abs(c.Along - end) < 1e-9))
            return "CONTINUOUS";
        bool same = index + 1 >= line.Pieces.Count || Math.Abs(line.Pieces[index].CurvatureAt(end) - line.Pieces[index + 1].Curvature) < 1e-12;
        return same ? "CONTSAMEGRADIENTSAMECURVATURE" : "CONTSAMEGRADIENT";
    }

    private static LayoutPiece Closing(LayoutPiece last) => new(last.End, 0, last.PointAt(last.End), last.AzimuthAt(last.End), 0);

    private sealed record Line(StepRef Alignment, StepRef Placement, StepRef Curve, List<(double Along, StepRef Referent)> Referents);
}
