using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Adds the verification test nails, between production nails and clear of everything, and marks proof test nails where the
/// project asks for evenly spread ones. Neither changes a production nail's place.
/// </summary>
public static class TestNailPlacer
{
    public static List<Nail> Add(Site site, List<Nail> nails, Marks marks, out IReadOnlyList<string> notes)
    {
        var said = new List<string>();
        var all = new List<Nail>(nails);
        WallProject project = site.Project;
        double cell = Math.Max(nails.Select(n => n.Length).DefaultIfEmpty(1).Max() / 4, 1e-3);
        var index = new HoleCells(cell);
        foreach (Nail nail in nails)
            index.Add(nail.Hole);
        foreach (Face face in site.Faces)
        {
            var outline = new FaceOutline(face, project.Rules.EdgeMin);
            foreach ((Section section, double target, int number) in Wanted(face.Wall))
            {
                Nail[] own = [.. nails.Where(n => n.Wall == face.Wall && n.Section == section)];
                if (Find(site, face, outline, section, own, target, index) is not { } found)
                {
                    said.Add($"no clear place was found for verification test nail {number} of section {section.Name}");
                    continue;
                }
                index.Add(found.Hole);
                all.Add(found with { Mark = marks.Verification(face.Wall, section, number), Column = number });
            }
        }
        notes = said;
        return MarkProof(all);
    }

    private static IEnumerable<(Section Section, double Target, int Number)> Wanted(Wall wall)
    {
        Section? perWall = wall.Sections.FirstOrDefault(s => s.TestNails.VerificationPerWall && s.TestNails.Verification > 0);
        if (perWall is not null)
        {
            int count = wall.Sections.Where(s => s.TestNails.VerificationPerWall).Max(s => s.TestNails.Verification);
            var numbers = new Dictionary<Section, int>(ReferenceEqualityComparer.Instance);
            for (int i = 0; i < count; i++)
            {
                double target = wall.Start + (wall.End - wall.Start) * (i + 0.5) / count;
                Section section = wall.Sections.First(s => target <= s.End || s == wall.Sections[^1]);
                numbers[section] = numbers.GetValueOrDefault(section) + 1;
                yield return (section, target, numbers[section]);
            }
        }
        foreach (Section section in wall.Sections)
        {
            if (section.TestNails.VerificationPerWall)
                continue;
            for (int i = 0; i < section.TestNails.Verification; i++)
                yield return (section, section.Start + (section.End - section.Start) * (i + 0.5) / section.TestNails.Verification, i + 1);
        }
    }

    private static Nail? Find(
        Site site, Face face, FaceOutline outline, Section section, Nail[] own, double target, HoleCells index)
    {
        foreach ((Head head, double length) in Places(site, face, outline, own, target))
        {
            foreach (Turning turning in new Turnings(section, site.Project.Rules).All.Take(1))
            {
                Hole hole = face.HoleAt(
                    head.Along, head.Elevation, turning.Splay, turning.Inclination, length, section.HoleDiameter, site.Project.Rules.Drift);
                if (!IsClear(site, face, hole, head, index))
                    continue;
                double station = face.Wall.StationOf(head.Along);
                return new Nail
                {
                    Mark = "",
                    Wall = face.Wall,
                    Section = section,
                    Row = new RowNumber(0),
                    Column = 0,
                    Kind = NailKind.Verification,
                    Along = head.Along,
                    Station = Lengths.RoundToQuantum(station, site.Project.Unit),
                    Elevation = head.Elevation,
                    Splay = turning.Splay,
                    Inclination = turning.Inclination,
                    Length = length,
                    Status = NailStatus.Grid,
                    GridStation = Lengths.RoundToQuantum(station, site.Project.Unit),
                    Hole = hole,
                };
            }
        }
        return null;
    }

    /// <summary>Half way between neighbours of a row, at the row's level and half way to the next row, nearest to the target first.</summary>
    private static IEnumerable<(Head Head, double Length)> Places(Site site, Face face, FaceOutline outline, Nail[] own, double target)
    {
        WallProject project = site.Project;
        double quantum = Lengths.Quantum(project.Unit);
        double? tested = project.Rates.TestBondedLength is { } bonded && project.Rates.TestFreeLength is { } free ? bonded + free : null;
        var places = new List<(Head Head, double Length)>();
        foreach (IGrouping<RowNumber, Nail> row in own.GroupBy(n => n.Row))
        {
            Nail[] line = [.. row.OrderBy(n => n.Along)];
            for (int i = 0; i + 1 < line.Length; i++)
            {
                Nail a = line[i], b = line[i + 1];
                if (b.Along - a.Along > 1.5 * a.Section.HorizontalSpacing || face.LegAt(a.Along) != face.LegAt(b.Along))
                    continue;
                double along = GridStations.Rounded(face.Wall.LayoutLine, (a.Along + b.Along) / 2, project.Unit);
                foreach (double drop in (double[])[0, a.Section.VerticalSpacing / 2])
                {
                    double elevation = Lengths.RoundToQuantum((a.Elevation + b.Elevation) / 2 - drop, project.Unit);
                    var head = new Head(along, elevation);
                    if (outline.Holds(head, quantum))
                        places.Add((head, tested ?? Math.Min(a.Length, b.Length)));
                }
            }
        }
        double middle = own.Length == 0 ? 0 : own.Average(n => n.Elevation);
        return places.OrderBy(p => Math.Round(Math.Abs(p.Head.Along - target), 6)).ThenBy(p => Math.Round(Math.Abs(p.Head.Elevation - middle), 6))
            .ThenBy(p => p.Head.Along).ThenBy(p => p.Head.Elevation);
    }

    private static bool IsClear(Site site, Face face, Hole hole, Head head, HoleCells index)
    {
        Rules rules = site.Project.Rules;
        double apart = site.Project.Unit == LengthUnit.Metre ? 0.3 : 1;
        StillSolid[] still = site.Near(face, face.LegAt(head.Along).Index, hole.Head, hole.Length + hole.RadiusAt(hole.Length));
        if (still.Any(s => HoleDistance.CloserThan(hole, s.Solid, s.Required - 1e-9)))
            return false;
        foreach (Hole other in index.Near(hole, rules.NailClearance))
        {
            if ((other.Head - hole.Head).Length < apart - 1e-9 || HoleDistance.CloserThan(hole, other, rules.NailClearance - 1e-9))
                return false;
        }
        return true;
    }

    /// <summary>The stated share of a section's production nails, rounded up, evenly spread along it where the project asks for marks.</summary>
    private static List<Nail> MarkProof(List<Nail> nails)
    {
        var marked = new HashSet<string>();
        foreach (var section in nails.Where(n => n.Kind == NailKind.Production).GroupBy(n => (n.Wall, n.Section)))
        {
            TestNails tests = section.Key.Section.TestNails;
            if (!tests.SpreadProofMarks || tests.ProofShare <= 0)
                continue;
            Nail[] able = [.. section.Where(n => n.Status != NailStatus.Unresolved).OrderBy(n => n.Along).ThenBy(n => n.Row)];
            int count = Math.Min(able.Length, ProofCount(tests, section.Count()));
            for (int i = 0; i < count; i++)
                marked.Add(able[(int)((i + 0.5) * able.Length / count)].Mark);
        }
        return [.. nails.Select(n => marked.Contains(n.Mark) ? n with { Kind = NailKind.Proof } : n)];
    }

    /// <summary>Number of proof test nails among so many production nails: the share, rounded up.</summary>
    public static int ProofCount(TestNails tests, int production) => (int)Math.Ceiling(tests.ProofShare * production - 1e-9);
}
