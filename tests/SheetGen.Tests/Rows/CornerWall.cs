using System.Globalization;
using SheetGen.Tests.Walls;

namespace SheetGen.Tests.Rows;

/// <summary>
/// A random wall with up to three legs, tangents and arcs, corners of both kinds, face offset and batter; and its geometry worked out here,
/// from the contract's words alone, with nothing of the program. Feet.
/// </summary>
internal sealed class CornerWall
{
    private readonly List<(double Length, double Curvature, double Corner)> _elements = [];
    private readonly double _offset;
    private readonly double _slope;
    private readonly double _batterElevation;

    public CornerWall(ulong seed)
    {
        var random = new WallRandom(seed);
        Side = random.Of(1, -1);
        int legs = random.Of(1, 2, 2, 2, 3);
        for (int i = 0; i < legs; i++)
        {
            double length = Math.Round(random.Between(14, 36) * 4) / 4, curvature = random.Chance(0.4) ? random.Of(1, -1) / (double)random.Of(40, 60, 90, 150) : 0;
            double corner = i + 1 < legs ? random.Of(1, -1) * random.Of(15, 30, 45, 60, 75, 90) * Math.PI / 180 : 0;
            _elements.Add((length, curvature, corner));
        }
        _offset = random.Of(0, 0.5, 1, 1.5, 2, -1, -1.5);
        _batterElevation = random.Of(100, 103);
        double batter = random.Of(0, 0, 4, 7, 9);
        _slope = Math.Tan(batter * Math.PI / 180);
        Length = _elements.Sum(e => e.Length);
        Spacing = random.Of(3, 3.5, 4, 5, 6);
        VerticalSpacing = random.Of(3.5, 4, 5);
        Staggered = random.Chance(0.4);
        Rows = random.Of("level", "level", "parallel", "top_parallel");
        bool flat = random.Chance(0.4);
        double start = random.Of(108, 110, 113.5), end = flat ? start : start + random.Of(-2.5, 1.5, 3);
        Top = [(0, start), (Length, end)];
        double step = Math.Round(Length * random.Between(0.3, 0.7));
        Bottom = flat ? [(0, 100)] : [(0, 100), (step, random.Of(98.5, 99, 101))];
        double limit = random.Chance(0.5) ? Math.Round(Length * random.Between(0.2, 0.8) * 4) / 4 : Length;
        Limits = limit < Length ? [0, limit, Length] : [0, Length];
        Yaml = Print(batter, random.Of("continuous", "shifted"));
    }

    public int Side { get; }

    public double Length { get; }

    public double Spacing { get; }

    public double VerticalSpacing { get; }

    public bool Staggered { get; }

    public string Rows { get; }

    public (double Along, double Elevation)[] Top { get; }

    public (double Along, double Elevation)[] Bottom { get; }

    /// <summary>Places where sections start and end.</summary>
    public double[] Limits { get; }

    public string Yaml { get; }

    /// <summary>Places of the corners and their deflections, positive to the right.</summary>
    public IEnumerable<(double Along, double Deflection)> Corners
    {
        get
        {
            double at = 0;
            foreach ((double length, _, double corner) in _elements)
            {
                at += length;
                if (corner != 0)
                    yield return (at, corner);
            }
        }
    }

    public double OffsetAt(double z) => _offset + (z - _batterElevation) * _slope;

    public double TopAt(double s) => Top[0].Elevation + (Top[1].Elevation - Top[0].Elevation) * s / Length;

    public double BottomAt(double s) => Bottom.Last(p => p.Along <= s + 1e-12).Elevation;

    /// <summary>Plan point of the face, by small steps along the layout line: (north, east). The leg is the one that the place belongs to, or the one given.</summary>
    public (double N, double E) Point(double s, double z, int leg)
    {
        double n = 0, e = 0, heading = 0;
        for (int i = 0; i < leg; i++)
            (n, e, heading) = Step(n, e, heading, _elements[i].Length, _elements[i].Curvature, _elements[i].Corner);
        double start = _elements.Take(leg).Sum(x => x.Length);
        (n, e, heading) = Step(n, e, heading, s - start, _elements[leg].Curvature, 0);
        double o = OffsetAt(z) * Side;
        return (n - Math.Sin(heading) * o, e + Math.Cos(heading) * o);
    }

    public int LegOf(double s) => Math.Min(Corners.Count(c => c.Along <= s), _elements.Count - 1);

    /// <summary>Length along the face between two places of a leg, from a fine polyline.</summary>
    public double FaceLength(double from, double to, double z, int leg)
    {
        const int pieces = 200;
        double sum = 0;
        (double n, double e) = Point(from, z, leg);
        for (int i = 1; i <= pieces; i++)
        {
            (double n2, double e2) = Point(from + (to - from) * i / pieces, z, leg);
            sum += Math.Sqrt((n2 - n) * (n2 - n) + (e2 - e) * (e2 - e));
            (n, e) = (n2, e2);
        }
        return to < from ? -sum : sum;
    }

    /// <summary>True where a point of a leg's face lies beyond the vertical plane that halves the angle of a corner at the leg's end.</summary>
    public bool IsBeyondMitre(double s, double z, int leg, double by)
    {
        (double n, double e) = Point(s, z, leg);
        foreach (int corner in (int[])[leg - 1, leg])
        {
            if (corner < 0 || corner >= Corners.Count())
                continue;
            double at = Corners.ElementAt(corner).Along;
            // Tangents on both sides, by differences.
            (double N, double E) a = OnLine(at - 1e-5, corner), c = OnLine(at, corner), b = OnLine(at + 1e-5, corner + 1);
            double tn = (c.N - a.N + b.N - c.N) / 2e-5, te = (c.E - a.E + b.E - c.E) / 2e-5, size = Math.Sqrt(tn * tn + te * te);
            double across = ((n - c.N) * tn + (e - c.E) * te) / size;
            if (corner == leg ? across > by : across < -by)
                return true;
        }
        return false;
    }

    private (double N, double E) OnLine(double s, int leg)
    {
        double n = 0, e = 0, heading = 0;
        for (int i = 0; i < leg; i++)
            (n, e, heading) = Step(n, e, heading, _elements[i].Length, _elements[i].Curvature, _elements[i].Corner);
        (n, e, _) = Step(n, e, heading, s - _elements.Take(leg).Sum(x => x.Length), _elements[leg].Curvature, 0);
        return (n, e);
    }

    /// <summary>What the mitre takes of a leg's face at its start and end, along the face; negative where the face reaches beyond the corner.</summary>
    public (double Start, double End) Cuts(double z, int leg)
    {
        double Cut(int corner) => corner < 0 || corner >= Corners.Count() ? 0 : OffsetAt(z) * Math.Tan(Corners.ElementAt(corner).Deflection * Side / 2);
        return (Cut(leg - 1), Cut(leg));
    }

    public (double Start, double End) Leg(int leg)
    {
        double start = _elements.Take(leg).Sum(x => x.Length);
        return (start, start + _elements[leg].Length);
    }

    /// <summary>Where a leg's face starts and ends at an elevation, by place.</summary>
    public (double Start, double End) FaceOf(double z, int leg)
    {
        (double start, double end) = Leg(leg);
        (double first, double last) = Cuts(z, leg);
        double scale = 1 - _elements[leg].Curvature * Side * OffsetAt(z);
        return (start + Math.Max(0, first) / scale, end - Math.Max(0, last) / scale);
    }

    public double Scale(double z, int leg) => 1 - _elements[leg].Curvature * Side * OffsetAt(z);

    private static (double N, double E, double Heading) Step(double n, double e, double heading, double run, double curvature, double corner)
    {
        double half = curvature * run / 2, chord = Math.Abs(half) < 1e-9 ? run : run * Math.Sin(half) / half;
        return (n + Math.Cos(heading + half) * chord, e + Math.Sin(heading + half) * chord, heading + curvature * run + corner);
    }

    private string Print(double batter, string cornerRows)
    {
        string N(double v) => v.ToString("0.######", CultureInfo.InvariantCulture);
        string Points((double Along, double Elevation)[] points) => string.Join(", ", points.Select(p => $"[{N(p.Along)}, {N(p.Elevation)}]"));
        var elements = new List<string>();
        foreach ((double length, double curvature, double corner) in _elements)
        {
            elements.Add(curvature == 0
                ? $"{{line: {N(length)}}}"
                : $"{{arc: {{radius: {N(1 / Math.Abs(curvature))}, length: {N(length)}, turn: {(curvature > 0 ? "right" : "left")}}}}}");
            if (corner != 0)
                elements.Add($"{{corner: {{turn: {(corner > 0 ? "right" : "left")}, angle: {N(Math.Abs(corner) * 180 / Math.PI)}}}}}");
        }
        var lines = new List<string>
        {
            "format: 1",
            "project: {title: corners, units: ft}",
            "layout_lines:",
            "  - name: L",
            "    start: {station: 0, northing: 0, easting: 0, azimuth: 0}",
            $"    elements: [{string.Join(", ", elements)}]",
            "walls:",
            "  - name: W",
            $"    retained_side: {(Side > 0 ? "right" : "left")}",
            $"    stations: [0, {N(Length)}]",
            $"    face_offset: {N(_offset)}",
            $"    top: [{Points(Top)}]",
            $"    bottom: {{steps: [{Points(Bottom)}]}}",
            "    sections:",
        };
        if (batter != 0)
            lines.Insert(11, $"    batter: {{angle: {N(batter)} deg, elevation: {N(_batterElevation)}}}");
        for (int i = 0; i + 1 < Limits.Length; i++)
        {
            lines.Add($"      - {{name: {(char)('A' + i)}, stations: [{N(Limits[i])}, {N(Limits[i + 1])}], horizontal_spacing: {N(Spacing)}, vertical_spacing: {N(VerticalSpacing)}, "
                + $"rows: {Rows}, pattern: {(Staggered ? "staggered" : "square")}, corner_rows: {cornerRows}, top_row_depth: 2, inclination: 15, lengths: 8, bar: {{size: \"#8\", grade: 75}}, hole: 6 in}}");
        }
        return string.Join('\n', lines) + "\n";
    }
}
