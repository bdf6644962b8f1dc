using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Sections;

/// <summary>A cross section of a wall: where it is cut and why there.</summary>
/// <param name="Number">From 1 through the whole set.</param>
/// <param name="Why">What it shows, in words.</param>
/// <param name="IsHighest">True at the greatest height of a design section.</param>
public sealed record SectionCut(int Number, Wall Wall, Section Section, double Along, string Why, bool IsHighest)
{
    private const double Same = 1e-6;

    public double Height => Wall.Top.At(Along) - Wall.Bottom.At(Along);

    /// <summary>
    /// Cuts along each wall in order of station: at the greatest height of every design section, through every group of structures and
    /// through every opening. Cuts at one place are one.
    /// </summary>
    public static IReadOnlyList<SectionCut> Choose(DrawingContext context)
    {
        var cuts = new List<SectionCut>();
        foreach (Wall wall in context.Project.Walls)
        {
            var found = new List<SectionCut>();
            foreach (Section section in wall.Sections)
                found.Add(new(0, wall, section, Highest(context.Quantities, wall, section), context.Say(Phrase.GreatestHeight, section.Name.ToUpperInvariant()), true));
            foreach ((double along, string names) in Groups(context.Project, wall))
                found.Add(new(0, wall, SectionAt(wall, along), along, context.Say(Phrase.Through, names), false));
            foreach (Opening opening in wall.Openings)
            {
                double middle = (opening.Start + opening.End) / 2;
                found.Add(new(0, wall, SectionAt(wall, middle), middle, context.Say(Phrase.Through, context.Say(Phrase.OpeningName, opening.Name.ToUpperInvariant())), false));
            }
            foreach (IGrouping<double, SectionCut> place in found.GroupBy(c => Math.Round(c.Along, 3)).OrderBy(g => g.Key))
            {
                SectionCut first = place.FirstOrDefault(c => c.IsHighest) ?? place.First();
                cuts.Add(first with { Number = cuts.Count + 1, Why = string.Join(", ", place.Select(c => c.Why)) });
            }
        }
        return cuts;
    }

    private static Section SectionAt(Wall wall, double along) => wall.Sections.LastOrDefault(s => s.Start <= along + Same) ?? wall.Sections[0];

    /// <summary>The place where a design section is as high as the take-off says: the profiles change their slope there.</summary>
    private static double Highest(QuantityTable quantities, Wall wall, Section section)
    {
        double greatest = quantities.Sections.FirstOrDefault(s => s.Wall == wall && s.Section == section)?.GreatestHeight ?? double.NaN;
        double[] places =
        [
            .. wall.Top.Points.Concat(wall.Bottom.Points).Select(p => p.Along).Append(section.Start).Append(section.End)
                .SelectMany(a => new[] { a, a - 1e-4 }).Where(a => a >= section.Start && a < section.End).Distinct().Order(),
        ];
        double best = places.MaxBy(a => wall.Top.At(a) - wall.Bottom.At(a));
        double[] equal = [.. places.Where(a => Math.Abs(wall.Top.At(a) - wall.Bottom.At(a) - greatest) < 1e-3)];
        // Rather inside than at the section's edge, where the cut would touch the next one.
        return equal.Length > 0 && !equal.Contains(best) ? equal[0] : best;
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
