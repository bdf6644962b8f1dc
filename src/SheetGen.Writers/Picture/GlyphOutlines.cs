using System.Buffers.Binary;
using SheetGen.Drawing.Primitives;

namespace SheetGen.Writers.Picture;

/// <summary>Outlines of letters from a TrueType face (tables head, maxp, loca, glyf, cmap, hhea, hmtx of ISO/IEC 14496-22), in ems, y up.</summary>
internal sealed class GlyphOutlines
{
    private const int MostParts = 8;
    private readonly byte[] _font;
    private readonly Dictionary<string, int> _tables = [];
    private readonly Dictionary<char, (double Advance, IReadOnlyList<IReadOnlyList<Point2>> Outlines)> _known = [];
    private readonly double _em;
    private readonly bool _longOffsets;
    private readonly int _metrics;
    private readonly int _glyphs;

    public GlyphOutlines(byte[] font)
    {
        _font = font;
        for (int i = 0; i < U16(4); i++)
        {
            int entry = 12 + 16 * i;
            _tables[System.Text.Encoding.ASCII.GetString(font, entry, 4)] = (int)U32(entry + 8);
        }
        _em = U16(_tables["head"] + 18);
        _longOffsets = U16(_tables["head"] + 50) != 0;
        _metrics = U16(_tables["hhea"] + 34);
        _glyphs = U16(_tables["maxp"] + 4);
    }

    /// <summary>Advance and outlines of a character; those of the face's stand-in where it has none.</summary>
    public (double Advance, IReadOnlyList<IReadOnlyList<Point2>> Outlines) Of(char c)
    {
        if (_known.TryGetValue(c, out var known))
            return known;
        int glyph = GlyphOf(c);
        double advance = U16(_tables["hmtx"] + 4 * Math.Min(glyph, _metrics - 1)) / _em;
        var outlines = new List<IReadOnlyList<Point2>>();
        Add(glyph, p => p * (1 / _em), outlines, 0);
        return _known[c] = (advance, outlines);
    }

    private int GlyphOf(char c)
    {
        int cmap = _tables["cmap"];
        for (int i = 0; i < U16(cmap + 2); i++)
        {
            int table = cmap + (int)U32(cmap + 4 + 8 * i + 4);
            if (U16(table) != 4)
                continue;
            int doubled = U16(table + 6), ends = table + 14, starts = ends + doubled + 2, deltas = starts + doubled, ranges = deltas + doubled;
            for (int s = 0; s < doubled; s += 2)
            {
                if (c > U16(ends + s))
                    continue;
                if (c < U16(starts + s))
                    break;
                int range = U16(ranges + s);
                int glyph = range == 0 ? c : U16(ranges + s + range + 2 * (c - U16(starts + s)));
                return range != 0 && glyph == 0 ? 0 : (glyph + U16(deltas + s)) & 0xFFFF;
            }
        }
        return 0;
    }

    private void Add(int glyph, Func<Point2, Point2> place, List<IReadOnlyList<Point2>> outlines, int depth)
    {
        if (glyph >= _glyphs || depth > MostParts)
            return;
        int loca = _tables["loca"], glyf = _tables["glyf"];
        long start = _longOffsets ? U32(loca + 4 * glyph) : 2L * U16(loca + 2 * glyph), end = _longOffsets ? U32(loca + 4 * glyph + 4) : 2L * U16(loca + 2 * glyph + 2);
        if (end <= start)
            return;
        int at = glyf + (int)start;
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
            flags[i] = _font[read++];
            if ((flags[i] & 8) == 0)
                continue;
            for (int repeats = _font[read++]; repeats > 0 && i + 1 < count; repeats--, i++)
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
                value += (flags[i] & sameBit) != 0 ? _font[read] : -_font[read];
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
            double dx = words ? S16(at + 4) : (sbyte)_font[at + 4], dy = words ? S16(at + 6) : (sbyte)_font[at + 5];
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

    private ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_font.AsSpan(at));

    private short S16(int at) => BinaryPrimitives.ReadInt16BigEndian(_font.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(_font.AsSpan(at));

    private double F2(int at) => S16(at) / 16384.0;
}
