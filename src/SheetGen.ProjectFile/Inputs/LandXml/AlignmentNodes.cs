using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>A traced alignment as the keys of a layout line.</summary>
internal static class AlignmentNodes
{
    /// <summary>Largest change of direction, in degrees, that is taken for the file's rounding and not for a corner.</summary>
    private const double LargestKink = 0.05;

    /// <summary>The elements of a layout line, with the turns between them.</summary>
    public static ListNode Elements(IReadOnlyList<TracePiece> pieces, FileUnit unit, Func<TracePiece, SourceSpot> spotOf, SourceSpot spot)
    {
        var nodes = new List<Node>();
        for (int i = 0; i < pieces.Count; i++)
        {
            TracePiece piece = pieces[i];
            SourceSpot at = spotOf(piece);
            if (i > 0 && TurnBetween(pieces[i - 1], piece) is var degrees && Math.Abs(degrees) > 1e-10)
            {
                nodes.Add(Math.Abs(degrees) <= Kink(pieces[i - 1], piece, unit)
                    ? Nodes.Map(at, ("kink", Nodes.Number(degrees, at)))
                    : Nodes.Map(at, ("corner", Nodes.Map(at, ("turn", Side(degrees, at)), ("angle", Nodes.Number(Math.Abs(degrees), at))))));
            }
            nodes.Add(Element(piece, unit, at));
        }
        return Nodes.List(spot, nodes);
    }

    /// <summary>The largest distance of a piece from its place in the file, where the line is laid piece after piece.</summary>
    public static double Drift(IReadOnlyList<TracePiece> pieces)
    {
        Vector2D at = pieces[0].Start;
        double worst = 0;
        foreach (TracePiece piece in pieces)
        {
            worst = Math.Max(worst, (at - piece.Start).Length);
            at += piece.ComputedEnd - piece.Start;
        }
        return Math.Max(worst, (at - pieces[^1].End).Length);
    }

    /// <summary>Degrees, positive to the right.</summary>
    private static double TurnBetween(TracePiece before, TracePiece after) =>
        Math.Round(Angles.ToDegrees(Math.IEEERemainder(after.Azimuth - before.EndAzimuth, 2 * Math.PI)), Decimals);

    /// <summary>Short pieces have coarse directions: what 0.003 ft at their end turn them by counts as rounding, up to the most that a kink may be.</summary>
    private static double Kink(TracePiece before, TracePiece after, FileUnit unit)
    {
        double rounding = 0.003 * FileUnit.Foot.Metres / unit.Metres / Math.Min(before.Length, after.Length);
        return Math.Clamp(Angles.ToDegrees(rounding), LargestKink, 0.1);
    }

    private static MapNode Element(TracePiece piece, FileUnit unit, SourceSpot at)
    {
        const double Straight = 1e-12;
        ScalarNode length = Nodes.Length(Math.Round(piece.Length, Decimals), unit, at);
        double start = Math.Abs(piece.Curvature), end = Math.Abs(piece.EndCurvature);
        if (start < Straight && end < Straight)
            return Nodes.Map(at, ("line", length));
        (string Key, Node Value) turn = ("turn", Side(piece.Curvature + piece.EndCurvature, at));
        if (piece.Curvature == piece.EndCurvature)
            return Nodes.Map(at, ("arc", Nodes.Map(at, ("radius", Nodes.Length(Rounded(1 / start), unit, at)), ("length", length), turn)));
        var keys = new List<(string, Node)> { ("length", length), turn };
        if (start >= Straight)
            keys.Add(("start_radius", Nodes.Length(Rounded(1 / start), unit, at)));
        if (end >= Straight)
            keys.Add(("end_radius", Nodes.Length(Rounded(1 / end), unit, at)));
        return Nodes.Map(at, ("spiral", Nodes.Map(at, [.. keys])));
    }

    /// <summary>Decimals of lengths and degrees: far beyond any survey, but so few that the noise of the arithmetic is gone and 180 is 180.</summary>
    private const int Decimals = 9;

    private static double Rounded(double radius) => radius < 1e6 ? Math.Round(radius, Decimals - 2) : radius;

    /// <summary>The azimuth at the start of the first piece, in degrees.</summary>
    public static ScalarNode Azimuth(TracePiece first, SourceSpot spot) => Nodes.Number(Math.Round(Angles.ToDegrees(Angles.NormalizeAzimuth(first.Azimuth)), Decimals), spot);

    private static ScalarNode Side(double right, SourceSpot at) => Nodes.Text(right > 0 ? "right" : "left", at);
}
