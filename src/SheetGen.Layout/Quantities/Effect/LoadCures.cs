using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>Tries what would bring a nail back within the engineer's limits: a longer nail, another place in its row, a nail added beside it.</summary>
internal sealed class LoadCures
{
    private const int MostLonger = 20, MostPlaces = 12;

    /// <summary>Spacings from a nail within which another may be added for it: as far as the nail next to its neighbour begins to carry.</summary>
    private const double ReachOfAdded = 1.5;

    private readonly WallProject _project;
    private readonly NailLayout _layout;
    private readonly Dictionary<Wall, (WallEffect Effect, FaceOutline Outline)> _walls = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<string, int> _numbers;
    private readonly Lazy<ClearanceScene> _scene;
    private readonly List<int> _found = [];

    public LoadCures(WallProject project, NailLayout layout)
    {
        (_project, _layout) = (project, layout);
        _scene = new Lazy<ClearanceScene>(() => new ClearanceScene(project, [.. layout.Nails.Select(n => n.Hole)]));
        _numbers = layout.Nails.Select((n, i) => (n.Mark, i)).ToDictionary(p => p.Mark, p => p.i);
    }

    /// <summary>Marks of the neighbours of a nail in its row.</summary>
    public IEnumerable<string> NeighboursOf(Nail nail)
    {
        (IReadOnlyList<Nail> row, int at) = RowOf(nail);
        return new[] { at - 1, at + 1 }.Where(i => i >= 0 && i < row.Count).Select(i => row[i].Mark);
    }

    /// <summary>What cures the nail, in words.</summary>
    public string Of(NailEffect nail, IReadOnlyDictionary<string, NailEffect> byMark)
    {
        string[] cures = [.. new[] { Longer(nail), Moved(nail, byMark), Added(nail) }.OfType<string>()];
        return cures.Length == 0
            ? "tried without success: a longer nail, another place in its row, a nail added beside it"
            : "would cure it (tried, clear of everything): " + string.Join(", or ", cures);
    }

    private string? Longer(NailEffect nail)
    {
        Nail n = nail.Nail;
        if (nail.Drawn.Lowest?.State != LimitState.Pullout || LoadLimits.IsOverArea(nail))
            return null;
        for (int i = 1; i <= MostLonger; i++)
        {
            double length = Math.Round(n.Length + i * _project.Rules.LengthIncrement, Tolerance.Decimals);
            if (!IsClear(n, Head.Of(n), n.Splay, n.Inclination, length, n))
                return null;
            if (!LoadLimits.IsUnder(n.Section, WallOf(n).Effect.Drawn(n, length)))
                return FormattableString.Invariant($"a nail of {length:0.##} {Lengths.Symbol(_project.Unit)} instead of {n.Length:0.##}");
        }
        return null;
    }

    /// <summary>Another place of the nail in its row that keeps the row's gaps and does not spoil a neighbour.</summary>
    private string? Moved(NailEffect nail, IReadOnlyDictionary<string, NailEffect> byMark)
    {
        Nail n = nail.Nail;
        (WallEffect wall, FaceOutline outline) = WallOf(n);
        (IReadOnlyList<Nail> row, int at) = RowOf(n);
        double reach = n.Section.HorizontalSpacing / 2, step = _project.Rules.ShiftStep;
        foreach (Along along in PlacesAround(new Along(n.Along), reach, step))
        {
            double widest = _project.Rules.MovedGapMax ?? n.Section.HorizontalSpacing;
            double[] gaps = [.. new[] { at - 1, at + 1 }.Where(i => i >= 0 && i < row.Count).Select(i => Math.Abs(new Along(row[i].Along) - along))];
            if (gaps.Any(g => g < _project.Rules.MinGap || g > Math.Max(widest, OldGap(row, at))) || HeadAt(wall, outline, n, along) is not { } head)
                continue;
            LegCells cells = wall.CellsAt(n).With(new HashSet<string> { n.Mark }, [(n.Mark, head)]);
            Along[] heads = [.. row.Select((o, i) => i == at ? along : new Along(o.Along))];
            if (!IsCured(wall, nail, head, cells.AreaOf(n.Mark), wall.WidthAmong(n, heads, at), n.Splay, n.Inclination)
                || !IsClear(n, head, n.Splay, n.Inclination, n.Length, n))
                continue;
            bool spoils = NeighboursOf(n).Select(m => byMark[m]).Any(o => Spoils(wall, o, cells.AreaOf(o.Nail.Mark)));
            if (!spoils)
                return $"its head at station {n.Wall.StationText(along, _project.Unit)}";
        }
        return null;
    }

    /// <summary>One nail more in its row, in the grid's direction or turned within the field tolerance.</summary>
    private string? Added(NailEffect nail)
    {
        Nail n = nail.Nail;
        (WallEffect wall, FaceOutline outline) = WallOf(n);
        (IReadOnlyList<Nail> row, int at) = RowOf(n);
        foreach (Along along in PlacesAround(new Along(n.Along), ReachOfAdded * n.Section.HorizontalSpacing, _project.Rules.ShiftStep * 2))
        {
            if (row.Any(o => Math.Abs(new Along(o.Along) - along) < _project.Rules.MinGap) || HeadAt(wall, outline, n, along) is not { } head)
                continue;
            Along[] heads = [.. row.Select(o => new Along(o.Along)).Append(along).Order()];
            LegCells cells = wall.CellsAt(n).With(new HashSet<string>(), [("added", head)]);
            if (!IsCured(wall, nail, Head.Of(n), cells.AreaOf(n.Mark), wall.WidthAmong(n, heads, Array.IndexOf(heads, new Along(n.Along))), n.Splay, n.Inclination))
                continue;
            foreach (double splay in Splays())
            {
                if (IsClear(n, head, splay, n.Section.Inclination, n.Section.LengthOfRow(Math.Max(1, n.Row.Whole)), null))
                    return $"a nail added in its row at station {n.Wall.StationText(along, _project.Unit)}" + (splay == 0 ? "" : FormattableString.Invariant($", splayed {Math.Abs(splay):0.##} degrees {(splay > 0 ? "up-station" : "down-station")}"));
            }
        }
        return null;
    }

    private bool IsCured(WallEffect wall, NailEffect nail, Head head, double area, double width, double splay, double inclination)
    {
        Nail n = nail.Nail;
        return !LoadLimits.IsOver(nail, area) && !LoadLimits.IsUnder(n.Section, wall.At(n.Section, n.Row, head, splay, inclination, n.Length, area, width));
    }

    /// <summary>True where a neighbour that was within the limits no longer would be.</summary>
    private static bool Spoils(WallEffect wall, NailEffect other, double area)
    {
        Nail n = other.Nail;
        PlaceEffect place = wall.At(n.Section, n.Row, Head.Of(n), n.Splay, n.Inclination, n.Length, area, other.Drawn.Width);
        return (LoadLimits.IsOver(other, area) && !LoadLimits.IsOverArea(other)) || (LoadLimits.IsUnder(n.Section, place) && !LoadLimits.IsUnder(n.Section, other.Drawn));
    }

    private static double OldGap(IReadOnlyList<Nail> row, int at) =>
        new[] { at - 1, at + 1 }.Where(i => i >= 0 && i < row.Count).Select(i => Math.Abs(row[i].Along - row[at].Along)).DefaultIfEmpty(0).Max();

    /// <summary>A head of the nail's row at a place, where the face has room for it.</summary>
    private Head? HeadAt(WallEffect wall, FaceOutline outline, Nail n, Along along)
    {
        Leg leg = wall.Face.LegAt(n.Along);
        Elevation elevation = wall.Grid.Of(n) is { } place ? new Elevation(place.Row.ElevationAt(along.Number)).Rounded(_project.Unit) : new Elevation(n.Elevation);
        var head = new Head(along, elevation);
        bool isIn = leg.Has(along) && along.Number > n.Section.Start && along.Number < n.Section.End && wall.Face.ToMitre(leg, head) >= _project.Rules.CornerClear
            && along - new Along(leg.Start) >= _project.Rules.EdgeMin && new Along(leg.End) - along >= _project.Rules.EdgeMin;
        return isIn && outline.Holds(head, Lengths.Quantum(_project.Unit)) ? head : null;
    }

    private bool IsClear(Nail like, Head head, double splay, double inclination, double length, Nail? instead)
    {
        Face face = WallOf(like).Effect.Face;
        Hole hole = face.HoleAt(head, splay, inclination, length, like.HoleDiameter, _project.Rules.Drift);
        int own = instead is null ? -1 : _numbers[instead.Mark];
        _scene.Value.HolesCloserThan(hole, _project.Rules.NailClearance, _found);
        if (_found.Any(i => i != own))
            return false;
        _scene.Value.ObstaclesTooClose(hole, FaceLeg.Of(face, head.Along), _found);
        return _found.Count == 0;
    }

    private IEnumerable<Along> PlacesAround(Along along, double reach, double step)
    {
        int most = Math.Min(MostPlaces, (int)Math.Floor(reach / step + Tolerance.Rounding));
        for (int i = 1; i <= most; i++)
        {
            yield return Rounded(along + i * step);
            yield return Rounded(along - i * step);
        }
        static Along Rounded(Along place) => new(Math.Round(place.Number, Tolerance.Decimals));
    }

    private IEnumerable<double> Splays()
    {
        RedirectRules rules = _project.Rules.Redirect;
        yield return 0;
        for (double splay = rules.Step; splay <= Math.Min(rules.FieldTolerance, rules.Maximum) + Tolerance.Rounding; splay += rules.Step)
        {
            yield return splay;
            yield return -splay;
        }
    }

    private (IReadOnlyList<Nail> Row, int At) RowOf(Nail nail)
    {
        IReadOnlyList<Nail> row = WallOf(nail).Effect.RowOf(nail);
        return (row, row.ToList().FindIndex(n => n.Mark == nail.Mark));
    }

    private (WallEffect Effect, FaceOutline Outline) WallOf(Nail nail)
    {
        if (!_walls.TryGetValue(nail.Wall, out (WallEffect, FaceOutline) wall))
        {
            var effect = new WallEffect(_project, nail.Wall, _layout);
            _walls[nail.Wall] = wall = (effect, new FaceOutline(effect.Face, _project.Rules.EdgeMin));
        }
        return wall;
    }
}
