using SheetGen.Model;

namespace SheetGen.Drawing.Sections;

/// <summary>A cross section of a wall: where it is cut and why there.</summary>
/// <param name="Number">From 1 through the whole set.</param>
/// <param name="Why">What it shows, in words.</param>
/// <param name="IsHighest">True at the greatest height of a section.</param>
public sealed record SectionCut(int Number, Wall Wall, Section Section, double Along, string Why, bool IsHighest)
{
    /// <summary>A cut at the greatest height of every section, and one through every group of obstructions.</summary>
    public static IReadOnlyList<SectionCut> Choose(WallProject project)
    {
        var cuts = new List<SectionCut>();
        foreach (Wall wall in project.Walls)
        {
            foreach (Section section in wall.Sections)
                cuts.Add(new(cuts.Count + 1, wall, section, Highest(wall, section), "GREATEST HEIGHT OF SECTION " + section.Name.ToUpperInvariant(), true));
            foreach ((double along, string names) in Groups(project, wall))
            {
                Section section = wall.Sections.LastOrDefault(s => s.Start <= along + 1e-9) ?? wall.Sections[0];
                cuts.Add(new(cuts.Count + 1, wall, section, along, "THROUGH " + names, false));
            }
        }
        return cuts;
    }

    private static double Highest(Wall wall, Section section)
    {
        const int Steps = 200;
        double best = (section.Start + section.End) / 2, height = double.NegativeInfinity;
        for (int i = 1; i < Steps; i++)
        {
            double at = section.Start + (section.End - section.Start) * i / Steps;
            double h = wall.Top.At(at) - wall.Bottom.At(at);
            if (h > height + 1e-9)
                (best, height) = (at, h);
        }
        return best;
    }

    /// <summary>Groups of structures that overlap along the wall; the cut goes through the nearest shaft, or the middle.</summary>
    private static IEnumerable<(double Along, string Names)> Groups(WallProject project, Wall wall)
    {
        double reach = wall.Sections.Max(s => s.Lengths.Max()) * 1.3;
        var spans = new List<(double From, double To, double Aim, string Name)>();
        foreach (Obstruction o in project.Obstructions.Where(o => o.Kind is not (ObstructionKind.Boundary or ObstructionKind.Pipe)))
        {
            LinePlace[] places = [.. o.Shape.Select(p => LayoutProjection.Locate(wall.LayoutLine, p.Plan))];
            double radius = o.Diameter / 2;
            double from = places.Min(p => p.Along) - radius, to = places.Max(p => p.Along) + radius;
            bool near = places.Any(p => p.Right * wall.Side is var off && off > -1 && off < reach);
            if (near && to > wall.Start && from < wall.End && o.Bottom < wall.Top.At(Math.Clamp((from + to) / 2, wall.Start, wall.End)) + 1)
                spans.Add((from, to, o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile ? places[0].Along : double.NaN, o.Name.ToUpperInvariant()));
        }
        spans.Sort((a, b) => a.From.CompareTo(b.From));
        for (int i = 0; i < spans.Count;)
        {
            double end = spans[i].To;
            int j = i + 1;
            while (j < spans.Count && spans[j].From <= end)
                end = Math.Max(end, spans[j++].To);
            var group = spans.GetRange(i, j - i);
            var aims = group.Where(s => !double.IsNaN(s.Aim)).ToList();
            double middle = (group[0].From + end) / 2;
            double at = aims.Count > 0 ? aims.MinBy(s => Math.Abs(s.Aim - middle)).Aim : middle;
            string names = string.Join(", ", group.Where(s => s.From <= at && s.To >= at).Select(s => s.Name));
            yield return (Math.Clamp(at, wall.Start, wall.End - 1e-6), names.Length > 0 ? names : group[0].Name);
            i = j;
        }
    }
}
