using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;

namespace SheetGen.Layout.Revisions;

/// <summary>
/// The room to turn of nails of a layout. Each direction is asked of the one clearance query with the nail's own length; every other nail
/// stands as it is.
/// </summary>
public sealed class TurnWindows
{
    private const int MostShorter = 4;

    private readonly WallProject _project;
    private readonly NailLayout _layout;
    private readonly ClearanceScene _scene;
    private readonly Dictionary<string, int> _places;
    private readonly Dictionary<string, Face> _faces;

    public TurnWindows(WallProject project, NailLayout layout)
    {
        _project = project;
        _layout = layout;
        _scene = new ClearanceScene(project, [.. layout.Nails.Select(n => n.Hole)]);
        _places = layout.Nails.Select((n, i) => (n.Mark, i)).ToDictionary();
        _faces = project.Walls.ToDictionary(w => w.Name, w => new Face(w));
    }

    public TurnWindow Of(Nail nail)
    {
        RedirectRules rules = _project.Rules.Redirect;
        double[] splays = Steps(-rules.Maximum, rules.Maximum, rules.Step, nail.Splay);
        double low = Math.Min(Math.Min(rules.LeastInclination, nail.Inclination), nail.Section.Inclination - rules.FieldTolerance);
        double high = Math.Max(Math.Max(rules.GreatestInclination, nail.Inclination), nail.Section.Inclination + rules.FieldTolerance);
        double[] inclinations = Steps(low, high, rules.Step, nail.Inclination);
        TurnCell[] cells = CellsOf(nail, nail.Length, splays, inclinations);
        TurnCell now = Cell(nail, nail.Length, nail.Splay, nail.Inclination);
        TurnCell? Nearest(Func<TurnCell, bool> side) => cells.Where(c => c.State == TurnState.Free && side(c))
            .OrderBy(c => Math.Round(Math.Abs(c.Splay - nail.Splay) + Math.Abs(c.Inclination - nail.Inclination), Tolerance.Decimals)).ThenBy(c => Math.Abs(c.Inclination - nail.Inclination))
            .Select(c => (TurnCell?)c).FirstOrDefault();
        return new TurnWindow
        {
            Nail = nail,
            Splays = splays,
            Inclinations = inclinations,
            Cells = cells,
            FieldTolerance = rules.FieldTolerance,
            Now = now,
            UpStation = Nearest(c => c.Splay > nail.Splay + RevisionTolerance.SameTurn),
            DownStation = Nearest(c => c.Splay < nail.Splay - RevisionTolerance.SameTurn),
            Flatter = Nearest(c => c.Inclination < nail.Inclination - RevisionTolerance.SameTurn),
            Steeper = Nearest(c => c.Inclination > nail.Inclination + RevisionTolerance.SameTurn),
            Shorter = [.. ShorterOf(nail, splays, inclinations, cells.Count(c => c.State == TurnState.Free), now.State == TurnState.Free)],
        };
    }

    /// <summary>One direction of a nail, of a length of its own.</summary>
    public TurnCell Cell(Nail nail, double length, double splay, double inclination)
    {
        Face face = _faces[nail.Wall.Name];
        Hole hole = face.HoleAt(nail.Along, nail.Elevation, splay, inclination, length, nail.HoleDiameter, _project.Rules.Drift);
        string other = "";
        double worst = double.PositiveInfinity, least = double.PositiveInfinity;
        void Meet(string name, double clear, double required)
        {
            if (clear - required >= worst)
                return;
            (worst, least, other) = (clear - required, clear, name);
        }
        double asked = _project.Rules.NailClearance;
        var found = new List<int>();
        _scene.HolesCloserThan(hole, asked - Tolerance.Rounding, found);
        int own = _places[nail.Mark];
        bool isBlocked = false;
        foreach (int i in found.Where(i => i != own))
        {
            double clear = HoleDistance.Between(hole, _scene.Holes[i]).Clear;
            isBlocked |= clear < 0;
            Meet(_layout.Nails[i].Mark, clear, asked);
        }
        _scene.ObstaclesTooClose(hole, FaceLeg.Of(face, Head.Of(nail).Along), found);
        foreach (int i in found)
        {
            Obstacle obstacle = _scene.Obstacles[i];
            double clear = HoleDistance.ToSolid(hole, obstacle.Solid).Clear;
            if (clear >= obstacle.Required - Tolerance.Rounding)
                continue;
            isBlocked |= clear < 0;
            Meet(obstacle.Name, clear, obstacle.Required);
        }
        return new TurnCell(splay, inclination, isBlocked ? TurnState.Blocked : other.Length > 0 ? TurnState.Near : TurnState.Free, other, least);
    }

    private TurnCell[] CellsOf(Nail nail, double length, double[] splays, double[] inclinations) =>
        [.. inclinations.SelectMany(i => splays.Select(a => Cell(nail, length, a, i)))];

    /// <summary>Nails shorter by whole increments, down to half the length, where more directions are free than at the length before.</summary>
    private IEnumerable<ShorterNail> ShorterOf(Nail nail, double[] splays, double[] inclinations, int free, bool isFree)
    {
        int all = splays.Length * inclinations.Length, shown = 0;
        double step = Math.Max(_project.Rules.LengthIncrement, nail.Length / 40);
        for (int k = 1; nail.Length - k * step >= nail.Length / 2 - Tolerance.Rounding && free < all && shown < MostShorter; k++)
        {
            double length = Math.Round(nail.Length - k * step, Tolerance.Decimals);
            int now = CellsOf(nail, length, splays, inclinations).Count(c => c.State == TurnState.Free);
            bool stands = Cell(nail, length, nail.Splay, nail.Inclination).State == TurnState.Free;
            // A few directions more are no reason to shorten a nail: a tenth more, or the present one.
            if (now < free * 1.1 + 1 && stands == isFree)
                continue;
            (free, isFree, shown) = (now, stands, shown + 1);
            yield return new ShorterNail(length, now, stands);
        }
    }

    /// <summary>Whole steps from 0 within limits, and the present angle where it is none.</summary>
    private static double[] Steps(double low, double high, double step, double present)
    {
        int first = (int)Math.Ceiling(low / step - Tolerance.Rounding), last = (int)Math.Floor(high / step + Tolerance.Rounding);
        SortedSet<double> steps = [.. Enumerable.Range(first, last - first + 1).Select(k => Math.Round(k * step, Tolerance.RoundingDecimals))];
        if (!steps.Any(s => Math.Abs(s - present) < RevisionTolerance.SameTurn))
            steps.Add(present);
        return [.. steps];
    }
}
