using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Plan;

/// <summary>Nails that lie across a line in plan, head to tip.</summary>
internal static class CrossedNails
{
    /// <summary>True where one of the nails crosses the line between two points, neither only touching the other.</summary>
    public static bool Any(IEnumerable<Nail> nails, Vector2D from, Vector2D to) =>
        nails.Select(n => (A: n.Hole.Head.Plan, B: n.Hole.Tip.Plan))
            .Any(n => Side(from, to, n.A) * Side(from, to, n.B) < 0 && Side(n.A, n.B, from) * Side(n.A, n.B, to) < 0);

    private static double Side(Vector2D a, Vector2D b, Vector2D p) => (b - a).CrossRight(p - a);
}
