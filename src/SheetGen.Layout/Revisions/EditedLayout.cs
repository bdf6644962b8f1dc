using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Revisions;

/// <summary>A layout after a person has changed nails of it by hand: nothing is placed anew, every nail stands where the person left it.</summary>
/// <param name="Layout">The nails as they stand now.</param>
/// <param name="Changed">Marks of nails that were moved, turned, lengthened or added.</param>
/// <param name="Removed">Nails that are gone.</param>
public sealed record EditedLayout(NailLayout Layout, IReadOnlySet<string> Changed, IReadOnlyList<Nail> Removed)
{
    /// <summary>The layout with the nails of a drawing. What the drawing does not tell of a nail stays as it was.</summary>
    /// <param name="where">Where it was changed, as reasons print it: on the drawing so and so.</param>
    public static EditedLayout Of(WallProject project, NailLayout layout, IReadOnlyList<DrawnNail> drawn, string where)
    {
        var edit = new Edit(project, layout, "changed " + where);
        Dictionary<string, DrawnNail> byMark = drawn.Where(d => d.Was is not null).ToDictionary(d => d.Was!.Mark);
        var removed = new List<Nail>();
        foreach (Nail nail in layout.Nails)
        {
            if (byMark.TryGetValue(nail.Mark, out DrawnNail? now))
                edit.Keep(nail, now);
            else
                removed.Add(nail);
        }
        foreach (DrawnNail added in drawn.Where(d => d.Was is null).OrderBy(d => d.Along).ThenByDescending(d => d.Elevation))
            edit.Add(added);
        return Finish(project, layout, edit, removed, where);
    }

    private static EditedLayout Finish(WallProject project, NailLayout layout, Edit edit, List<Nail> removed, string where)
    {
        NailLayout now = layout with
        {
            Nails = [.. edit.InOrder()],
            LeftOut =
            [
                .. layout.LeftOut,
                .. removed.Where(n => n is { Kind: not NailKind.Verification, IsAdded: false })
                    .Select(n => new LeftOut(n.Mark, n.Wall, n.Section, n.Row, n.Column, n.Along, n.Elevation, "removed " + where)),
            ],
            Help = [],
            Notes = edit.Changed.Count + removed.Count == 0 ? layout.Notes : ["this layout was changed by hand; nothing of it was searched anew"],
            CutShort = edit.Changed.Count + removed.Count == 0 ? layout.CutShort : [],
        };
        if (edit.Changed.Count + removed.Count == 0)
            return new EditedLayout(layout, edit.Changed, removed);
        now = WithStatus(project, now, edit.Changed);
        return new EditedLayout(now with { Score = ScoreOf(project, now) }, edit.Changed, removed);
    }

    /// <summary>
    /// A layout that was built with the changed nails pinned, as the set of the drawing shows it: a changed nail that is too close to something
    /// is not to be drilled until the engineer decides.
    /// </summary>
    public static NailLayout Undecided(WallProject project, NailLayout built, IReadOnlySet<string> changed)
    {
        HashSet<string> close = TooClose(project, built);
        close.IntersectWith(changed);
        if (close.Count == 0)
            return built;
        NailLayout told = built with { Nails = [.. built.Nails.Select(n => close.Contains(n.Mark) && n.Kind != NailKind.Verification ? n with { Status = NailStatus.Unresolved } : n)] };
        return told with { Score = ScoreOf(project, told) };
    }

    /// <summary>Marks of nails that run into something or keep less than the required distance.</summary>
    private static HashSet<string> TooClose(WallProject project, NailLayout layout) =>
        [.. Checker.Check(project, layout).Findings
            .Where(f => f.Severity == Severity.Error && f.Code is FindingCode.NailNail or FindingCode.NailObstruction or FindingCode.NailBoundary or FindingCode.NailFace).SelectMany(f => f.Nails)];

    /// <summary>A changed nail that is too close to something is not to be drilled; one that was so before and is clear now may be.</summary>
    private static NailLayout WithStatus(WallProject project, NailLayout layout, IReadOnlySet<string> changed)
    {
        HashSet<string> close = TooClose(project, layout);
        NailStatus StatusOf(Nail n) => n.Kind == NailKind.Verification ? n.Status
            : close.Contains(n.Mark) ? (changed.Contains(n.Mark) || n.Status == NailStatus.Unresolved ? NailStatus.Unresolved : n.Status)
            : Turned(project, n);
        return layout with { Nails = [.. layout.Nails.Select(n => n with { Status = StatusOf(n) })] };
    }

    private static NailStatus Turned(WallProject project, Nail n)
    {
        double change = Math.Abs(n.Inclination - n.Section.Inclination), tolerance = project.Rules.Redirect.FieldTolerance + Tolerance.Rounding;
        if (Math.Abs(n.Splay) > tolerance || change > tolerance)
            return NailStatus.Noted;
        if (n.Splay != 0 || change > Tolerance.Rounding)
            return NailStatus.Redirected;
        return n.IsMoved ? NailStatus.Moved : NailStatus.Grid;
    }

    /// <summary>The figures found; a layout made by hand has no bounds.</summary>
    private static LayoutScore ScoreOf(WallProject project, NailLayout layout)
    {
        Nail[] nails = [.. layout.Nails.Where(n => n.Kind != NailKind.Verification)];
        double effort = nails.Sum(n => Math.Abs(n.Splay) + Math.Abs(n.Inclination - n.Section.Inclination) + (n.IsMoved ? 2 : 0)) + 3 * layout.LeftOut.Count;
        double cover = CoverFindings.Of(project, layout).Where(f => f.Code == FindingCode.Cover).Sum(f => f.ToStation - f.Station ?? 0);
        return new LayoutScore(
            new FoundAndBound(nails.Count(n => n.Status == NailStatus.Unresolved), null), new FoundAndBound(nails.Count(n => n.Status == NailStatus.Noted), null),
            new FoundAndBound(Math.Round(effort, Tolerance.Decimals), null))
        { Cover = new FoundAndBound(Math.Round(cover, Tolerance.Decimals), cover > 0 ? null : 0) };
    }

    /// <summary>The nails while they are edited.</summary>
    private sealed class Edit(WallProject project, NailLayout layout, string why)
    {
        private readonly List<Nail> _nails = [];
        private readonly HashSet<string> _marks = [.. layout.Nails.Select(n => n.Mark).Concat(layout.LeftOut.Select(l => l.Mark))];
        private readonly Marks _names = new(project);
        private readonly double _quantum = Lengths.Quantum(project.Unit);

        public HashSet<string> Changed { get; } = [];

        public IEnumerable<Nail> InOrder()
        {
            var walls = project.Walls.Select((w, i) => (w.Name, i)).ToDictionary();
            return _nails.OrderBy(n => walls[n.Wall.Name]).ThenBy(n => n.Section.Start).ThenBy(n => n.Kind == NailKind.Verification)
                .ThenBy(n => n.Row).ThenBy(n => n.Along).ThenBy(n => n.Mark, StringComparer.Ordinal);
        }

        public void Keep(Nail was, DrawnNail now)
        {
            bool isMoved = !ReferenceEquals(was.Wall, now.Wall) || Math.Abs(now.Along - was.Along) > 0.6 * _quantum;
            bool isLifted = now.Elevation is double z && Math.Abs(z - was.Elevation) > 0.6 * _quantum;
            double splay = now.Splay ?? was.Splay, inclination = now.Inclination ?? was.Inclination, length = now.Length ?? was.Length;
            if (!isMoved && !isLifted && Same(splay, was.Splay) && Same(inclination, was.Inclination) && Same(length, was.Length))
            {
                _nails.Add(was);
                return;
            }
            double along = isMoved ? now.Wall.LayoutLine.AlongOf(Lengths.RoundToQuantum(now.Wall.StationOf(now.Along), project.Unit)) : was.Along;
            double elevation = isLifted ? Lengths.RoundToQuantum(now.Elevation!.Value, project.Unit) : was.Elevation;
            Section section = SectionAt(now.Wall, along) ?? was.Section;
            Put(was with
            {
                Wall = now.Wall,
                Section = section,
                Splay = splay,
                Inclination = inclination,
                Length = length,
                IsMoved = was.IsMoved || isMoved || isLifted,
            }, along, elevation, was.GridStation);
        }

        public void Add(DrawnNail now)
        {
            double along = now.Wall.LayoutLine.AlongOf(Lengths.RoundToQuantum(now.Wall.StationOf(now.Along), project.Unit));
            double elevation = Lengths.RoundToQuantum(now.Elevation ?? now.Wall.Top.At(along), project.Unit);
            Section section = SectionAt(now.Wall, along) ?? now.Wall.Sections.MinBy(s => Math.Min(Math.Abs(s.Start - along), Math.Abs(s.End - along)))!;
            NailRow? row = layout.Rows.Where(r => ReferenceEquals(r.Section, section) && r.GridStations.Count > 0)
                .MinBy(r => (Math.Round(Math.Abs(r.ElevationAt(along) - elevation), Tolerance.Decimals), r.GridStations.Min(s => Math.Abs(s - along))));
            RowNumber number = row?.Number ?? RowNumber.Grid(1);
            int column = ColumnNear(now.Wall, section, number, along);
            Put(new Nail
            {
                Mark = FreeMark(now.Wall, section, number, column),
                Wall = now.Wall,
                Section = section,
                Row = number,
                Column = column,
                Kind = NailKind.Production,
                Along = along,
                Station = 0,
                Elevation = elevation,
                Splay = now.Splay ?? 0,
                Inclination = now.Inclination ?? section.Inclination,
                Length = now.Length ?? section.LengthOfRow(Math.Max(1, number.Whole)),
                Status = NailStatus.Moved,
                IsMoved = true,
                IsAdded = true,
                GridStation = Lengths.RoundToQuantum(now.Wall.StationOf(along), project.Unit),
                Hole = default,
            }, along, elevation, Lengths.RoundToQuantum(now.Wall.StationOf(along), project.Unit));
        }

        private void Put(Nail nail, double along, double elevation, double gridStation)
        {
            var face = new Face(nail.Wall);
            Changed.Add(nail.Mark);
            _nails.Add(nail with
            {
                Along = along,
                Station = Lengths.RoundToQuantum(nail.Wall.StationOf(along), project.Unit),
                Elevation = elevation,
                GridStation = gridStation,
                IsFixed = true,
                Hole = face.HoleAt(along, elevation, nail.Splay, nail.Inclination, nail.Length, nail.HoleDiameter, project.Rules.Drift),
                Reason = new NailReason(null, null, null, null, [], why),
            });
        }

        /// <summary>The mark of the column that it stands at, with the next free letter.</summary>
        private string FreeMark(Wall wall, Section section, RowNumber row, int column)
        {
            string mark;
            int further = 0;
            do
                mark = _names.Of(wall, section, row, new ColumnName(column, further++));
            while (!_marks.Add(mark));
            return mark;
        }

        /// <summary>Column of the row's grid station nearest to a place, whether it has a nail or not.</summary>
        private int ColumnNear(Wall wall, Section section, RowNumber row, double along) =>
            layout.Nails.Where(n => ReferenceEquals(n.Section, section) && n.Row == row && n is { IsAdded: false, Kind: not NailKind.Verification })
                .Select(n => (Along: wall.LayoutLine.AlongOf(n.GridStation), n.Column))
                .Concat(layout.LeftOut.Where(l => ReferenceEquals(l.Section, section) && l.Row == row).Select(l => (l.Along, l.Column)))
                .OrderBy(c => Math.Round(Math.Abs(c.Along - along), Tolerance.Decimals)).ThenBy(c => c.Along).Select(c => c.Column).FirstOrDefault(1);

        private static Section? SectionAt(Wall wall, double along) =>
            wall.Sections.FirstOrDefault(s => along >= s.Start && along < s.End) ?? wall.Sections.FirstOrDefault(s => Math.Abs(along - s.End) < Tolerance.SameLength);

        private static bool Same(double a, double b) => Math.Abs(a - b) < Tolerance.SameLength;
    }
}
