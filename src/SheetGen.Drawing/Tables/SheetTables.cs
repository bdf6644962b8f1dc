using System.Globalization;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Tables;

/// <summary>The tables of a set: what the layout, the checker and the take-off found. A table without rows is left out.</summary>
public static class SheetTables
{
    /// <param name="width">Of a sheet, mm.</param>
    public static IEnumerable<SheetTable> All(DrawingContext context, double width)
    {
        IEnumerable<SheetTable> tables =
        [
            SheetTable.Of(context, SummaryTables.BySection(context.Quantities)),
            States(context),
            .. context.Tables.Select(t => SheetTable.Of(context, t)),
            Redirects(context),
            RowElevations(context),
            Tests(context),
            Closest(context),
            LeftOut(context),
            Accepted(context),
            Pinned(context),
            .. EffectTables.All(context),
            .. GivenTables.All(context),
            Findings(context, width),
        ];
        return tables.Where(t => t.Data.Rows.Count > 0);
    }

    /// <summary>Every finding, errors first; a long one goes on in the next line.</summary>
    /// <param name="width">Of a sheet, mm.</param>
    private static SheetTable Findings(DrawingContext context, double width)
    {
        TextStyle style = context.StyleOf(TextRole.Table);
        // What stands before the words, with the room beside it.
        double before = context.Report.Findings.Select(f => new[] { context.Say(SeverityWords(f.Severity)), f.Code, context.Print.Station(f, context.Project) }
            .Sum(w => TextMeasure.Measure(w, style.Height, style) + 3 * style.Height)).DefaultIfEmpty(0).Max();
        double room = Math.Min(300, width - before - 8 * style.Height);
        var rows = new List<IReadOnlyList<string>>();
        foreach (Finding finding in context.Report.Findings.OrderBy(f => f.Severity))
        {
            string place = context.Print.Station(finding, context.Project);
            IReadOnlyList<string> lines = TextMeasure.Wrap(context.Language.Sentence(finding.Message), room, style.Height, style);
            for (int i = 0; i < lines.Count; i++)
                rows.Add(i == 0 ? [context.Say(SeverityWords(finding.Severity)), finding.Code, place, lines[i]] : ["", "", "", lines[i]]);
        }
        return SheetTable.Of(context, Phrase.TableFindings, Phrase.TableFindingsHeads, rows, Phrase.TableFindingsRemark);
    }

    private static Phrase SeverityWords(Severity severity) => severity switch
    {
        Severity.Error => Phrase.SeverityError,
        Severity.Warning => Phrase.SeverityWarning,
        Severity.Accepted => Phrase.StateAccepted,
        _ => Phrase.SeverityNotice,
    };

    internal static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static SheetTable States(DrawingContext context)
    {
        var rows = new List<IReadOnlyList<string>>();
        foreach (Wall wall in context.Project.Walls)
        {
            foreach (Section s in wall.Sections)
                rows.Add(StateRow(wall.Name, s.Name, context.Print.Angle(s.Inclination), [.. context.Layout.Nails.Where(n => n.Wall == wall && n.Section == s)]));
        }
        rows.Add(StateRow(context.Say(Phrase.Total), "", "", context.Layout.Nails));
        return SheetTable.Of(context, Phrase.TableStates, Phrase.TableStatesHeads, rows, Phrase.TableStatesRemark);
    }

    private static string[] StateRow(string wall, string section, string angle, IReadOnlyList<Nail> nails)
    {
        Nail[] production = [.. nails.Where(n => n.Kind != NailKind.Verification)];
        return [wall, section, angle, .. Enum.GetValues<NailStatus>().Select(s => Count(production.Count(n => n.Status == s))), Count(production.Length)];
    }

    private static SheetTable Redirects(DrawingContext context)
    {
        Printed print = context.Print;
        IEnumerable<Nail> nails = context.Layout.Nails.Where(n => n.Status is NailStatus.Redirected or NailStatus.Noted or NailStatus.Unresolved);
        return SheetTable.Of(context, Phrase.TableRedirects, Phrase.TableRedirectsHeads,
            [.. nails.Select(n => (IReadOnlyList<string>)[
                n.Mark, print.Station(n), print.Elevation(n.Elevation), print.Angle(Math.Abs(n.Splay)),
                Sides.Words(context, n.Wall, n.Splay), Sides.StationWords(context, n.Splay), print.Angle(n.Inclination), print.Short(n.Length),
                context.Say(n.Status switch
                {
                    NailStatus.Noted => Phrase.StateNoted,
                    NailStatus.Unresolved when !context.IsStopped(n) => Phrase.StateAccepted,
                    NailStatus.Unresolved => Phrase.DoNotDrill,
                    _ => Phrase.StateWithin,
                }),
                n.Reason?.Blocker ?? "", Clear(print, n.Reason?.ClearBefore), Clear(print, n.Reason?.ClearAfter)])],
            Phrase.TableRedirectsRemark);
    }

    internal static string Clear(Printed print, double? clear) =>
        FiniteNumber.OrNone(clear) is double c ? Printed.Fixed(c, Lengths.Decimals(print.Unit)) : "";

    private static SheetTable RowElevations(DrawingContext context)
    {
        Printed print = context.Print;
        var rows = new List<IReadOnlyList<string>>();
        foreach (Wall wall in context.Project.Walls)
        {
            foreach (Nail[] row in NailLabels.RowGroups(context.NailsOf(wall), new Face(wall)))
            {
                rows.Add([
                    wall.Name, row[0].Section.Name, row[0].Row.Name,
                    print.Station(row[0]), print.Elevation(row[0].Elevation),
                    print.Station(row[^1]), print.Elevation(row[^1].Elevation),
                    Count(row.Length), string.Join(", ", row.Select(n => n.Length).Distinct().Order().Select(print.Short))]);
            }
        }
        return SheetTable.Of(context, Phrase.TableRows, Phrase.TableRowsHeads, rows);
    }

    /// <summary>Every test nail with its lengths and its load, the project's words or the take-off's figure; a blank where there is neither.</summary>
    private static SheetTable Tests(DrawingContext context)
    {
        const string Blank = "________";
        Printed print = context.Print;
        string Load(bool isProof, TestPlan plan) => TestLoads.Of(context, isProof, plan) ?? Blank;
        var rows = new List<IReadOnlyList<string>>();
        foreach (TestPlan plan in context.Quantities.Tests)
        {
            string Bonded(bool isProof) => TestLengths.Of(context, isProof, plan).BondedWords ?? "";
            string Free(bool isProof) => TestLengths.Of(context, isProof, plan).Free is double free ? print.Short(free) : "";
            foreach (Nail n in context.Layout.Nails.Where(n => n.Wall == plan.Wall && n.Section == plan.Section && n.Kind != NailKind.Production))
            {
                bool isProof = n.Kind == NailKind.Proof;
                rows.Add([n.Mark, context.Say(isProof ? Phrase.TestProof : Phrase.TestVerification), n.Wall.Name, n.Section.Name,
                    print.Station(n), print.Elevation(n.Elevation), print.Short(n.Length), Free(isProof), Bonded(isProof),
                    Load(isProof, plan)]);
            }
            if (plan.Proof > 0 && !plan.Section.TestNails.SpreadProofMarks)
            {
                rows.Add([context.Say(Phrase.NailCount, Count(plan.Proof)), context.Say(Phrase.TestProof), plan.Wall.Name, plan.Section.Name,
                    context.Say(Phrase.ChosenBy), context.Say(Phrase.TheEngineer), "", Free(true), Bonded(true), Load(true, plan)]);
            }
        }
        return SheetTable.Of(context, Phrase.TableTests, Phrase.TableTestsHeads, rows, Phrase.TableTestsRemark);
    }

    private static SheetTable Closest(DrawingContext context)
    {
        Printed print = context.Print;
        var nearest = context.Layout.Nails
            .Where(n => context.Report.Nails.TryGetValue(n.Mark, out NailClearance? c) && FiniteNumber.OrNone(c.LeastClear) is not null)
            .Select(n => (Nail: n, Clear: context.Report.Nails[n.Mark]))
            .OrderBy(p => p.Clear.LeastClear).ThenBy(p => p.Nail.Mark, StringComparer.Ordinal).Take(15);
        return SheetTable.Of(context, Phrase.TableClosest, Phrase.TableClosestHeads,
            [.. nearest.Select(p => (IReadOnlyList<string>)[
                p.Nail.Mark, context.Language.Sentence(p.Clear.Nearest), print.Distance(p.Clear.LeastClear),
                print.Angle(Math.Round(p.Clear.MarginObstruction, 1)), print.Angle(Math.Round(p.Clear.MarginNail, 1))])],
            Phrase.TableClosestRemark);
    }

    private static SheetTable LeftOut(DrawingContext context) =>
        SheetTable.Of(context, Phrase.TableLeftOut, Phrase.TableLeftOutHeads,
            [.. context.Layout.LeftOut.Select(l => (IReadOnlyList<string>)[
                l.Mark, context.Print.Station(l.Wall, l.Along), context.Print.Elevation(l.Elevation), context.Language.Sentence(l.Reason.TrimEnd('.')).ToUpperInvariant()])]);

    private static SheetTable Accepted(DrawingContext context)
    {
        Printed print = context.Print;
        return SheetTable.Of(context, Phrase.TableAccepted, Phrase.TableAcceptedHeads,
            [.. context.Report.Findings.Where(f => f.Severity == Severity.Accepted).Select(f =>
            {
                Acceptance? by = f.AcceptedBy;
                return (IReadOnlyList<string>)[
                    f.Nails.Count > 4 ? context.Say(Phrase.MarksFromTo, f.Nails[0], f.Nails[^1]) : string.Join(", ", f.Nails), f.Obstruction ?? "",
                    print.Station(f, context.Project), Clear(print, f.Clear), Clear(print, f.Required),
                    (by?.Reason ?? context.Language.Sentence(f.Message)).ToUpperInvariant(), (by?.By ?? "").ToUpperInvariant()];
            })]);
    }

    private static SheetTable Pinned(DrawingContext context)
    {
        Printed print = context.Print;
        return SheetTable.Of(context, Phrase.TablePinned, Phrase.TablePinnedHeads,
            [.. context.Layout.Nails.Where(n => n.IsFixed).Select(n => (IReadOnlyList<string>)[
                n.Mark, print.Station(n), print.Elevation(n.Elevation), print.Angle(Math.Abs(n.Splay)), Sides.Words(context, n.Wall, n.Splay),
                print.Angle(n.Inclination), print.Short(n.Length)])]);
    }
}
