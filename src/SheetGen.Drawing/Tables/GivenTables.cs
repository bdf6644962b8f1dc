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
        string kind = KindOf(context, o), size = o.Diameter > 0 ? context.Print.Small(o.Diameter) : "", top = Level(context, o, o.Top), bottom = Level(context, o, o.Bottom);
        string[] facts = [.. new[] { "owner", "state", "quality_level", "source" }.Select(f => o.Facts.GetValueOrDefault(f, "").ToUpperInvariant())];
        Wall wall = Nearest(context, o);
        if (o.Kind is not (ObstructionKind.Shaft or ObstructionKind.Pile))
        {
            yield return [o.Name, kind, Stretch(context, o, wall), Behind(context, o, wall), size, top, bottom, .. facts];
            yield break;
        }
        (string Station, string Behind, string Elevation)[] ends = [.. new ShaftAxis(context, o).Ends(wall)];
        if (ends.Length < 2)
        {
            yield return [o.Name, kind, ends[0].Station, ends[0].Behind, size, top, bottom, .. facts];
            yield break;
        }
        yield return [context.Say(Phrase.UpperEndOf, o.Name), kind, ends[0].Station, ends[0].Behind, size, ends[0].Elevation, "", .. facts];
        yield return [context.Say(Phrase.LowerEndOf, o.Name), kind, ends[1].Station, ends[1].Behind, size, "", ends[1].Elevation, .. facts];
    }

    /// <summary>Least distance behind the face; words for what reaches in front of it, nothing for what lies beside the wall.</summary>
    private static string Behind(DrawingContext context, Obstruction o, Wall wall) => ObstructionPlace.Of(new Face(wall), o) switch
    {
        null => "",
        { Behind: < 0 } => context.Say(Phrase.InFront),
        { } place => context.Print.Distance(place.Behind),
    };

    /// <summary>From where to where along the wall's line: a pipe in the order of its points, as its elevations are given; all else up-station.</summary>
    private static string Stretch(DrawingContext context, Obstruction o, Wall wall)
    {
        double[] along = [.. context.PlacesOf(wall.LayoutLine, o).Select(p => p.Along)];
        (double from, double to) = o.Kind == ObstructionKind.Pipe ? (along[0], along[^1]) : (along.Min(), along.Max());
        string first = context.Print.Station(wall, from), last = context.Print.Station(wall, to);
        return context.FromTo(first, last);
    }

    /// <summary>What kind it is, of a pipe with the elevations of its axis at its ends.</summary>
    private static string KindOf(DrawingContext context, Obstruction o)
    {
        string kind = context.Say(KindWords(o.Kind));
        if (o.Kind != ObstructionKind.Pipe)
            return kind;
        string first = context.Print.Elevation(o.Shape[0].Z), last = context.Print.Elevation(o.Shape[^1].Z);
        return context.Say(Phrase.PipeAxis, kind, context.FromTo(first, last));
    }

    /// <summary>The wall to which a point of it comes nearest; of a shaft or pile the upper end counts.</summary>
    private static Wall Nearest(DrawingContext context, Obstruction o) => context.Project.Walls
        .Select(w => (Wall: w, Away: context.PlacesOf(w.LayoutLine, o).Take(o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile ? 1 : int.MaxValue)
            .Min(p => Math.Abs(p.Right) + Math.Max(0, Math.Max(w.Start - p.Along, p.Along - w.End)))))
        .MinBy(p => p.Away).Wall;

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
            if (from > b.Bottom)
                rows.Add([b.Name, station, offset, print.Elevation(from), print.Elevation(b.Bottom), "", "", water]);
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
            foreach (StationEquation equation in line.Stationing.Equations)
                Add(EquationWords(context, equation), equation.Along, line.AzimuthAt(equation.Along));
            Add(context.Say(Phrase.ControlEnd), line.Length, line.AzimuthAt(line.Length));
            foreach (Wall wall in context.Project.Walls.Where(w => w.LayoutLine == line))
            {
                Add(context.Say(Phrase.Begin, wall.Name.ToUpperInvariant()), wall.Start, line.AzimuthAt(wall.Start));
                Add(context.Say(Phrase.End, wall.Name.ToUpperInvariant()), wall.End, line.AzimuthBefore(wall.End));
            }
        }
        return SheetTable.Of(context, Phrase.TableControl, Phrase.TableControlHeads, rows, Phrase.TableControlRemark);
    }

    private static string EquationWords(DrawingContext context, StationEquation equation) => context.Say(
        Phrase.ControlEquation, equation.Back.Text(context.Print.Unit), equation.Ahead.Text(context.Print.Unit));
}
