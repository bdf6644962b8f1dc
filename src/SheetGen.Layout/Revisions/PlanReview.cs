using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Revisions;

/// <summary>
/// The questions that a reviewer asks of the plans of a soil nail wall, answered from the project where it can answer them. The questions are
/// those that published checklists have in common, in our own words; figures are common practice without a source where nothing else is said.
/// </summary>
public static class PlanReview
{
    private const double TightIndex = 20, EmbedmentFeet = 2;

    public static IReadOnlyList<ReviewItem> Of(WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities)
    {
        var r = new Reviewing(project, layout, report, quantities);
        return [.. r.Plan(), .. r.Elevation(), .. r.Ground(), .. r.Sections(), .. r.Notes()];
    }

    private sealed class Reviewing(WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities)
    {
        private readonly bool _feet = Lengths.IsFoot(project.Unit);

        /// <summary>True where the project states the load of verification tests, or each section with any has a bond to compute it from.</summary>
        private static string Counted(int count, string one, string many) => FormattableString.Invariant($"{count} {(count == 1 ? one : many)}");

        private bool HasTestLoads => project.Info.Facts.ContainsKey("verification_load")
            || quantities.Tests.Where(t => t.Asked > 0).All(t => quantities.Effect.Tests.Any(s => !s.IsProof && s.Section == t.Section && s.Wall == t.Wall));

        private string Symbol => Lengths.Symbol(project.Unit);

        private static string N(double value) => PlainNumber.Format(value, 0, 2);

        private double Feet(double feet) => _feet ? feet : Math.Round(feet * 0.3, RevisionTolerance.GuidanceDecimals);

        private static ReviewItem Item(string group, string question, bool answer, string where, string note) => new(group, question, answer ? ReviewAnswer.Yes : ReviewAnswer.No, where, note);

        private ReviewItem Fact(string group, string question, string key, string block = "design") =>
            project.Info.Facts.TryGetValue(key, out string? fact) && fact.Length > 0
                ? new(group, question, ReviewAnswer.Yes, "notes", fact)
                : new(group, question, ReviewAnswer.NeedsPerson, $"{block}: {key}", "not given; the notes carry a blank");

        public IEnumerable<ReviewItem> Plan()
        {
            const string G = "Plan";
            yield return Item(G, "Are base line, control points and the offset to the face given?", true, "tables: control points", Counted(project.LayoutLines.Count, "layout line", "layout lines"));
            yield return Fact(G, "Is the vertical datum named?", "vertical_datum", "project");
            yield return Item(G, "Are begin and end stations of each wall shown?", true, "plan and elevation", Counted(project.Walls.Count, "wall", "walls"));
            yield return Kinds(G, "Are right of way and easements shown, and do all nails stay inside of them?", ObstructionKind.Boundary, FindingCode.NailBoundary);
            yield return Kinds(G, "Are utilities shown, and do all nails keep clear of them?", ObstructionKind.Pipe, FindingCode.NailObstruction);
            Obstruction[] without = [.. project.Obstructions.Where(o => o.Kind == ObstructionKind.Pipe && !o.Facts.ContainsKey("quality_level"))];
            if (project.Obstructions.Any(o => o.Kind == ObstructionKind.Pipe))
                yield return Item(G, "Does each utility state how well its place is known?", without.Length == 0, "tables: obstructions", without.Length == 0 ? "quality levels given" : "no quality_level: " + string.Join(", ", without.Select(o => o.Name)));
            yield return Abutment(G);
            yield return Fact(G, "Is it said what movement structures nearby bear?", "adjacent_structures");
            yield return Item(G, "Is the limit of the longest nails shown?", true, "plan", "drawn for each design section");
        }

        private ReviewItem Kinds(string group, string question, ObstructionKind kind, string code)
        {
            Obstruction[] there = [.. project.Obstructions.Where(o => o.Kind == kind)];
            if (there.Length == 0)
                return new(group, question, ReviewAnswer.NeedsPerson, "obstructions", "the project has none: is that so on site?");
            int close = report.Findings.Count(f => f.Severity == Severity.Error && f.Code == code && there.Any(o => o.Name == f.Obstruction));
            return Item(group, question, close == 0, "plan and elevation", $"{there.Length} shown, {Counted(close, "nail", "nails")} too close");
        }

        /// <summary>Shafts, caps and footings: how near the face they stand.</summary>
        private ReviewItem Abutment(string group)
        {
            const string Question = "Is the wall far enough from abutments and foundations?";
            (Obstruction Of, double Behind)[] near = [.. project.Obstructions.Where(o => o.Kind is not (ObstructionKind.Pipe or ObstructionKind.Boundary) && !o.KnownInFront)
                .Select(o => (o, project.Walls.Min(w => o.Shape.Min(p => BehindFace(w, p.Plan))))).OrderBy(o => o.Item2)];
            return near.Length == 0
                ? new(group, Question, ReviewAnswer.NeedsPerson, "obstructions", "the project has none: is that so on site?")
                : new(group, Question, ReviewAnswer.NeedsPerson, "plan; sections", $"nearest: {near[0].Of.Name}, {N(near[0].Behind)} {Symbol} behind the face; its cover and bearing are the engineer's");
        }

        private static double BehindFace(Wall wall, Vector2D point)
        {
            LinePlace place = LayoutProjection.Locate(wall.LayoutLine, point);
            double along = Math.Clamp(place.Along, wall.Start, wall.End);
            return Math.Abs(place.Right * wall.Side - new Face(wall).OffsetAt(wall.Bottom.At(along))) + Math.Abs(place.Along - along);
        }

        public IEnumerable<ReviewItem> Elevation()
        {
            const string G = "Elevation and nails";
            int unresolved = layout.Nails.Count(n => n.Status == NailStatus.Unresolved), cover = report.Findings.Count(f => f is { Code: FindingCode.Cover, Severity: Severity.Error });
            int close = report.Findings.Count(f => f.Severity == Severity.Error && f.Code is FindingCode.NailNail or FindingCode.NailObstruction or FindingCode.NailBoundary or FindingCode.NailFace);
            yield return Item(G, "Is every nail located, with row elevations and spacings?", true, "elevation; tables: row elevations", Counted(layout.Nails.Count, "nail", "nails"));
            yield return Item(G, "Do all holes keep their clear distances?", close == 0, "findings", $"{close} too close");
            yield return Item(G, "Has every nail a place that may be drilled?", unresolved == 0, "elevation: DO NOT DRILL", $"{unresolved} unresolved");
            yield return Item(G, "Is the face covered by nails everywhere?", cover == 0, "findings: cover", Counted(cover, "stretch is", "stretches are") + " not");
            foreach (Wall wall in project.Walls)
            {
                Nail[] nails = [.. layout.Nails.Where(n => n.Wall.Name == wall.Name && n.Kind != NailKind.Verification)];
                if (nails.Length == 0)
                    continue;
                int Broken(string words) => report.Findings.Count(f => f.Code == FindingCode.Cover && f.Wall?.Name == wall.Name && f.Message.Contains(words, StringComparison.Ordinal));
                (int first, int last) = (Broken("the highest nail"), Broken("the lowest nail"));
                double depth = nails.Min(n => wall.Top.At(n.Along) - n.Elevation), height = nails.Min(n => n.Elevation - wall.Bottom.At(n.Along));
                yield return Item(G, $"{wall.Name}: is the first row near enough to the top ({N(project.Rules.TopMax)} {Symbol})?", first == 0, "elevation", first == 0 ? $"everywhere; shallowest head {N(depth)} {Symbol} below the top" : Counted(first, "stretch is", "stretches are") + " not: see the findings");
                yield return Item(G, $"{wall.Name}: is the last row near enough to the bottom ({N(project.Rules.BottomMax)} {Symbol})?", last == 0, "elevation", last == 0 ? $"everywhere; lowest head {N(height)} {Symbol} above the bottom" : Counted(last, "stretch is", "stretches are") + " not: see the findings");
                yield return Embedment(G, wall);
            }
            yield return Item(G, "Are test nails in their places, with their loads?", !report.Findings.Any(f => f.Code == FindingCode.TestNail) && HasTestLoads,
                "elevation; tables: test nails", $"{Counted(layout.Nails.Count(n => n.Kind == NailKind.Verification), "verification nail", "verification nails")}; load {(HasTestLoads ? "given" : "not given")}");
        }

        private ReviewItem Embedment(string group, Wall wall)
        {
            string question = $"{wall.Name}: does the wall reach about {N(Feet(EmbedmentFeet))} {Symbol} below finished grade (common practice)?";
            if (wall.FinishedGrade is not { } grade)
                return new(group, question, ReviewAnswer.NeedsPerson, "walls: finished_grade", "no finished grade given");
            double least = Places(wall).Min(a => grade.At(a) - wall.Bottom.At(a));
            return Item(group, question, least >= Feet(EmbedmentFeet) - 0.1 * Feet(1), "elevation", $"least {N(least)} {Symbol}");
        }

        private static IEnumerable<double> Places(Wall wall) => Enumerable.Range(0, 201).Select(i => wall.Start + (wall.End - wall.Start) * i / RevisionTolerance.ProfileParts);

        public IEnumerable<ReviewItem> Ground()
        {
            const string G = "Ground";
            (double Low, double Far) zone = (layout.Nails.Count == 0 ? 0 : layout.Nails.Min(n => n.Hole.Tip.Z), 0);
            Boring[] deep = [.. project.Borings.Where(b => b.Bottom <= zone.Low)];
            yield return project.Borings.Count == 0
                ? new(G, "Do borings reach the nailed zone?", ReviewAnswer.No, "borings", "the project has no borings")
                : Item(G, "Do borings reach the nailed zone?", deep.Length == project.Borings.Count, "elevation; tables: borings", deep.Length == project.Borings.Count ? $"all {deep.Length} reach below elevation {N(zone.Low)}" : "too short: " + string.Join(", ", project.Borings.Except(deep).Select(b => b.Name)));
            yield return project.Borings.Any(b => b.Water is not null)
                ? Item(G, "Is groundwater shown?", true, "elevation; tables: borings", string.Join(", ", project.Borings.Where(b => b.Water is not null).Select(b => $"{b.Name} {N(b.Water!.Value)}")))
                : Fact(G, "Is groundwater shown?", "groundwater");
            (Boring Boring, BoringLayer Layer)[] plastic = [.. project.Borings.SelectMany(b => b.Layers.Select(l => (b, l))).Where(x => x.l.PlasticityIndex >= TightIndex)];
            if (plastic.Length > 0)
            {
                double widest = project.Walls.SelectMany(w => w.Sections).Max(s => Math.Max(s.HorizontalSpacing, s.VerticalSpacing)), tight = _feet ? 5 : 1.5;
                yield return new(G, "Are spacings tight enough for plastic soil (index of 20 or more asks for tighter spacing: common practice)?", widest < tight - Tolerance.Rounding ? ReviewAnswer.NeedsPerson : ReviewAnswer.No, "elevation; tables: borings",
                    $"{string.Join(", ", plastic.Select(p => $"{p.Layer.Name} in {p.Boring.Name}, index {N(p.Layer.PlasticityIndex!.Value)}").Take(4))}; greatest spacing {N(widest)} {Symbol}");
            }
            else
            {
                yield return new(G, "Is the soil's plasticity known (index of 20 or more asks for tighter spacing: common practice)?",
                    project.Borings.Any(b => b.Layers.Any(l => l.PlasticityIndex is not null)) ? ReviewAnswer.Yes : ReviewAnswer.NeedsPerson, "borings: layers: plasticity_index", "no layer with an index of 20 or more");
            }
            foreach (Wall wall in project.Walls)
            {
                yield return wall.ExistingGround is { } ground
                    ? Item(G, $"{wall.Name}: is the wall in cut?", Places(wall).All(a => ground.At(a) >= wall.Top.At(a) - Feet(1)), "elevation: existing ground", $"existing ground at least {N(Places(wall).Min(a => ground.At(a) - wall.Top.At(a)))} {Symbol} above the top; where it is lower, nails stand in fill")
                    : new(G, $"{wall.Name}: is the wall in cut?", ReviewAnswer.NeedsPerson, "walls: existing_ground", "no existing ground given");
                yield return new(G, $"{wall.Name}: is any excavation planned later below the bottom?", ReviewAnswer.NeedsPerson, "notes", "nothing in the project tells");
            }
        }

        public IEnumerable<ReviewItem> Sections()
        {
            const string G = "Sections and details";
            ExcavationLift[] high = [.. quantities.Lifts.Where(l => l.IsTooHigh)];
            bool limited = project.Walls.All(w => w.Lifts?.MaxExposed is not null);
            yield return limited
                ? Item(G, "Is the exposed height of each lift limited and kept?", high.Length == 0, "sections; workbook: lifts", high.Length == 0 ? "all within their limit" : Counted(high.Length, "lift", "lifts") + " too high")
                : new(G, "Is the exposed height of each lift limited?", ReviewAnswer.NeedsPerson, "walls: lifts: max_exposed", quantities.Lifts.Count == 0 ? "no lifts" : $"greatest {N(quantities.Lifts.Max(l => l.Exposed))} {Symbol}, no limit given");
            yield return Item(G, "Are drainage strips given?", project.Walls.All(w => w.Drainage is not null), "elevation; details", string.Join(", ", project.Walls.Where(w => w.Drainage is null).Select(w => w.Name + " has none")));
            yield return Fact(G, "Is it said how surface water is kept off?", "surface_water");
            yield return Item(G, "Are facing and shotcrete given?", project.Walls.All(w => w.Facing?.Shotcrete is not null), "details", string.Join(", ", project.Walls.Where(w => w.Facing?.Shotcrete is null).Select(w => w.Name + " has no shotcrete thickness")));
            yield return Fact(G, "Is corrosion protection given?", "corrosion_protection");
            yield return Fact(G, "Is the bearing plate given?", "plate");
            yield return Fact(G, "Are ends of the wall and openings for pipes detailed?", "wall_ends");
        }

        public IEnumerable<ReviewItem> Notes()
        {
            const string G = "Notes and tables";
            yield return Fact(G, "Are design criteria and codes given?", "specification");
            yield return Item(G, "Is every bid quantity whole?", quantities.Incomplete.Count == 0, "tables: bid quantities", quantities.Incomplete.Count == 0 ? "all complete" : "incomplete: " + string.Join(", ", quantities.Incomplete.Select(q => q.Definition.Text).Take(6)));
            yield return Fact(G, "Is the construction sequence given?", "construction_sequence");
            yield return Fact(G, "Is monitoring given, with thresholds and actions?", "monitoring");
            yield return Fact(G, "Are traffic staging and barriers given?", "traffic");
            yield return Fact(G, "Are site limits given: headroom, access, contamination?", "site_limits");
            yield return new(G, "Has a second person measured the main quantities another way?", ReviewAnswer.NeedsPerson, "workbook: independent check", Counted(quantities.Checks.Count, "second way", "second ways") + " by the program");
        }
    }
}
