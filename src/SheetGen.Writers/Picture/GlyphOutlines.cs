using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;

namespace SheetGen.Writers.Picture;

/// <summary>Outlines of the letters of a TrueType face (tables maxp, loca and glyf of ISO/IEC 14496-22), in ems, y up.</summary>
internal sealed class GlyphOutlines
{
    private const int MostParts = 8;
    private readonly TrueTypeFace _face;
    private readonly Dictionary<char, (double Advance, IReadOnlyList<IReadOnlyList<Point2>> Outlines)> _known = [];
    private readonly bool _longOffsets;
    private readonly int _glyphs, _loca, _glyf;

    public GlyphOutlines(TrueTypeFace face)
    {
        _face = face;
        _longOffsets = face.U16(face.Table("head") + 50) != 0;
        _glyphs = face.U16(face.Table("maxp") + 4);
        _loca = face.Table("loca");
        _glyf = face.Table("glyf");
    }

    /// <summary>Advance and outlines of a character; those of the face's stand-in where it has none.</summary>
    public (double Advance, IReadOnlyList<IReadOnlyList<Point2>> Outlines) Of(char c)
    {
        if (_known.TryGetValue(c, out var known))
            return known;
        var outlines = new List<IReadOnlyList<Point2>>();
        Add(_face.GlyphOf(c), p => p * (1.0 / _face.Em), outlines, 0);
        return _known[c] = ((double)_face.Advance(c) / _face.Em, outlines);
    }

    private void Add(int glyph, Func<Point2, Point2> place, List<IReadOnlyList<Point2>> outlines, int depth)
    {
        if (glyph >= _glyphs || depth > MostParts)
            return;
        long start = _longOffsets ? _face.U32(_loca + 4 * glyph) : 2L * U16(_loca + 2 * glyph), end = _longOffsets ? _face.U32(_loca + 4 * glyph + 4) : 2L * U16(_loca + 2 * glyph + 2);
        if (end <= start)
            return;
        int at = _glyf + (int)start;
        int contours = S16(at);
        if (contours >= 0)
            AddSimple(at + 10, contours, place, outlines);
        else
            AddParts(at + 10, place, outlines, depth);
    }

    private void AddSimple(int at, int contours, Func<Point2, Point2> place, List<IReadOnlyList<Point2>> outlines)
    {
        int[] ends = [.. Enumerable.Range(0, contours).Select(i => (int)U16(at + 2 * i))];
        if (contours == 0)
            return;
        int count = ends[^1] + 1;
        int read = at + 2 * contours + 2 + U16(at + 2 * contours);
        byte[] flags = new byte[count];
        for (int i = 0; i < count; i++)
        {
            flags[i] = _face.Bytes[read++];
            if ((flags[i] & 8) == 0)
                continue;
            for (int repeats = _face.Bytes[read++]; repeats > 0 && i + 1 < count; repeats--, i++)
                flags[i + 1] = flags[i];
        }
        double[] xs = Coordinates(flags, 2, 16, ref read), ys = Coordinates(flags, 4, 32, ref read);
        int first = 0;
        foreach (int end in ends)
        {
            outlines.Add(Curve([.. Enumerable.Range(first, end - first + 1).Select(i => (place(new Point2(xs[i], ys[i])), (flags[i] & 1) != 0))]));
            first = end + 1;
        }
    }

    private double[] Coordinates(byte[] flags, int shortBit, int sameBit, ref int read)
    {
        double[] values = new double[flags.Length];
        double value = 0;
        for (int i = 0; i < flags.Length; i++)
        {
            if ((flags[i] & shortBit) != 0)
            {
                value += (flags[i] & sameBit) != 0 ? _face.Bytes[read] : -_face.Bytes[read];
                read++;
            }
            else if ((flags[i] & sameBit) == 0)
            {
                value += S16(read);
                read += 2;
            }
            values[i] = value;
        }
        return values;
    }

    /// <summary>Quadratic curves as short lines; between two control points lies a point on the curve.</summary>
    private static List<Point2> Curve(List<(Point2 Point, bool On)> given)
    {
        var points = new List<(Point2 Point, bool On)>();
        for (int i = 0; i < given.Count; i++)
        {
            points.Add(given[i]);
            (Point2 next, bool on) = given[(i + 1) % given.Count];
            if (!given[i].On && !on)
                points.Add(((given[i].Point + next) * 0.5, true));
        }
        int start = Math.Max(0, points.FindIndex(p => p.On));
        var line = new List<Point2> { points[start].Point };
        for (int i = 1; i <= points.Count; i++)
        {
            (Point2 point, bool on) = points[(start + i) % points.Count];
            if (on)
            {
                line.Add(point);
                continue;
            }
            Point2 from = line[^1], to = points[(start + i + 1) % points.Count].Point;
            for (int k = 1; k <= 4; k++)
            {
                double t = k / 4.0;
                line.Add(from * ((1 - t) * (1 - t)) + point * (2 * t * (1 - t)) + to * (t * t));
            }
            i++;
        }
        return line;
    }

    private void AddParts(int at, Func<Point2, Point2> place, List<IReadOnlyList<Point2>> outlines, int depth)
    {
        int flags;
        do
        {
            flags = U16(at);
            int glyph = U16(at + 2);
            bool words = (flags & 1) != 0;
            double dx = words ? S16(at + 4) : (sbyte)_face.Bytes[at + 4], dy = words ? S16(at + 6) : (sbyte)_face.Bytes[at + 5];
            at += words ? 8 : 6;
            double a = 1, b = 0, c = 0, d = 1;
            if ((flags & 8) != 0)
            {
                a = d = F2(at);
                at += 2;
            }
            else if ((flags & 0x40) != 0)
            {
                (a, d) = (F2(at), F2(at + 2));
                at += 4;
            }
            else if ((flags & 0x80) != 0)
            {
                (a, b, c, d) = (F2(at), F2(at + 2), F2(at + 4), F2(at + 6));
                at += 8;
            }
            Add(glyph, p => place(new Point2(a * p.X + c * p.Y + dx, b * p.X + d * p.Y + dy)), outlines, depth + 1);
        }
        while ((flags & 0x20) != 0);
    }

    private ushort U16(int at) => _face.U16(at);

    private short S16(int at) => _face.S16(at);

    private double F2(int at) => S16(at) / 16384.0;
}
