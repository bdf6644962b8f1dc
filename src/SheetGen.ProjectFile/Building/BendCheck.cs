using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Warns of straight lines between two offsets where the layout line bends between them.</summary>
internal sealed class BendCheck(Points points, LengthUnit unit, ProblemList problems)
{
    private const int Steps = 64;

    /// <summary>One warning for an obstruction, whatever the number of its straight stretches.</summary>
    /// <param name="list">Points of a boundary, pipe or footprint.</param>
    public void Check(MapItem obstruction, ListItem list)
    {
        MapItem[] maps = [.. list.Maps];
        var across = new List<Straight>();
        for (int i = 1; i < maps.Length; i++)
        {
            if (Offset(maps[i - 1]) is { } a && Offset(maps[i]) is { } b && a.Line == b.Line && Bends(a, b) && Spread(a, b) is { } spread)
                across.Add(new Straight(a, b, spread.Least, spread.Most, maps[i - 1].Spot, maps[i].Spot));
        }
        if (across.Count == 0)
            return;
        Straight first = across[0], last = across[^1];
        string hint = across.TrueForAll(s => s.From.Offset == first.From.Offset && s.To.Offset == first.From.Offset)
            ? FormattableString.Invariant($"if it follows the layout line: offset_line: {first.From.Offset}, or more points; if it is straight: straight: true")
            : "if it follows the layout line, give more points; if it is straight: straight: true";
        string stretches = across.Count == 1 ? "" : FormattableString.Invariant($" in {across.Count} stretches between its points");
        string bends = FormattableString.Invariant($"{Shown.Short(obstruction.Text("name") ?? "?")} runs straight{stretches} from {Show(first.From)} to {Show(last.To)}, where the layout line bends: it lies {across.Min(s => s.Least):0.00} to {across.Max(s => s.Most):0.00} {Lengths.Symbol(unit)} from it");
        problems.Add(ProblemCodes.AcrossBend, first.End, bends, hint, first.Start);
    }

    private string Show(Place place) => place.Line.StationText(place.Along, unit);

    private Place? Offset(MapItem point) =>
        point.NumberItem("station") is { } station && point.Number("offset") is { } offset && points.LineOf(point, "offset") is { } of && StationPlaces.Along(of.Line, station, unit, problems) is { } along
            ? new Place(of.Line, of.Side, along, offset)
            : null;

    private static bool Bends(Place a, Place b)
    {
        double from = Math.Min(a.Along, b.Along) + Tolerance.Length, to = Math.Max(a.Along, b.Along) - Tolerance.Length;
        return a.Line.Corners.Any(c => c.Along > from && c.Along < to) || a.Line.Pieces.Any(p => p.IsCurved && p.Start < to && p.End > from);
    }

    /// <summary>Least and greatest offset of the straight line; null where it keeps the offsets of its ends.</summary>
    private (double Least, double Most)? Spread(Place a, Place b)
    {
        double tolerance = Lengths.IsFoot(unit) ? 0.25 : 0.08;
        Vector2D from = a.Line.PointAt(a.Along, a.Offset * a.Side), to = b.Line.PointAt(b.Along, b.Offset * b.Side);
        double least = double.PositiveInfinity, most = double.NegativeInfinity;
        for (int k = 0; k <= Steps; k++)
        {
            double offset = LayoutProjection.Locate(a.Line, from + (to - from) * (k / (double)Steps)).Right * a.Side;
            (least, most) = (Math.Min(least, offset), Math.Max(most, offset));
        }
        bool keeps = least > Math.Min(a.Offset, b.Offset) - tolerance && most < Math.Max(a.Offset, b.Offset) + tolerance;
        return keeps ? null : (least, most);
    }

    /// <summary>A straight stretch between two points that does not keep their offsets.</summary>
    private readonly record struct Straight(Place From, Place To, double Least, double Most, SourceSpot Start, SourceSpot End);

    private readonly record struct Place(LayoutLine Line, int Side, double Along, double Offset);
}
