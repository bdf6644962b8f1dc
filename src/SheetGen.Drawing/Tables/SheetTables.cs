using System.Globalization;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.Model;

namespace SheetGen.Drawing.Tables;

/// <summary>The tables that come from the layout itself.</summary>
public static class SheetTables
{
    public static IEnumerable<SheetTable> All(DrawingContext context)
    {
        yield return new(SummaryTables.BySection(context.Quantities));
        yield return States(context);
        foreach (TableData table in context.Tables)
            yield return new(table);
        yield return Redirects(context);
        yield return RowElevations(context);
        if (context.Layout.Nails.Any(n => n.Kind != NailKind.Production) || context.Project.Walls.Any(w => w.Sections.Any(s => s.TestNails != TestNails.None)))
            yield return Tests(context);
        yield return Closest(context);
        if (context.Layout.LeftOut.Count > 0)
            yield return LeftOut(context);
        if (context.Project.Obstructions.Count > 0)
            yield return Obstructions(context);
        yield return ControlPoints(context);
        if (context.Report.Findings.Count > 0)
            yield return Findings(context);
    }

    /// <summary>Every finding, errors first; a long one goes on in the next line.</summary>
    private static SheetTable Findings(DrawingContext context)
    {
        const double Width = 190;
        TextStyle style = context.StyleOf(TextRole.Table);
        var rows = new List<IReadOnlyList<string>>();
        foreach (Finding finding in context.Report.Findings.OrderBy(f => f.Severity))
        {
            string place = finding.Station is { } station ? context.Print.Station(station) : "";
            IReadOnlyList<string> lines = TextMeasure.Wrap(finding.Message, Width, style.Height, style);
            for (int i = 0; i < lines.Count; i++)
                rows.Add(i == 0 ? [finding.Severity.ToString().ToUpperInvariant(), finding.Code, place, lines[i]] : ["", "", "", lines[i]]);
        }
        return SheetTable.Of("FINDINGS", ["SEVERITY", "CODE", "STATION", "FINDING"], rows, "ALL FINDINGS OF THE CHECKER; ERRORS ARE FOR THE ENGINEER TO DECIDE.");
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static SheetTable States(DrawingContext context)
    {
        var rows = new List<IReadOnlyList<string>>();
        foreach (Wall wall in context.Project.Walls)
        {
            foreach (Section s in wall.Sections)
                rows.Add(StateRow(wall.Name, s.Name, context.Print.Angle(s.Inclination), [.. context.Layout.Nails.Where(n => n.Wall == wall && n.Section == s)]));
        }
        rows.Add(StateRow("TOTAL", "", "", context.Layout.Nails));
        return SheetTable.Of("NAILS BY STATE",
            ["WALL", "SECTION", "#ANGLE\nDOWN", "#AT GRID", "#MOVED", "#TURNED", "#NOTED", "#DO NOT\nDRILL", "#NAILS"], rows,
            "PRODUCTION NAILS. TURNED: WITHIN THE FIELD TOLERANCE. NOTED: BEYOND IT, CALLED OUT.");
    }

    private static string[] StateRow(string wall, string section, string angle, IReadOnlyList<Nail> nails)
    {
        Nail[] production = [.. nails.Where(n => n.Kind != NailKind.Verification)];
        return [wall, section, angle, .. Enum.GetValues<NailStatus>().Select(s => Count(production.Count(n => n.Status == s))), Count(production.Length)];
    }

    private static SheetTable Redirects(DrawingContext context)
    {
        Printed print = context.Print;
        IEnumerable<Nail> nails = context.Layout.Nails.Where(n => n.Status is NailStatus.Redirected or NailStatus.Noted or NailStatus.Unresolved);
        return SheetTable.Of("REDIRECT SCHEDULE",
            ["NAIL", "#STATION", "#ELEVATION", "#TURN", "SIDE", "BY\nSTATION", "#ANGLE\nDOWN", "#LENGTH", "STATE", "BECAUSE OF", "#CLEAR\nBEFORE", "#CLEAR\nAFTER"],
            [.. nails.Select(n => (IReadOnlyList<string>)[
                n.Mark, print.Station(n.Station), print.Elevation(n.Elevation), print.Angle(Math.Abs(n.Splay)),
                Sides.Of(n.Wall, n.Splay), Sides.ByStation(n.Splay), print.Angle(n.Inclination), print.Short(n.Length),
                n.Status switch { NailStatus.Noted => "NOTED", NailStatus.Unresolved => "DO NOT DRILL", _ => "WITHIN TOLERANCE" },
                n.Reason?.Blocker ?? "", Clear(print, n.Reason?.ClearBefore), Clear(print, n.Reason?.ClearAfter)])],
            "SIDE: AS SEEN BY A PERSON IN FRONT OF THE WALL WHO FACES IT.");
    }

    private static string Clear(Printed print, double? clear) =>
        clear is double c && double.IsFinite(c) ? Printed.Fixed(c, Lengths.Decimals(print.Unit)) : "";

    private static SheetTable RowElevations(DrawingContext context)
    {
        Printed print = context.Print;
        var rows = new List<IReadOnlyList<string>>();
        foreach (Wall wall in context.Project.Walls)
        {
            foreach (Nail[] row in NailLabels.RowGroups(context.NailsOf(wall), new Face(wall)))
            {
                rows.Add([
                    wall.Name, row[0].Section.Name, row[0].Row.Name,
                    print.Station(row[0].Station), print.Elevation(row[0].Elevation),
                    print.Station(row[^1].Station), print.Elevation(row[^1].Elevation),
                    Count(row.Length), print.Short(row[0].Section.LengthOfRow(Math.Max(1, row[0].Row.Whole)))]);
            }
        }
        return SheetTable.Of("ROW ELEVATIONS", ["WALL", "SECTION", "ROW", "#FIRST\nSTATION", "#FIRST\nELEVATION", "#LAST\nSTATION", "#LAST\nELEVATION", "#NAILS", "#LENGTH"], rows);
    }

    private static SheetTable Tests(DrawingContext context)
    {
        Printed print = context.Print;
        var rows = new List<IReadOnlyList<string>>();
        foreach (Nail n in context.Layout.Nails.Where(n => n.Kind != NailKind.Production))
        {
            rows.Add([n.Mark, n.Kind == NailKind.Verification ? "VERIFICATION" : "PROOF", n.Wall.Name, n.Section.Name,
                print.Station(n.Station), print.Elevation(n.Elevation), print.Short(n.Length)]);
        }
        foreach (Wall wall in context.Project.Walls)
        {
            foreach (Section s in wall.Sections.Where(s => s.TestNails.ProofShare > 0 && !s.TestNails.SpreadProofMarks))
            {
                int count = context.Layout.Nails.Count(n => n.Section == s && n.Wall == wall && n.Kind != NailKind.Verification);
                int tests = (int)Math.Ceiling(count * s.TestNails.ProofShare - 1e-9);
                rows.Add([$"{tests} NAILS", "PROOF", wall.Name, s.Name, "CHOSEN BY", "ENGINEER", ""]);
            }
        }
        return SheetTable.Of("TEST NAILS", ["NAIL", "TEST", "WALL", "SECTION", "STATION", "ELEVATION", "LENGTH"], rows,
            "DESIGN TEST LOAD: SEE THE PROJECT SPECIFICATIONS.");
    }

    private static SheetTable Closest(DrawingContext context)
    {
        Printed print = context.Print;
        var nearest = context.Layout.Nails
            .Where(n => context.Report.Nails.TryGetValue(n.Mark, out NailClearance? c) && double.IsFinite(c.LeastClear))
            .Select(n => (Nail: n, Clear: context.Report.Nails[n.Mark]))
            .OrderBy(p => p.Clear.LeastClear).ThenBy(p => p.Nail.Mark, StringComparer.Ordinal).Take(15);
        return SheetTable.Of("CLOSEST CLEARANCES", ["NAIL", "NEAREST", "#CLEAR", "#MARGIN TO\nOBSTRUCTIONS", "#MARGIN TO\nNAILS"],
            [.. nearest.Select(p => (IReadOnlyList<string>)[
                p.Nail.Mark, p.Clear.Nearest, print.Distance(p.Clear.LeastClear),
                print.Angle(Math.Round(p.Clear.MarginObstruction, 1)), print.Angle(Math.Round(p.Clear.MarginNail, 1))])],
            "MARGIN: DEGREES BY WHICH A HOLE MAY STRAY ABOUT ITS HEAD BEFORE IT TOUCHES.");
    }

    private static SheetTable LeftOut(DrawingContext context) =>
        SheetTable.Of("GRID PLACES LEFT WITHOUT A NAIL", ["PLACE", "#STATION", "#ELEVATION", "REASON"],
            [.. context.Layout.LeftOut.Select(l => (IReadOnlyList<string>)[
                l.Mark, context.Print.Station(l.Wall.StationOf(l.Along)), context.Print.Elevation(l.Elevation), l.Reason.ToUpperInvariant()])]);

    private static SheetTable Obstructions(DrawingContext context) =>
        SheetTable.Of("OBSTRUCTIONS AND UTILITIES", ["NAME", "KIND", "OWNER", "STATE", "QUALITY\nLEVEL", "SOURCE"],
            [.. context.Project.Obstructions.Select(o => (IReadOnlyList<string>)[
                o.Name, o.Kind.ToString().ToUpperInvariant(),
                .. new[] { "owner", "state", "quality_level", "source" }.Select(f => o.Facts.GetValueOrDefault(f, "").ToUpperInvariant())])],
            "QUALITY LEVEL OF A UTILITY'S LOCATION: A TO D OF ASCE 38. EMPTY: NOT GIVEN.");

    private static SheetTable ControlPoints(DrawingContext context)
    {
        Printed print = context.Print;
        var rows = new List<IReadOnlyList<string>>();
        foreach (LayoutLine line in context.Project.LayoutLines)
        {
            void Add(string point, double along, double azimuth)
            {
                Vector2D at = line.PointAt(along);
                Wall? wall = context.Project.Walls.FirstOrDefault(w => w.LayoutLine == line && along >= w.Start && along <= w.End);
                string offset = wall is null ? "" : print.Distance(new Face(wall).OffsetAt(wall.Bottom.Before(along)));
                rows.Add([line.Name, point, print.Station(line.StationOf(along)), print.Northing(at), print.Easting(at), print.Bearing(azimuth), offset]);
            }
            Add("BEGIN", 0, line.AzimuthAt(0));
            foreach (LayoutPiece piece in line.Pieces.Where(p => p.Curvature != 0))
            {
                Add("PC", piece.Start, piece.AzimuthAt(piece.Start));
                Add("PT", piece.End, piece.AzimuthAt(piece.End));
            }
            foreach (Corner corner in line.Corners)
                Add("ANGLE POINT", corner.Along, line.AzimuthAt(corner.Along));
            Add("END", line.Length, line.AzimuthAt(line.Length));
            foreach (Wall wall in context.Project.Walls.Where(w => w.LayoutLine == line))
            {
                Add("BEGIN " + wall.Name.ToUpperInvariant(), wall.Start, line.AzimuthAt(wall.Start));
                Add("END " + wall.Name.ToUpperInvariant(), wall.End, line.AzimuthBefore(wall.End));
            }
        }
        return SheetTable.Of("CONTROL POINTS", ["LINE", "POINT", "#STATION", "#NORTHING", "#EASTING", "BEARING\nAHEAD", "#FACE\nOFFSET"], rows,
            "FACE OFFSET: FROM THE LAYOUT LINE TO THE FACE AT THE BOTTOM, POSITIVE INTO THE SOIL.");
    }
}
