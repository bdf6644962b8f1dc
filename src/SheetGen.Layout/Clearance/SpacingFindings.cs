using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Clearance;

/// <summary>Neighbours that stand nearer than the least gap: in a row, across a section limit, beside a verification test nail.</summary>
internal static class SpacingFindings
{
    public static IEnumerable<Finding> Of(WallProject project, IReadOnlyList<Nail> nails, IReadOnlyDictionary<string, Face> faces)
    {
        double slack = Tolerance.Checked(project.Unit);
        List<Standing> all = [.. nails.Select(n => Standing.Of(n, faces[n.Wall.Name]))];
        return InRows(project, all, slack).Concat(AtLimits(project, all, slack)).Concat(BesideTests(project, all, slack));
    }

    /// <summary>Heads that stand on one another, of whatever row or leg: such nails always run into each other too.</summary>
    /// <param name="clear">The findings of clear distances.</param>
    public static IEnumerable<Finding> OnOneAnother(IReadOnlyList<Finding> clear, NailLayout layout, LengthUnit unit)
    {
        double least = Tolerance.Checked(unit);
        Dictionary<string, Nail> byMark = layout.Nails.ToDictionary(n => n.Mark);
        foreach (Finding pair in clear.Where(f => f.Code == FindingCode.NailNail))
        {
            Nail a = byMark[pair.Nails[0]], b = byMark[pair.Nails[1]];
            double apart = (a.Hole.Head - b.Hole.Head).Length;
            if (apart > least)
                continue;
            yield return Of(a, b, apart, least, "", unit) with
            {
                Code = FindingCode.DuplicateHead,
                Required = null,
                Message = $"{a.Mark} and {b.Mark} start at one place: their heads are {Figures.Length(apart, unit)} apart",
            };
        }
    }

    private static IEnumerable<Finding> InRows(WallProject project, List<Standing> all, double slack)
    {
        double required = project.Rules.MinGap;
        var rows = all.Where(s => s.Nail.Kind != NailKind.Verification)
            .GroupBy(s => (s.Leg, s.Nail.Section.Name, s.Nail.Row));
        foreach (var row in rows)
        {
            Standing? before = null;
            foreach (Standing nail in row.OrderBy(s => s.Head.Along))
            {
                if (before is not null)
                {
                    double gap = nail.Face.Distance(before.Head.Along, nail.Head.Along, nail.Head.Elevation);
                    if (gap < required - slack)
                        yield return Of(before.Nail, nail.Nail, gap, required, "in their row", project.Unit);
                }
                before = nail;
            }
        }
    }

    private static IEnumerable<Finding> AtLimits(WallProject project, List<Standing> all, double slack)
    {
        double required = project.Rules.MinGap;
        foreach (Wall wall in project.Walls)
        {
            List<Section> sections = [.. wall.Sections.OrderBy(s => s.Start)];
            for (int i = 0; i + 1 < sections.Count; i++)
            {
                Section before = sections[i], after = sections[i + 1];
                double near = Math.Min(before.VerticalSpacing, after.VerticalSpacing) / 2 - Tolerance.Rounding;
                List<Standing> left = NearLimit(all, wall, before, new Along(after.Start), required);
                List<Standing> right = NearLimit(all, wall, after, new Along(after.Start), required);
                foreach (Standing a in left)
                {
                    foreach (Standing b in right)
                    {
                        double gap = Math.Abs(b.Head.Along - a.Head.Along);
                        if (a.Leg == b.Leg && Math.Abs(a.Head.Elevation - b.Head.Elevation) < near && gap < required - slack)
                            yield return Of(a.Nail, b.Nail, gap, required, "on two sides of a section limit", project.Unit);
                    }
                }
            }
        }
    }

    private static List<Standing> NearLimit(List<Standing> all, Wall wall, Section section, Along limit, double within) =>
        [.. all.Where(s => s.Nail.Kind != NailKind.Verification && s.Nail.Wall.Name == wall.Name
            && s.Nail.Section.Name == section.Name && Math.Abs(s.Head.Along - limit) < within)];

    /// <summary>Least distance of the head of a verification test nail from every other head: 1 ft or 0.3 m (common practice, no source).</summary>
    public static double LeastBesideTest(LengthUnit unit) => Lengths.IsFoot(unit) ? 1 : 0.3;

    private static IEnumerable<Finding> BesideTests(WallProject project, List<Standing> all, double slack)
    {
        double required = LeastBesideTest(project.Unit);
        for (int i = 0; i < all.Count; i++)
        {
            Standing test = all[i];
            if (test.Nail.Kind != NailKind.Verification)
                continue;
            for (int k = 0; k < all.Count; k++)
            {
                if (k == i || (k < i && all[k].Nail.Kind == NailKind.Verification))
                    continue;
                double gap = (test.Point - all[k].Point).Length;
                if (gap < required - slack)
                    yield return Of(test.Nail, all[k].Nail, gap, required, "head to head, one a verification test nail", project.Unit);
            }
        }
    }

    private static Finding Of(Nail a, Nail b, double gap, double required, string where, LengthUnit unit)
    {
        return new Finding
        {
            Code = FindingCode.Spacing,
            Severity = Severity.Error,
            Wall = a.Wall,
            Nails = [a.Mark, b.Mark],
            Station = a.Station,
            Elevation = a.Elevation,
            Clear = gap,
            Required = required,
            Message = $"{a.Mark} and {b.Mark} stand {Figures.Beside(gap, required, unit)} apart {where}; {Figures.Length(required, unit)} is required",
        };
    }

    private sealed record Standing(Nail Nail, Head Head, FaceLeg Leg, Face Face)
    {
        public static Standing Of(Nail nail, Face face)
        {
            var head = Head.AsStationed(nail);
            return new Standing(nail, head, FaceLeg.Of(face, head.Along), face);
        }

        public Vector3D Point => Face.PointAt(Head);
    }
}
