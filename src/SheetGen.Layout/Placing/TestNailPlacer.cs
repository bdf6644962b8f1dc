using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Adds the verification test nails, clear of everything, and marks proof test nails. Neither changes a production nail's place. Places
/// half way between neighbours of a row come first, then all places of a fine grid; straight holes before turned ones.
/// </summary>
internal sealed class TestNailPlacer
{
    private readonly WallProject _project;
    private readonly Face _face;
    private readonly IReadOnlyList<Bay> _bays;
    private readonly FaceOutline _outline;
    private readonly ClearanceScene _scene;
    private readonly List<Hole> _added;
    private readonly double _apart;
    private readonly List<int> _found = [];
    private readonly int _mostTurned;
    private readonly List<CutShort> _cutShort = [];

    private TestNailPlacer(WallProject project, Face face, ClearanceScene scene, List<Hole> added, int mostTurned)
    {
        (_project, _face, _scene, _added, _mostTurned) = (project, face, scene, added, mostTurned);
        _bays = Bay.Of(face, project.Rules, project.Unit);
        _outline = new FaceOutline(face, project.Rules.EdgeMin);
        _apart = SpacingFindings.LeastBesideTest(project.Unit);
    }

    /// <summary>The nails with the test nails; a verification test nail that finds no place is not among them (the checker counts them).</summary>
    /// <param name="mostTurned">Turned holes that are looked at for each; where that ended the search it is told.</param>
    public static (List<Nail> Nails, IReadOnlyList<CutShort> CutShort) Add(
        WallProject project, IReadOnlyList<Face> faces, List<Nail> nails, Marks marks, int mostTurned)
    {
        var cutShort = new List<CutShort>();
        var all = new List<Nail>(nails);
        var scene = new ClearanceScene(project, [.. nails.Select(n => n.Hole)]);
        var added = new List<Hole>();
        foreach (Face face in faces)
        {
            var placer = new TestNailPlacer(project, face, scene, added, mostTurned);
            foreach (VerificationPlan plan in VerificationPlan.Of(face.Wall))
            {
                Nail[] own = [.. nails.Where(n => n.Wall == face.Wall && n.Section == plan.Section)];
                if (placer.Find(plan, own) is not { } found)
                    continue;
                added.Add(found.Hole);
                all.Add(found with { Mark = marks.Verification(face.Wall, plan.Section, plan.Number), Column = plan.Number });
            }
            cutShort.AddRange(placer._cutShort);
        }
        return (ProofMarks.Mark(all), cutShort);
    }

    private readonly record struct Candidate(Head Head, double Length);

    private Nail? Find(VerificationPlan plan, Nail[] own)
    {
        if (own.Length == 0)
            return null;
        List<Candidate> candidates = [.. Sorted(Between(own), plan, own), .. Sorted(Everywhere(plan.Section, own), plan, own)];
        Turning[] turnings = [.. new Turnings(plan.Section, _project.Rules).All.TakeWhile(t => !t.IsNoted)];
        foreach (Candidate candidate in candidates)
        {
            if (TryPlace(plan.Section, candidate, turnings[0]) is { } nail)
                return nail;
        }
        int looks = 0;
        foreach (Candidate candidate in candidates)
        {
            foreach (Turning turning in turnings.Skip(1))
            {
                if (++looks > _mostTurned)
                {
                    _cutShort.Add(Told(plan.Section));
                    return null;
                }
                if (TryPlace(plan.Section, candidate, turning) is { } nail)
                    return nail;
            }
        }
        return null;
    }

    private CutShort Told(Section section) => new(_face.Wall, _face.Wall.StationOf(section.Start), _face.Wall.StationOf(section.End), FormattableString.Invariant(
        $"{_face.Wall.Name}, section {section.Name}: the search for a verification test nail stopped after {_mostTurned:#,##0} turned holes, before every place was tried"));

    private static IEnumerable<Candidate> Sorted(IEnumerable<Candidate> candidates, VerificationPlan plan, Nail[] own)
    {
        Elevation middle = new(own.Average(n => n.Elevation));
        return candidates.OrderBy(p => Math.Round(Math.Abs(p.Head.Along - plan.Target), Tolerance.Decimals)).ThenBy(p => Math.Round(Math.Abs(p.Head.Elevation - middle), Tolerance.Decimals))
            .ThenBy(p => p.Head.Along).ThenBy(p => p.Head.Elevation);
    }

    private Nail? TryPlace(Section section, Candidate candidate, Turning turning)
    {
        Hole hole = _face.HoleAt(candidate.Head, turning.Splay, turning.Inclination, candidate.Length, section.HoleDiameter, _project.Rules.Drift);
        if (!IsClear(hole, candidate.Head))
            return null;
        Station station = _face.Wall.StationOf(candidate.Head.Along).Rounded(_project.Unit);
        return new Nail
        {
            Mark = "",
            Wall = _face.Wall,
            Section = section,
            Row = new RowNumber(0),
            Column = 0,
            Kind = NailKind.Verification,
            Along = candidate.Head.Along.Number,
            Station = station.Number,
            Elevation = candidate.Head.Elevation.Number,
            Splay = turning.Splay,
            Inclination = turning.Inclination,
            Length = candidate.Length,
            Status = turning.IsStraight ? NailStatus.Grid : NailStatus.Redirected,
            GridStation = station.Number,
            Hole = hole,
        };
    }

    /// <summary>Half way between neighbours of a row, at the row's level and half way to the next row.</summary>
    private IEnumerable<Candidate> Between(Nail[] own)
    {
        foreach (IGrouping<RowNumber, Nail> row in own.GroupBy(n => n.Row))
        {
            double length = LengthOf(row);
            Nail[] line = [.. row.OrderBy(n => n.Along)];
            for (int i = 0; i + 1 < line.Length; i++)
            {
                Nail a = line[i], b = line[i + 1];
                Head left = Head.Of(a), right = Head.Of(b);
                if (right.Along - left.Along > Tolerance.BrokenRun * a.Section.HorizontalSpacing)
                    continue;
                foreach (double drop in (double[])[0, a.Section.VerticalSpacing / 2])
                {
                    if (At(a.Section, new Head(Along.Middle(left.Along, right.Along), Elevation.Middle(left.Elevation, right.Elevation) - drop), length) is { } candidate)
                        yield return candidate;
                }
            }
        }
    }

    /// <summary>Places of a grid four times as fine as the section's; each with the length of the row next above it.</summary>
    private IEnumerable<Candidate> Everywhere(Section section, Nail[] own)
    {
        (Elevation Level, double Length)[] rows = [.. own.GroupBy(n => n.Row).Select(r => (new Elevation(r.Average(n => n.Elevation)), LengthOf(r))).OrderBy(r => r.Item1)];
        double across = section.HorizontalSpacing / 4, down = section.VerticalSpacing / 4;
        for (Along along = new(section.Start + across); along.Number < section.End; along += across)
        {
            Elevation bottom = _face.Wall.Bottom.At(along), top = _face.Wall.Top.At(along);
            for (Elevation z = top - _project.Rules.EdgeMin; z >= bottom + _project.Rules.EdgeMin; z -= down)
            {
                double length = rows.Where(r => r.Level >= z).Select(r => r.Length).Append(rows[^1].Length).First();
                if (At(section, new Head(along, z), length) is { } candidate)
                    yield return candidate;
            }
        }
    }

    private Candidate? At(Section section, Head near, double length)
    {
        Bay? bay = _bays.FirstOrDefault(b => b.Section == section && b.Leg.Has(near.Along));
        if (bay is null)
            return null;
        double quantum = Lengths.Quantum(_project.Unit);
        var head = new Head(bay.Rounded(near.Along), near.Elevation.Rounded(_project.Unit));
        return bay.Holds(head, quantum) && _outline.Holds(head, quantum) ? new Candidate(head, length) : null;
    }

    /// <summary>Length of a row's nails as most of them have it (a turned nail may be longer), or the tested length where the project gives it.</summary>
    private double LengthOf(IEnumerable<Nail> row) => _project.Rates.TestBondedLength is { } bonded
        ? bonded + (_project.Rates.TestFreeLength ?? 0)
        : row.GroupBy(n => n.Length).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First().Key;

    private bool IsClear(in Hole hole, Head head)
    {
        _scene.ObstaclesTooClose(hole, FaceLeg.Of(_face, head.Along), _found);
        if (_found.Count > 0)
            return false;
        double required = _project.Rules.NailClearance;
        _scene.HolesCloserThan(hole, Math.Max(required, _apart), _found);
        foreach (int i in _found)
        {
            if (!IsClear(hole, _scene.Holes[i], required))
                return false;
        }
        foreach (Hole other in _added)
        {
            if (!IsClear(hole, other, required))
                return false;
        }
        return true;
    }

    private bool IsClear(in Hole hole, in Hole other, double required) =>
        (other.Head - hole.Head).Length >= _apart - Tolerance.Rounding && !HoleDistance.CloserThan(hole, other, required - Tolerance.Rounding);
}
