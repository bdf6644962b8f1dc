using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Drawing.Tables;

/// <summary>Tables of what the project file gives: obstructions, openings, borings, control points.</summary>
internal static class GivenTables
{
    public static IEnumerable<SheetTable> All(DrawingContext context) =>
        [Openings(context), Obstructions(context), Borings(context), ControlPoints(context)];

    private static SheetTable Openings(DrawingContext context)
    {
        Printed print = context.Print;
        var rows = new List<IReadOnlyList<string>>();
        foreach (Wall wall in context.Project.Walls)
        {
            foreach (Opening o in wall.Openings)
            {
                rows.Add([wall.Name, context.Say(Phrase.OpeningName, o.Name.ToUpperInvariant()), print.Station(wall, o.Start), print.Station(wall, o.End),
                    print.Elevation(o.Bottom), print.Elevation(o.Top), context.Say(Phrase.OpeningFraming)]);
            }
            foreach (ClosedStretch c in wall.ClosedStretches)
            {
                rows.Add([wall.Name, context.Say(Phrase.NoNails), print.Station(wall, c.Start), print.Station(wall, c.End),
                    c.Bottom is double b ? print.Elevation(b) : "", c.Top is double t ? print.Elevation(t) : "", c.Reason.ToUpperInvariant()]);
            }
        }
        return SheetTable.Of(context, Phrase.TableOpenings, Phrase.TableOpeningsHeads, rows);
    }

    private static SheetTable Obstructions(DrawingContext context) =>
        SheetTable.Of(context, Phrase.TableObstructions, Phrase.TableObstructionsHeads,
            [.. context.Project.Obstructions.SelectMany(o => ObstructionRows(context, o))], Phrase.TableObstructionsRemark);

    /// <summary>The row of an obstruction; of an inclined shaft or pile a row for each end.</summary>
    private static IEnumerable<IReadOnlyList<string>> ObstructionRows(DrawingContext context, Obstruction o)
    {
        string kind = context.Say(KindWords(o.Kind)), size = o.Diameter > 0 ? context.Print.Small(o.Diameter) : "", top = Level(context, o, o.Top), bottom = Level(context, o, o.Bottom);
        string[] facts = [.. new[] { "owner", "state", "quality_level", "source" }.Select(f => o.Facts.GetValueOrDefault(f, "").ToUpperInvariant())];
        (string Station, string Behind, string Elevation)[] ends = o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile ? [.. new ShaftAxis(context, o).Ends(Nearest(context, o))] : [];
        if (ends.Length < 2)
        {
            yield return [o.Name, kind, ends.Length == 0 ? "" : ends[0].Station, ends.Length == 0 ? "" : ends[0].Behind, size, top, bottom, .. facts];
            yield break;
        }
        yield return [context.Say(Phrase.UpperEndOf, o.Name), kind, ends[0].Station, ends[0].Behind, size, ends[0].Elevation, "", .. facts];
        yield return [context.Say(Phrase.LowerEndOf, o.Name), kind, ends[1].Station, ends[1].Behind, size, "", ends[1].Elevation, .. facts];
    }

    /// <summary>The wall to which the upper end of a shaft or pile is nearest.</summary>
    private static Wall Nearest(DrawingContext context, Obstruction o) => context.Project.Walls
        .Select(w => (Wall: w, Place: context.PlacesOf(w.LayoutLine, o)[0]))
        .MinBy(p => Math.Abs(p.Place.Right) + Math.Max(0, Math.Max(p.Wall.Start - p.Place.Along, p.Place.Along - p.Wall.End))).Wall;

    private static string Level(DrawingContext context, Obstruction o, double elevation) =>
        double.IsFinite(elevation) && o.Kind is not (ObstructionKind.Boundary or ObstructionKind.Pipe) ? context.Print.Elevation(elevation) : "";

    private static Phrase KindWords(ObstructionKind kind) => kind switch
    {
        ObstructionKind.Shaft => Phrase.KindShaft,
        ObstructionKind.Pile => Phrase.KindPile,
        ObstructionKind.Solid => Phrase.KindSolid,
        ObstructionKind.Beam => Phrase.KindBeam,
        ObstructionKind.Pipe => Phrase.KindPipe,
        _ => Phrase.KindBoundary,
    };

    private static SheetTable Borings(DrawingContext context)
    {
        Printed print = context.Print;
        LayoutLine line = context.Project.Walls[0].LayoutLine;
        var rows = new List<IReadOnlyList<string>>();
        foreach (Boring b in context.Project.Borings)
        {
            LinePlace place = LayoutProjection.Locate(line, b.At);
            string station = print.Station(line, place.Along), offset = print.Distance(place.Right * context.Project.Walls[0].Side);
            string water = b.Water is double w ? print.Elevation(w) : "";
            double from = b.Top;
            foreach (BoringLayer layer in b.Layers)
            {
                rows.Add([b.Name, station, offset, print.Elevation(from), print.Elevation(layer.To), layer.Name.ToUpperInvariant(),
                    layer.PlasticityIndex is double pi ? Printed.Number(pi, 1) : "", water]);
                from = layer.To;
            }
            if (b.Layers.Count == 0)
                rows.Add([b.Name, station, offset, print.Elevation(b.Top), print.Elevation(b.Bottom), "", "", water]);
        }
        return SheetTable.Of(context, Phrase.TableBorings, Phrase.TableBoringsHeads, rows, Phrase.TableBoringsRemark);
    }

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
                rows.Add([line.Name, point, print.Station(line, along), print.Northing(at), print.Easting(at), print.Bearing(azimuth), offset]);
            }
            Add(context.Say(Phrase.ControlBegin), 0, line.AzimuthAt(0));
            foreach (LayoutPiece piece in line.Pieces.Where(p => p.IsCurved))
            {
                (string start, string end) = CurvePoints.Names(line, piece);
                if (start.Length > 0)
                    Add(start, piece.Start, piece.AzimuthAt(piece.Start));
                Add(end, piece.End, piece.AzimuthAt(piece.End));
            }
            foreach (Corner corner in line.Corners)
                Add(context.Say(Phrase.ControlAngle), corner.Along, line.AzimuthAt(corner.Along));
            Add(context.Say(Phrase.ControlEnd), line.Length, line.AzimuthAt(line.Length));
            foreach (Wall wall in context.Project.Walls.Where(w => w.LayoutLine == line))
            {
                Add(context.Say(Phrase.Begin, wall.Name.ToUpperInvariant()), wall.Start, line.AzimuthAt(wall.Start));
                Add(context.Say(Phrase.End, wall.Name.ToUpperInvariant()), wall.End, line.AzimuthBefore(wall.End));
            }
        }
        return SheetTable.Of(context, Phrase.TableControl, Phrase.TableControlHeads, rows, Phrase.TableControlRemark);
    }
}
