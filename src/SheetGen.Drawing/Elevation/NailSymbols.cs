using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>
/// The nail blocks, told apart by shape and fill, in millimetres of paper. A turned nail points along +x of its block,
/// which the reference turns toward the tip.
/// </summary>
public static class NailSymbols
{
    public const double Radius = 1.1;
    public const double Ring = 1.65;
    private const LayerRole On = LayerRole.Nail;

    /// <summary>The one attribute that is seen.</summary>
    public const string Mark = "MARK";

    public static IReadOnlyList<string> Tags { get; } =
        [Mark, "ROW", "STATION", "ELEVATION", "SPLAY", "SIDE", "INCLINATION", "LENGTH", "BAR", "STATUS"];

    public static string BlockOf(Nail nail) => BlockOf(nail.Kind, nail.Status, nail.IsFixed);

    /// <param name="isPinned">True for a nail that the project file pins.</param>
    public static string BlockOf(NailKind kind, NailStatus status, bool isPinned = false)
    {
        string pinned = isPinned ? "-PINNED" : "";
        string name = status switch
        {
            NailStatus.Grid => "NAIL-GRID",
            NailStatus.Moved => "NAIL-MOVED",
            NailStatus.Redirected => "NAIL-TURNED",
            NailStatus.Noted => "NAIL-NOTED",
            _ => "NAIL-STOP",
        };
        return kind switch
        {
            NailKind.Proof => name + "-PROOF" + pinned,
            NailKind.Verification => name + "-VERIFY" + pinned,
            _ => name + pinned,
        };
    }

    public static IReadOnlyList<BlockDefinition> All { get; } =
        [.. from pinned in new[] { false, true } from kind in Enum.GetValues<NailKind>() from status in Enum.GetValues<NailStatus>() select Define(kind, status, pinned)];

    private static BlockDefinition Define(NailKind kind, NailStatus status, bool isPinned)
    {
        var lines = new List<Primitive>(StatusLines(status));
        if (kind == NailKind.Proof)
            lines.Add(new Circle(On, default, Ring));
        if (kind == NailKind.Verification)
            lines.Add(Polyline.Of(On, [new(Ring + 0.3, 0), new(0, Ring + 0.3), new(-Ring - 0.3, 0), new(0, -Ring - 0.3)], true));
        if (isPinned)
        {
            // Stubs at four corners: the place is held.
            foreach (int quarter in Enumerable.Range(0, 4))
            {
                Point2 way = new Point2(1, 0).Turned(Math.PI / 4 + quarter * Math.PI / 2);
                lines.Add(new Line(On, way * Radius, way * (Ring + 0.35)));
            }
        }
        BlockAttribute[] attributes =
            [.. Tags.Select((tag, i) => new BlockAttribute(tag, tag, new(2, -3 * i), 2, tag == Mark, TextRole.Label, On))];
        return new(BlockOf(kind, status, isPinned), lines, attributes, true);
    }

    private static IEnumerable<Primitive> StatusLines(NailStatus status)
    {
        yield return new Circle(On, default, Radius);
        switch (status)
        {
            case NailStatus.Grid:
                break;
            case NailStatus.Moved:
                yield return new Line(On, new(0, -Radius), new(0, Radius));
                break;
            case NailStatus.Redirected:
                yield return new Fill(On, [new(new(0, -Radius), 1), new(new(0, Radius))]);
                break;
            case NailStatus.Noted:
                yield return Fill.Disc(On, default, Radius);
                yield return new Line(On, new(Radius, 0), new(2.6, 0));
                yield return Fill.Of(On, new(3.4, 0), new(2.2, 0.55), new(2.2, -0.55));
                break;
            default:
                yield return Polyline.Rectangle(On, Box.At(default, 2 * Ring, 2 * Ring));
                yield return new Line(On, new(-Ring, -Ring), new(Ring, Ring));
                yield return new Line(On, new(-Ring, Ring), new(Ring, -Ring));
                break;
        }
    }

    public static LayerRole LayerOf(Nail nail) => nail.Status switch
    {
        NailStatus.Unresolved => LayerRole.NailUnresolved,
        NailStatus.Noted => LayerRole.NailNoted,
        _ => nail.Kind == NailKind.Production ? LayerRole.Nail : LayerRole.NailTest,
    };

    /// <summary>Degrees by which the block is turned so that it points to the tip's side on the drawing.</summary>
    public static double TurnOf(Nail nail, int drawingSign)
    {
        if (nail.Status is not (NailStatus.Redirected or NailStatus.Noted))
            return 0;
        if (nail.Splay != 0)
            return nail.Splay * drawingSign > 0 ? 0 : 180;
        return Sides.InclinationChange(nail) > 0 ? 270 : 90;
    }

    /// <summary>Boxes on paper, about the nail's place, that texts keep off.</summary>
    public static IEnumerable<Box> Footprint(Nail nail, int drawingSign)
    {
        double half = nail.Kind == NailKind.Verification ? Ring + 0.3 : nail.Kind == NailKind.Proof || nail.Status == NailStatus.Unresolved || nail.IsFixed ? Ring : Radius;
        yield return Box.At(default, 2 * half, 2 * half);
        if (nail.Status == NailStatus.Noted)
        {
            Point2 tip = new Point2(3.4, 0).Turned(TurnOf(nail, drawingSign) * Math.PI / 180);
            yield return Box.Around([default, tip]).Grown(0.55);
        }
    }

    /// <param name="mark">The mark as it is shown, in model space.</param>
    /// <param name="isAccepted">True for a nail without a clear place that the engineer has accepted: its symbol does not forbid it.</param>
    public static BlockReference Reference(Nail nail, ElevationStrip strip, double unitsPerMillimetre, Printed print, Text mark, bool isAccepted) =>
        new(isAccepted ? LayerRole.Nail : LayerOf(nail), isAccepted ? BlockOf(nail.Kind, NailStatus.Grid, nail.IsFixed) : BlockOf(nail), strip.At(nail.Along, nail.Elevation), unitsPerMillimetre, TurnOf(nail, strip.Sign), Attributes(nail, print))
        {
            Nail = nail.Mark,
            Data = [nail.Mark],
            Shown = new(Mark, mark),
        };

    private static KeyValuePair<string, string>[] Attributes(Nail nail, Printed print)
    {
        string[] values =
        [
            nail.Mark, nail.Row.ToString(), print.Station(nail), print.Elevation(nail.Elevation),
            Printed.Number(nail.Splay, 2), SideWords(nail), Printed.Number(nail.Inclination, 2),
            Printed.Number(nail.Length, 3), nail.Bar.ToString(), nail.Status.ToString().ToLowerInvariant(),
        ];
        return [.. Tags.Zip(values, KeyValuePair.Create)];
    }

    private static string SideWords(Nail nail) =>
        nail.Splay == 0 ? "" : Sides.Of(nail.Wall, nail.Splay) + " " + Sides.ByStation(nail.Splay);
}
