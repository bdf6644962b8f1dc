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
    /// every structure and every opening, and through every pipe that no other cut shows; one cut shows all that it passes. Cuts at one place are one.
    /// </summary>
    public static IReadOnlyList<SectionCut> Choose(DrawingContext context)
    {
        var cuts = new List<SectionCut>();
        foreach (Wall wall in context.Project.Walls)
        {
            var found = new List<SectionCut>();
            foreach (Section section in wall.Sections)
                found.AddRange(Heights(context, wall, section));
            foreach ((double along, string names) in Groups(context, wall))
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
        double reach = LongestNail(context, wall);
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

    /// <summary>
    /// Groups of structures that overlap along the wall: the cut goes through the shaft nearest to the middle, or the middle, and again through
    /// each structure of the group that no cut so far passes.
    /// </summary>
    private static IEnumerable<(double Along, string Names)> Groups(DrawingContext context, Wall wall)
    {
        List<StructureSpan> spans = [.. context.Project.Obstructions.Select(o => SpanOf(context, wall, o)).OfType<StructureSpan>().OrderBy(s => s.From)];
        for (int i = 0; i < spans.Count;)
        {
            double end = spans[i].To;
            int j = i + 1;
            while (j < spans.Count && spans[j].From <= end)
                end = Math.Max(end, spans[j++].To);
            List<StructureSpan> group = spans.GetRange(i, j - i);
            double middle = (group[0].From + end) / 2;
            StructureSpan[] upright = [.. group.Where(s => s.IsUpright)];
            // Shafts first: their cuts show beams above them, too.
            IEnumerable<double> places = upright.OrderBy(s => Math.Abs(s.Aim - middle)).Select(s => s.Aim).Take(1)
                .Concat(upright.Length == 0 ? [middle] : []).Concat(group.OrderBy(s => !s.IsUpright).Select(s => s.Aim));
            HashSet<StructureSpan> open = [.. group];
            foreach (double at in places)
            {
                StructureSpan[] passed = [.. group.Where(s => s.From <= at && at <= s.To)];
                if (!passed.Any(open.Contains))
                    continue;
                open.ExceptWith(passed);
                yield return (Math.Clamp(at, wall.Start, wall.End - 1e-6), string.Join(", ", passed.Select(s => s.Name)));
            }
            i = j;
        }
    }

    /// <summary>Stations over which a structure stands behind the face, and the one of its axis or middle; null for others and for what lies beyond the nails.</summary>
    private static StructureSpan? SpanOf(DrawingContext context, Wall wall, Obstruction o)
    {
        if (o.Kind is ObstructionKind.Boundary or ObstructionKind.Pipe)
            return null;
        double reach = LongestNail(context, wall) * 1.3, radius = o.Diameter / 2;
        IReadOnlyList<LinePlace> places = context.PlacesOf(wall.LayoutLine, o);
        double from = Math.Max(wall.Start, places.Min(p => p.Along) - radius), to = Math.Min(wall.End, places.Max(p => p.Along) + radius);
        bool isNear = places.Any(p => p.Right * wall.Side is var off && off > -1 && off < reach);
        if (!isNear || from >= to || o.Bottom >= wall.Top.At((from + to) / 2) + 1)
            return null;
        bool isUpright = o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile;
        return new(from, to, isUpright ? Math.Clamp(places[0].Along, from, to) : (from + to) / 2, o.Name.ToUpperInvariant(), isUpright);
    }

    /// <summary>The greatest length of a wall's nails, of the design and as placed: pins may be longer.</summary>
    private static double LongestNail(DrawingContext context, Wall wall) =>
        Math.Max(wall.Sections.Max(s => s.Lengths.Max()), context.NailsOf(wall).Select(n => n.Length).DefaultIfEmpty(0).Max());

    private sealed record StructureSpan(double From, double To, double Aim, string Name, bool IsUpright);
}
