using System.Globalization;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>What the frame of a wall's elevation says in its extended data, with where it is drawn.</summary>
/// <param name="Pairs">Developed distance and distance along the layout line, at both ends and at every bend, up-station.</param>
/// <param name="Hash">Hash of the project file that it was made from.</param>
internal sealed record ElevationFrame(
    string Wall, double OriginX, double OriginY, int Sign, IReadOnlyList<(double Developed, double Line)> Pairs, string Hash, double Left, double Bottom, double Right, double Top)
{
    /// <summary>The frame whose data these strings are; null where they are those of something else, or spoiled.</summary>
    public static ElevationFrame? Of(IEnumerable<string> data, IReadOnlyList<(double X, double Y)> corners)
    {
        string wall = "", hash = "";
        (double, double)? origin = null;
        int sign = 0;
        var pairs = new List<(double, double)>();
        foreach (string text in data)
        {
            int at = text.IndexOf('=', StringComparison.Ordinal);
            if (at < 0)
                continue;
            string value = text[(at + 1)..];
            switch (text[..at])
            {
                case "wall": wall = value; break;
                case "input_hash": hash = value; break;
                case "sign": sign = value == "-1" ? -1 : value == "1" ? 1 : 0; break;
                case "origin": origin = Two(value.Split(',')); break;
                case "developed":
                    if (Two([.. value.Split(',').Select(v => v.Replace("line=", "", StringComparison.Ordinal))]) is { } pair)
                        pairs.Add(pair);
                    break;
            }
        }
        if (wall.Length == 0 || origin is not { } o || sign == 0 || pairs.Count < 2 || corners.Count == 0)
            return null;
        return new ElevationFrame(wall, o.Item1, o.Item2, sign, pairs, hash, corners.Min(c => c.X), corners.Min(c => c.Y), corners.Max(c => c.X), corners.Max(c => c.Y));
    }

    /// <summary>True where both lie alike and develop alike.</summary>
    public bool IsLike(ElevationFrame other) =>
        Math.Abs(OriginX - other.OriginX) < 1e-6 && Math.Abs(OriginY - other.OriginY) < 1e-6 && Sign == other.Sign && Pairs.SequenceEqual(other.Pairs);

    /// <summary>The station (distance along the layout line from its first station) of a place on the elevation.</summary>
    public double StationAt(double x)
    {
        double developed = Sign * (x - OriginX);
        int i = 0;
        while (i + 2 < Pairs.Count && developed > Pairs[i + 1].Developed)
            i++;
        ((double Developed, double Line) a, (double Developed, double Line) b) = (Pairs[i], Pairs[i + 1]);
        if (developed < Pairs[0].Developed || developed > Pairs[^1].Developed)
        {
            (double Developed, double Line) end = developed < Pairs[0].Developed ? Pairs[0] : Pairs[^1];
            return end.Line + (developed - end.Developed);
        }
        return b.Developed - a.Developed < 1e-9 ? b.Line : a.Line + (b.Line - a.Line) * ((developed - a.Developed) / (b.Developed - a.Developed));
    }

    public double ElevationAt(double y) => y - OriginY;

    public bool Contains(double x, double y, double margin) => x >= Left - margin && x <= Right + margin && y >= Bottom - margin && y <= Top + margin;

    private static (double, double)? Two(string[] values) =>
        values.Length == 2 && double.TryParse(values[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double a)
        && double.TryParse(values[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double b) && double.IsFinite(a) && double.IsFinite(b) ? (a, b) : null;
}
