using SheetGen.Model.Geometry;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>The horizontal geometry of a LandXML alignment as pieces placed by their own coordinates.</summary>
internal sealed class AlignmentTrace(LandXmlFile file, FileUnit unit, ProblemList problems)
{
    private readonly List<TracePiece> _pieces = [];

    /// <summary>Greatest distance between a spiral that is no clothoid and what stands for it, in the file's unit; 0 where there is none.</summary>
    public double SpiralError { get; private set; }

    /// <summary>The pieces in order; null where a piece cannot be used, which is reported.</summary>
    public IReadOnlyList<TracePiece>? Read(XmlPart alignment)
    {
        if (alignment.First("CoordGeom") is not { Parts.Count: > 0 } geometry)
        {
            Report(ProblemCodes.CannotUse, alignment, "the alignment has no geometry (CoordGeom)");
            return null;
        }
        bool good = true;
        foreach (XmlPart part in geometry.Parts)
        {
            good &= part.Name switch
            {
                "Line" => Line(part),
                "Curve" => Curve(part),
                "Spiral" => Spiral(part),
                "IrregularLine" => Irregular(part),
                "Chain" => Chain(part),
                "Feature" => true,
                _ => Report(ProblemCodes.CannotUse, part, $"a piece \"{Tree.Shown.Short(part.Name)}\" is not read: Line, Curve, Spiral, IrregularLine and Chain are"),
            };
        }
        if (good && _pieces.Count == 0)
        {
            Report(ProblemCodes.CannotUse, geometry, "the alignment has no piece with a length");
            good = false;
        }
        return good && Joined() ? _pieces : null;
    }

    private double Tolerance => 0.01 * FileUnit.Foot.Metres / unit.Metres;

    private bool Line(XmlPart part)
    {
        if (Ends(part) is not { } ends)
            return false;
        AddStraight(ends.Start, ends.End, part);
        return true;
    }

    private void AddStraight(Vector2D start, Vector2D end, XmlPart part)
    {
        Vector2D along = end - start;
        if (along.Length > 1e-6)
            _pieces.Add(new TracePiece(start, end, Math.Atan2(along.E, along.N), along.Length, 0, 0, part));
    }

    private bool Irregular(XmlPart part)
    {
        XmlPart? list = part.First("PntList2D") ?? part.First("PntList3D");
        int size = list?.Name == "PntList3D" ? 3 : 2;
        if (list?.Numbers() is not { } numbers || numbers.Length % size != 0 || numbers.Length < 2 * size)
            return Report(ProblemCodes.CannotUse, part, "the irregular line has no list of points");
        for (int i = size; i < numbers.Length; i += size)
            AddStraight(new Vector2D(numbers[i - size], numbers[i - size + 1]), new Vector2D(numbers[i], numbers[i + 1]), part);
        return true;
    }

    private bool Chain(XmlPart part)
    {
        Vector2D?[] points = [.. part.Words().Select(w => file.Point(part with { Text = "", Attributes = new Dictionary<string, string> { ["pntRef"] = w } }) is { } p ? new Vector2D(p[0], p[1]) : (Vector2D?)null)];
        if (points.Length < 2 || points.Contains(null))
            return Report(ProblemCodes.CannotUse, part, "the chain names points that the file does not have");
        for (int i = 1; i < points.Length; i++)
            AddStraight(points[i - 1]!.Value, points[i]!.Value, part);
        return true;
    }

    private bool Curve(XmlPart part)
    {
        if (Ends(part) is not { } ends)
            return false;
        if (Turn(part) is not { } turn)
            return false;
        Vector2D start = ends.Start, end = ends.End;
        if (Point(part.First("Center")) is not { } center)
        {
            if (part.Number("radius") is not { } given || (end - start).Length is var chord && (chord < 1e-9 || chord > 2 * given))
                return Report(ProblemCodes.CannotUse, part, "the curve has neither centre nor a radius that reaches from its start to its end");
            double rise = Math.Sqrt(given * given - chord * chord / 4) * (part.Number("length") > Math.PI * given ? -1 : 1);
            center = (start + end) * 0.5 + (end - start).Right * (turn * rise / chord);
        }
        double radius = (start - center).Length, other = (end - center).Length;
        if (radius < 1e-6)
            return Report(ProblemCodes.CannotUse, part, "the curve has no radius");
        if (Math.Abs(radius - other) > Tolerance || (part.Number("radius") is { } told && Math.Abs(told - radius) > Tolerance))
            Report(ProblemCodes.Inexact, part, FormattableString.Invariant($"the curve's radius is {part.Number("radius") ?? radius:0.####}, but its centre lies {radius:0.####} from its start and {other:0.####} from its end: the centre is taken"));
        double turned = turn * ((end - center).Azimuth - (start - center).Azimuth);
        double angle = turned - 2 * Math.PI * Math.Floor(turned / (2 * Math.PI));
        Vector2D inward = (center - start) * (1 / radius);
        Vector2D tangent = inward.Right * -turn;
        if (angle * radius > 1e-6)
            _pieces.Add(new TracePiece(start, end, Math.Atan2(tangent.E, tangent.N), angle * radius, turn / radius, turn / radius, part));
        return true;
    }

    private bool Spiral(XmlPart part)
    {
        if (Ends(part) is not { } ends || Turn(part) is not { } turn)
            return false;
        string type = part.Attribute("spiType") ?? "clothoid";
        if (SpiralLaws.Of(type) is not { } law)
            return Report(ProblemCodes.CannotUse, part, $"a spiral of type \"{Tree.Shown.Short(type)}\" is not read: clothoid, bloss, cosine, sinusoid and biquadratic are");
        if (part.Number("length") is not { } length || length <= 0)
            return Report(ProblemCodes.CannotUse, part, "the spiral has no length");
        double from = Curvature(part, "radiusStart") * turn, to = Curvature(part, "radiusEnd") * turn;
        int count = type == "clothoid" ? 1 : SpiralLaws.Parts;
        double[] curvatures = SpiralLaws.Curvatures(law, from, to, count);
        Vector2D[] shape = [.. SpiralLaws.Ends(0, curvatures, length)];
        // Start and end fix the direction better than the point of intersection between them, whose legs are short.
        Vector2D chord = ends.End - ends.Start;
        double azimuth = Math.Atan2(chord.E, chord.N) - Math.Atan2(shape[^1].E, shape[^1].N), off = Math.Abs(chord.Length - shape[^1].Length);
        if (off > Tolerance)
        {
            string message = FormattableString.Invariant($"the spiral's radii and length reach {shape[^1].Length:0.####} from its start, its end lies {chord.Length:0.####} from there");
            if (type != "clothoid" || off > 10 * Tolerance)
                return Report(ProblemCodes.CannotUse, part, message);
            Report(ProblemCodes.Inexact, part, message + ": its radii and length are taken");
        }
        if (type != "clothoid")
            SpiralError = Math.Max(SpiralError, SpiralLaws.Error(law, from, to, length));
        Vector2D[] points = [ends.Start, .. SpiralLaws.Ends(azimuth, curvatures, length).Select(p => ends.Start + p)];
        points[^1] = ends.End;
        double at = azimuth;
        for (int i = 0; i < count; i++)
        {
            var piece = new TracePiece(points[i], points[i + 1], at, length / count, curvatures[i], curvatures[i + 1], part);
            _pieces.Add(piece);
            at = piece.EndAzimuth;
        }
        return true;
    }

    /// <summary>True where every piece starts where the one before ends.</summary>
    private bool Joined()
    {
        bool good = true;
        for (int i = 1; i < _pieces.Count; i++)
        {
            double gap = (_pieces[i].Start - _pieces[i - 1].End).Length;
            if (gap > Tolerance)
                good = Report(ProblemCodes.CannotUse, _pieces[i].Part, FormattableString.Invariant($"this piece starts {gap:0.####} from where the one before ends"));
        }
        return good;
    }

    private (Vector2D Start, Vector2D End)? Ends(XmlPart part)
    {
        if (Point(part.First("Start")) is { } start && Point(part.First("End")) is { } end)
            return (start, end);
        Report(ProblemCodes.CannotUse, part, $"the {part.Name.ToLowerInvariant()} lacks a start or end point that can be read");
        return null;
    }

    private Vector2D? Point(XmlPart? part) => file.Point(part) is { } numbers ? new Vector2D(numbers[0], numbers[1]) : null;

    private double? Turn(XmlPart part)
    {
        if (part.Attribute("rot") is "cw" or "ccw")
            return part.Attribute("rot") == "cw" ? 1 : -1;
        Report(ProblemCodes.CannotUse, part, $"the {part.Name.ToLowerInvariant()} does not tell to which side it turns (rot)");
        return null;
    }

    private static double Curvature(XmlPart part, string name) => part.Number(name) is { } radius && radius > 0 ? 1 / radius : 0;

    private bool Report(ProblemCode code, XmlPart part, string message)
    {
        problems.Add(code, file.File.At(part.Line, part.Column), message, code == ProblemCodes.Inexact ? "" : "mend it in the program that wrote it, or type the layout line", file.File.Spot);
        return false;
    }
}
