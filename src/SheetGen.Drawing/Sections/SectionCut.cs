using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sections;

/// <summary>A cross section of a wall: where it is cut and why there.</summary>
/// <param name="Number">From 1 through the whole set.</param>
/// <param name="Why">What it shows, in words.</param>
/// <param name="IsHighest">True at the greatest height of a design section.</param>
public sealed record SectionCut(int Number, Wall Wall, Section Section, double Along, string Why, bool IsHighest)
{
    private const double Same = 1e-6;

    public double Height => Wall.Top.At(Along) - Wall.Bottom.At(Along);

    /// <summary>The cut that stands for the whole; null where there is none.</summary>
    public static SectionCut? Highest(IReadOnlyList<SectionCut> cuts) => cuts.Where(c => c.IsHighest).MaxBy(c => c.Height);

    /// <summary>
    /// Cuts along each wall in order of station: at the greatest height of every design section, and again beyond every corner; through
    /// every group of structures, every opening, and every pipe that no other cut shows. Cuts at one place are one.
    /// </summary>
    public static IReadOnlyList<SectionCut> Choose(DrawingContext context)
    {
        var cuts = new List<SectionCut>();
        foreach (Wall wall in context.Project.Walls)
        {
            var found = new List<SectionCut>();
            foreach (Section section in wall.Sections)
                found.AddRange(Heights(context, wall, section));
            foreach ((double along, string names) in Groups(context.Project, wall))
                found.Add(new(0, wall, SectionAt(wall, along), along, context.Say(Phrase.Through, names), false));
            foreach (Opening opening in wall.Openings)
            {
                double middle = (opening.Start + opening.End) / 2;
                found.Add(new(0, wall, SectionAt(wall, middle), middle, context.Say(Phrase.Through, context.Say(Phrase.OpeningName, opening.Name.ToUpperInvariant())), false));
            }
            found.AddRange(Pipes(context, wall, found));
            foreach (IGrouping<double, SectionCut> place in found.GroupBy(c => Math.Round(c.Along, 3)).OrderBy(g => g.Key))
            {
                SectionCut first = place.FirstOrDefault(c => c.IsHighest) ?? place.First();
                cuts.Add(first with { Number = cuts.Count + 1, Why = string.Join(", ", place.Select(c => c.Why)) });
            }
        }
        return cuts;
    }

    private static Section SectionAt(Wall wall, double along) => wall.Sections.LastOrDefault(s => s.Start <= along + Same) ?? wall.Sections[0];

    /// <summary>A corner that turns by less is no change that a section shows, degrees.</summary>
    private const double SmallTurn = 15;

    /// <summary>The greatest height of a design section, and of what lies of it beyond each corner.</summary>
    private static IEnumerable<SectionCut> Heights(DrawingContext context, Wall wall, Section section)
    {
        double highest = Highest(context.Quantities, wall, section, section.Start, section.End);
        yield return new(0, wall, section, highest, context.Say(Phrase.GreatestHeight, section.Name.ToUpperInvariant()), true);
        double[] ends =
        [
            section.Start,
            .. new Face(wall).Legs.Select(l => l.EndCorner).OfType<Corner>()
                .Where(c => Math.Abs(c.Deflection) > Angles.ToRadians(SmallTurn) && c.Along > section.Start + Same && c.Along < section.End - Same).Select(c => c.Along),
            section.End,
        ];
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            (double from, double to) = (ends[i], ends[i + 1]);
            bool hasNails = context.NailsOf(wall).Any(n => n.Section == section && n.Along >= from && n.Along < to && n.Kind != NailKind.Verification);
            if (!hasNails || (highest >= from && highest < to))
                continue;
            string range = context.Say(Phrase.StationRange, context.Print.ShortStation(wall, from), context.Print.ShortStation(wall, to));
            yield return new(0, wall, section, Highest(context.Quantities, wall, section, from, to), context.Say(Phrase.GreatestHeightOf, section.Name.ToUpperInvariant(), range), false);
        }
    }

    /// <summary>The place between two stations where a design section is highest, as high as the take-off says: the profiles change their slope there.</summary>
    public static double Highest(QuantityTable quantities, Wall wall, Section section, double from, double to)
    {
        double greatest = quantities.Sections.FirstOrDefault(s => s.Wall == wall && s.Section == section)?.GreatestHeight ?? double.NaN;
        double[] places =
        [
            .. wall.Top.Points.Concat(wall.Bottom.Points).Select(p => p.Along).Append(from).Append(to)
                .SelectMany(a => new[] { a, a - 1e-4 }).Where(a => a >= from && a < to).Distinct().Order(),
        ];
        double best = places.MaxBy(a => wall.Top.At(a) - wall.Bottom.At(a));
        double[] equal = [.. places.Where(a => Math.Abs(wall.Top.At(a) - wall.Bottom.At(a) - greatest) < 1e-3)];
        // Rather inside than at the section's edge, where the cut would touch the next one.
        return equal.Length > 0 && !equal.Contains(best) ? equal[0] : best;
    }

    /// <summary>Through every pipe behind the face that no cut shows, where it comes nearest to the face.</summary>
    private static IEnumerable<SectionCut> Pipes(DrawingContext context, Wall wall, IReadOnlyList<SectionCut> others)
    {
        double reach = wall.Sections.Max(s => s.Lengths.Max());
        double lowest = context.NailsOf(wall).Select(n => n.Hole.Tip.Z).DefaultIfEmpty(double.PositiveInfinity).Min();
        HashSet<Obstruction> shown = [.. others.SelectMany(c => new SectionView(context, c, default).Obstructions)];
        foreach (Obstruction o in context.Project.Obstructions.Where(o => o.Kind == ObstructionKind.Pipe && !shown.Contains(o)))
        {
            IReadOnlyList<LinePlace> places = context.PlacesOf(wall.LayoutLine, o);
            (double Along, double Behind)[] near =
            [
                .. Enumerable.Range(0, places.Count - 1).SelectMany(i => Enumerable.Range(0, PipeSteps + 1).Select(k => (double)k / PipeSteps)
                    .Select(t => (Along: places[i].Along + t * (places[i + 1].Along - places[i].Along), Behind: (places[i].Right + t * (places[i + 1].Right - places[i].Right)) * wall.Side,
                        Z: o.Shape[i].Z + t * (o.Shape[i + 1].Z - o.Shape[i].Z))))
                    .Where(p => p.Along > wall.Start && p.Along < wall.End && p.Behind > -1 && p.Behind < reach && p.Z > lowest - o.Diameter && p.Z < wall.Top.At(p.Along) + 1)
                    .Select(p => (p.Along, p.Behind)),
            ];
            if (near.Length > 0 && near.MinBy(p => p.Behind).Along is var at)
                yield return new(0, wall, SectionAt(wall, at), at, context.Say(Phrase.Through, o.Name.ToUpperInvariant()), false);
        }
    }

    private const int PipeSteps = 40;

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
