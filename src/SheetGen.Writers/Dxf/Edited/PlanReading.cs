using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>
/// Nails read from an edited plan.dxf, where each is a line from head to tip. A plan tells station, splay and length in plan; elevation and
/// inclination stay as they were, and the length follows from both.
/// </summary>
internal static class PlanReading
{
    /// <summary>Null where no line carries a mark of this project.</summary>
    public static DrawingReading? Read(DxfDocument document, WallProject project, NailLayout layout, SheetSet built)
    {
        Dictionary<string, Line> was = built.Plan.OfType<Line>().Where(l => l.Nail is not null).DistinctBy(l => l.Nail).ToDictionary(l => l.Nail!);
        var notRead = new List<string>();
        var notes = new List<string> { "a plan tells no elevations: heads keep their height, holes their inclination" };
        List<(string? Mark, DxfLine Line)> lines = [.. document.Model.OfType<DxfLine>().Select(l => (NailBlock.XDataOf(l).FirstOrDefault(), l))];
        double tolerance = EditedDrawing.Tolerance(project);
        bool hasMarks = lines.Exists(l => l.Mark is not null && was.ContainsKey(l.Mark));
        DrawingPlace? found = new PlaceSearch(tolerance)
        {
            Pairs = [.. lines.Where(l => l.Mark is not null && was.ContainsKey(l.Mark)).SelectMany(l => new[] { (l.Line.Start, Point(was[l.Mark!].From)), (l.Line.End, Point(was[l.Mark!].To)) })],
            Nails = hasMarks ? ([], []) : ([.. lines.SelectMany(l => new[] { l.Line.Start, l.Line.End })], [.. was.Values.SelectMany(l => new[] { Point(l.From), Point(l.To) })]),
            Outlines = ([.. document.Model.OfType<DxfPolyline>().SelectMany(p => p.Vertices).Select(v => v.Point)], [.. built.Plan.OfType<Polyline>().SelectMany(p => p.Vertices).Select(v => Point(v.Point))]),
            Scales = [12, 1 / 12.0, Lengths.MetresPer(project.Unit), 1 / Lengths.MetresPer(project.Unit), 1000, 25.4],
            Turns = hasMarks ? [] : [90, -90, 180],
        }.Find();
        if (found is not { } place)
            return null;
        notes.AddRange(place.Notes());
        if (!hasMarks)
        {
            notes.Add("the lines of the nails have lost their marks; each nail was known by where its line lies");
            Dictionary<Nail, (DxfPoint, DxfPoint)> known = new UnmarkedPlan(layout, was, tolerance, notRead).Match(lines.Select(l => (l.Line.Layer, place.Back(l.Line.Start), place.Back(l.Line.End))));
            return known.Count == 0 ? null : new DrawingReading([.. layout.Nails.Where(known.ContainsKey).Select(n => OfLine(project, n, was[n.Mark], known[n], tolerance))], notRead, notes);
        }
        lines.RemoveAll(l => l.Mark is null);
        ILookup<string, (DxfPoint Head, DxfPoint Tip)> byMark = lines.ToLookup(l => l.Mark!, l => (place.Back(l.Line.Start), place.Back(l.Line.End)));
        var nails = new List<DrawnNail>();
        foreach (Nail nail in layout.Nails.Where(n => byMark.Contains(n.Mark)))
        {
            Line old = was[nail.Mark];
            List<(DxfPoint Head, DxfPoint Tip)> all = [.. byMark[nail.Mark].OrderBy(l => (l.Head - Point(old.From)).Length + (l.Tip - Point(old.To)).Length)];
            nails.Add(OfLine(project, nail, old, all[0], tolerance));
            nails.AddRange(all.Skip(1).Select(copy => OfLine(project, nail, old, copy, 0) with { Was = null, Elevation = nail.Elevation }));
        }
        foreach (string mark in byMark.Select(g => g.Key).Where(m => !was.ContainsKey(m)))
            notRead.Add($"{mark}: a line with this mark is on the plan, but the layout has no such nail");
        return new DrawingReading([.. nails.Where(n => n.Was is not null), .. nails.Where(n => n.Was is null)], notRead, notes);
    }

    private static DrawnNail OfLine(WallProject project, Nail nail, Line old, (DxfPoint Head, DxfPoint Tip) line, double tolerance)
    {
        bool headStands = (line.Head - Point(old.From)).Length <= tolerance, tipStands = (line.Tip - Point(old.To)).Length <= tolerance;
        if (headStands && tipStands)
            return new DrawnNail(nail, nail.Wall, nail.Along, nail.Elevation, null, null, null);
        Vector2D head = InProject(project, line.Head), tip = InProject(project, line.Tip);
        double along = headStands ? nail.Along : LayoutProjection.Locate(nail.Wall.LayoutLine, head).Along;
        Vector2D way = tip - head, normal = new Face(nail.Wall).NormalAt(along), tangent = nail.Wall.LayoutLine.TangentAt(along);
        double splay = Math.Round(Angles.ToDegrees(Math.Atan2(way.Dot(tangent), way.Dot(normal))), 2);
        double length = Math.Round(way.Length / Math.Cos(Angles.ToRadians(nail.Inclination)), Lengths.Decimals(project.Unit));
        return new DrawnNail(nail, nail.Wall, along, nail.Elevation,
            Math.Abs(splay - nail.Splay) <= 0.02 ? nail.Splay : splay, null, Math.Abs(length - nail.Length) <= 2 * Lengths.Quantum(project.Unit) ? nail.Length : length);
    }

    private static Vector2D InProject(WallProject project, DxfPoint p) => new(p.Y - project.Origin.N, p.X - project.Origin.E);

    private static DxfPoint Point(Point2 p) => new(p.X, p.Y);
}
