using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Elevation;

/// <summary>Writes what belongs to nails: callouts, non-typical spacings, row elevations and lengths.</summary>
public sealed class NailLabels(ElevationView view, string dimensionStyle)
{
    private readonly Printed _print = view.Context.Print;
    private readonly DrawingContext _context = view.Context;

    /// <summary>Callouts: those of the nails named, then unresolved nails, noted redirects and test nails.</summary>
    /// <param name="grouped">True to call out unresolved neighbours of a row together, in few words.</param>
    /// <param name="but">Marks of nails that are called out already.</param>
    public void Callouts(IReadOnlyCollection<string> first, bool grouped, IReadOnlySet<string>? but = null)
    {
        if (grouped)
        {
            foreach (Nail[] run in UnresolvedRuns())
            {
                string marks = run.Length == 1 ? run[0].Mark : Say(Phrase.MarksFromTo, run[0].Mark, run[^1].Mark);
                Callout(run[run.Length / 2], [[Say(Phrase.DoNotDrillMark, marks)]], run.Length == 1 ? Say(Phrase.DoNotDrill) : null);
            }
        }
        foreach (Nail nail in view.Nails.OrderBy(n => first.Contains(n.Mark) ? 0 : _context.IsStopped(n) ? 1 : n.Status == NailStatus.Noted ? 2 : 3))
        {
            if (but?.Contains(nail.Mark) == true)
                continue;
            if (_context.IsStopped(nail) && grouped && nail.Kind != NailKind.Verification)
                continue;
            if (_context.IsStopped(nail))
                Callout(nail, DoNotDrill(nail.Mark), Say(Phrase.DoNotDrill));
            else if (nail.Status == NailStatus.Noted)
                Callout(nail, NotedWords(nail));
            else if (nail.Kind == NailKind.Verification)
                Callout(nail, [[Say(Phrase.TestNailMark, nail.Mark), Direction(nail), LoadOf(nail)], [Say(Phrase.TestNail), nail.Mark, Direction(nail), LoadOf(nail)], [Say(Phrase.TestNail), nail.Mark, Direction(nail)]]);
            else if (nail.Kind == NailKind.Proof)
                view.Labels.LabelIfRoom(new LabelRequest([[Say(Phrase.Proof), .. LoadOf(nail) is { Length: > 0 } load ? [load] : Array.Empty<string>()], [Say(Phrase.Proof)]], TextRole.Callout, view.At(nail.Along, nail.Elevation), 1.9) { Layer = LayerRole.Callout, Nail = nail.Mark, Reach = 8, LeaderFrom = 2.6 });
        }
        OtherLengths(but);
    }

    /// <summary>The length of nails that differs from the one written with their row and that no other callout tells: one for neighbours of the same length.</summary>
    private void OtherLengths(IReadOnlySet<string>? but)
    {
        bool Tells(Nail n) => n.Status != NailStatus.Noted && !_context.IsStopped(n) && but?.Contains(n.Mark) != true && _context.RowLengths.Differs(n);
        foreach (Nail[] run in RowGroups(view.Nails, new Face(view.Wall)).SelectMany(row => RunsOf(row, Tells, (a, b) => a.Length == b.Length)))
        {
            string marks = run.Length == 1 ? run[0].Mark : Say(Phrase.MarksFromTo, run[0].Mark, run[^1].Mark), length = Say(Phrase.LengthIs, _print.Short(run[0].Length));
            Callout(run[run.Length / 2], [[marks + " " + length], [marks, length]]);
        }
    }

    /// <summary>The callouts of nails that may not be drilled.</summary>
    public void Stopped(IReadOnlySet<string> marks)
    {
        foreach (Nail nail in view.Nails.Where(n => marks.Contains(n.Mark)))
            Callout(nail, DoNotDrill(nail.Mark), Say(Phrase.DoNotDrill));
    }

    /// <summary>Who accepted what is too close, and why: a note each, with the nails concerned. Nothing of a nail that has an error which nobody accepted.</summary>
    public void Accepted()
    {
        HashSet<string> shown = [.. view.Nails.Select(n => n.Mark)];
        HashSet<string> open = [.. _context.Report.Findings.Where(f => f.Severity == Model.Problems.Severity.Error).SelectMany(f => f.Nails)];
        foreach (var group in _context.Report.Findings.Where(f => f.AcceptedBy is not null && f.Nails.Any(shown.Contains) && !f.Nails.Any(open.Contains)).GroupBy(f => (f.AcceptedBy!.By, f.AcceptedBy.Reason)))
        {
            string marks = string.Join(", ", group.SelectMany(f => f.Nails.Append(f.Obstruction)).OfType<string>().Distinct());
            view.Labels.NoteFirst(Say(Phrase.AcceptedNote, marks, group.Key.By.ToUpperInvariant(), group.Key.Reason.ToUpperInvariant()));
        }
    }

    /// <summary>Unresolved nails that stand side by side in a row.</summary>
    private IEnumerable<Nail[]> UnresolvedRuns() => RowGroups(view.Nails, new Face(view.Wall)).SelectMany(row => RunsOf(row, _context.IsStopped, (_, _) => true));

    /// <summary>Neighbours in a row that are all wanted, and alike.</summary>
    private static IEnumerable<Nail[]> RunsOf(Nail[] row, Func<Nail, bool> isWanted, Func<Nail, Nail, bool> isAlike)
    {
        for (int i = 0; i < row.Length;)
        {
            Nail[] run = [.. row.Skip(i).TakeWhile(n => isWanted(n) && isAlike(row[i], n))];
            if (run.Length > 0)
                yield return run;
            i += Math.Max(1, run.Length);
        }
    }

    /// <param name="shortest">Words that need no mark where their leader ends at the one nail; null for none.</param>
    private void Callout(Nail nail, IReadOnlyList<IReadOnlyList<string>> variants, string? shortest = null) =>
        view.Labels.Label(
            new LabelRequest([.. variants.Select(v => v.Where(l => l.Length > 0).ToArray())], TextRole.Callout, view.At(nail.Along, nail.Elevation), 1.9)
            {
                Layer = LayerRole.Callout,
                Nail = nail.Mark,
                Toward = nail.Splay == 0 ? -Math.PI / 2 : nail.Splay * view.Sign > 0 ? -0.5 : Math.PI + 0.5,
                Reach = 140,
                LeaderFrom = 1,
                Shortest = shortest,
            }, true);

    private IReadOnlyList<IReadOnlyList<string>> NotedWords(Nail nail)
    {
        var parts = new List<string>();
        if (nail.Splay != 0)
            parts.Add(Turn(nail));
        if (Sides.InclinationChange(nail) != 0)
            parts.Add(Say(Phrase.AngleDown, _print.Angle(nail.Inclination)));
        if (RowLengths.IsOwn(nail) || _context.RowLengths.Differs(nail))
            parts.Add(Say(Phrase.LengthIs, _print.Short(nail.Length)));
        string head = nail.Kind == NailKind.Verification ? Say(Phrase.TestNailMark, nail.Mark) : nail.Mark;
        string[] narrow = [head, .. parts.SelectMany(p => p.Split(" (")).Select(p => p.EndsWith(')') ? "(" + p : p)];
        return [[head, .. parts], [head + " " + parts[0], string.Join(", ", parts.Skip(1))], narrow, [head + " " + string.Join(", ", parts)]];
    }

    /// <summary>The load of a test nail where it is given; empty where it is not.</summary>
    private string LoadOf(Nail nail) => TestLoads.Of(_context, nail) is string load ? Say(Phrase.LoadIs, load) : "";

    private string Say(Phrase phrase, params ReadOnlySpan<string> values) => view.Context.Say(phrase, values);

    private string Turn(Nail nail) => Say(
        Phrase.TurnWithStation, _print.Angle(Math.Abs(nail.Splay)), Sides.Words(view.Context, nail.Wall, nail.Splay), Sides.StationWords(view.Context, nail.Splay));

    private string[][] DoNotDrill(string marks)
    {
        string ask = Say(Phrase.AskEngineer), stop = Say(Phrase.DoNotDrillMark, marks);
        return [[Say(Phrase.DoNotDrill), marks, ask], [stop, ask], [stop + ", " + ask], [stop]];
    }

    private string Direction(Nail nail)
    {
        string turn = nail.Splay == 0 ? "" : Turn(nail);
        string down = Sides.InclinationChange(nail) == 0 ? "" : Say(Phrase.AngleDown, _print.Angle(nail.Inclination));
        return string.Join(", ", new[] { turn, down }.Where(t => t.Length > 0));
    }

    /// <summary>
    /// A dimension for every gap between neighbours in a row that is not the grid's, nor within a small tolerance of it; one over a run of gaps that
    /// differ by no more than that among themselves, where it has room.
    /// </summary>
    public void Spacings()
    {
        Dictionary<string, Nail> shown = view.Nails.ToDictionary(n => n.Mark);
        Dictionary<string, NonTypicalGap> gaps = _context.Quantities.Sections.Where(s => s.Wall == view.Wall).SelectMany(s => s.Gaps)
            .Where(g => shown.TryGetValue(g.FirstMark, out Nail? a) && !IsBreak(g, a) && Math.Abs(g.Gap - a.Section.HorizontalSpacing) > TypicalWithin(_print.Unit) + 1e-9)
            .ToDictionary(g => g.FirstMark);
        var inNotes = new List<(string Row, string Words)>();
        foreach (NonTypicalGap[] run in gaps.Values.Where(g => !gaps.Values.Any(before => before.SecondMark == g.FirstMark)).SelectMany(first => Runs(first, gaps, shown)))
        {
            inNotes.AddRange(Spacing(run, shown) ?? run.SelectMany(gap => Spacing([gap], shown) ?? []));
        }
        foreach (var row in inNotes.GroupBy(g => g.Row))
            view.Labels.Note(Say(Phrase.GapsOfRow, row.Key, string.Join(", ", row.Select(g => g.Words)), Printed.Number(row.Count(), 0)));
    }

    /// <summary>Gaps of a run that are told one by one where the run has no room for its dimension: so few are clearer drawn than in words.</summary>
    private const int ShortRun = 4;

    /// <summary>The gaps that follow one another from a first one, cut where they differ by more than the tolerance or the view ends.</summary>
    private IEnumerable<NonTypicalGap[]> Runs(NonTypicalGap first, Dictionary<string, NonTypicalGap> gaps, Dictionary<string, Nail> shown)
    {
        List<NonTypicalGap> run = [];
        for (NonTypicalGap? gap = first; gap is not null; gap = gaps.GetValueOrDefault(gap.SecondMark))
        {
            if (run.Count > 0 && (!shown.ContainsKey(gap.SecondMark) || run.Append(gap).Max(g => g.Gap) - run.Append(gap).Min(g => g.Gap) > TypicalWithin(_print.Unit) + 1e-9))
            {
                yield return [.. run];
                run.Clear();
            }
            run.Add(gap);
        }
        yield return [.. run];
    }

    /// <summary>True where a row breaks off and begins again between two nails, as part rows do: no spacing of nails.</summary>
    private bool IsBreak(NonTypicalGap gap, Nail a)
    {
        double end = a.Along + gap.Gap;
        double[] grid = [.. _context.Layout.Rows.Where(r => r.Wall == a.Wall && r.Section == a.Section && r.Number == a.Row).SelectMany(r => r.GridStations).Order()];
        return Enumerable.Range(1, Math.Max(0, grid.Length - 1)).Any(i => grid[i] - grid[i - 1] > 1.3 * a.Section.HorizontalSpacing
            && (grid[i] + grid[i - 1]) / 2 is var middle && middle > a.Along && middle < end);
    }

    /// <summary>A gap this near to the typical spacing is typical (this program's own figure; the schedule has the true gaps).</summary>
    public static double TypicalWithin(LengthUnit unit) => Lengths.IsFoot(unit) ? 0.05 : 0.015;

    /// <summary>The dimension of a run of gaps, in words where it has no room; null, and nothing drawn, for a short run that is better told gap by gap.</summary>
    /// <returns>What has no room in the view, with its row.</returns>
    private IReadOnlyList<(string Row, string Words)>? Spacing(NonTypicalGap[] run, Dictionary<string, Nail> shown)
    {
        Nail a = shown[run[0].FirstMark];
        Nail? b = shown.GetValueOrDefault(run[^1].SecondMark);
        string count = Printed.Number(run.Length, 0), least = SpacingWords(run.Min(g => g.Gap)), most = SpacingWords(run.Max(g => g.Gap));
        string Words(string length) => run.Length == 1 ? length : least == most ? Say(Phrase.DimSpaces, count, least, length) : Say(Phrase.DimSpacesFromTo, count, least, most, length);
        double length = run.Sum(g => g.Gap);
        Point2 p = view.At(a.Along, a.Elevation), q = b is null ? p : view.At(b.Along, b.Elevation);
        if (b is not null && new DimensionPlacer(view.Context, view.Labels, dimensionStyle).TryAlong(p, q, length, run.Length == 1 ? null : Words(DimensionPlacer.Measured), a.Mark))
            return [];
        if (run.Length is > 1 and <= ShortRun)
            return null;
        string words = Words(SpacingWords(length)), second = run[^1].SecondMark;
        bool isTold = view.Labels.LabelIfRoom(new LabelRequest([[Say(Phrase.GapTo, a.Mark, second, words)], [Say(Phrase.GapToShort, a.Mark, second), words]], TextRole.Dimension, (p + q) * 0.5, 1.9)
        {
            Layer = LayerRole.Dimension,
            Nail = a.Mark,
            LeaderFrom = 1,
        });
        return isTold ? [] : [(MarkForms.RowOf(a), Say(Phrase.GapTo, MarkForms.Of(a)[^1], second[(second.LastIndexOf('-') + 1)..], words))];
    }

    private string SpacingWords(double gap) => Printed.Fixed(gap, Lengths.Decimals(_print.Unit)) + DimensionSuffix(_print.Unit);

    public static string DimensionSuffix(LengthUnit unit) => Lengths.IsFoot(unit) ? "'" : "";

    /// <summary>
    /// Row labels inside the view where a row begins or, when it is not level, ends away from the sheet's ends. A row that reaches neither margin
    /// and has room for no label is told among the notes.
    /// </summary>
    public void RowChanges()
    {
        foreach (Nail[] row in RowGroups(view.Nails, new Face(view.Wall)))
        {
            (Nail first, Nail last) = (row[0], row[^1]);
            bool begins = !NearEdge(first), ends = !NearEdge(last), isLevel = first.Elevation == last.Elevation;
            bool isTold = begins && TryRowLabel(first);
            if (ends && (!isLevel || (begins && !isTold)) && last != first)
                isTold |= TryRowLabel(last);
            if (begins && ends && !isTold)
                view.Labels.Note(string.Join(" ", RowWords(first, last)));
        }
    }

    private bool TryRowLabel(Nail nail)
    {
        string[] words = RowWords(nail, nail);
        // The end nails' marks name the row: its elevation here is a help.
        return view.Labels.LabelIfRoom(new LabelRequest([[string.Join(" ", words)], [words[0] + " " + words[1], words[2]], words], TextRole.Label, view.At(nail.Along, nail.Elevation), 1.7)
        {
            Toward = Math.PI / 2,
            LeaderFrom = 1.2,
            Reach = 45,
        });
    }

    /// <summary>The name of a row, its elevation from one nail to another, its length.</summary>
    private string[] RowWords(Nail first, Nail last)
    {
        string from = _print.Elevation(first.Elevation), to = _print.Elevation(last.Elevation);
        return [Say(Phrase.RowName, MarkForms.RowOf(first)), Say(Phrase.Elevation, _context.FromTo(from, to)), Say(Phrase.LengthIs, _print.Short(_context.RowLengths.Of(first)))];
    }

    /// <summary>True where a nail is the first or last that its row has on the sheet's end.</summary>
    public bool NearEdge(Nail nail) =>
        Math.Min(nail.Along - view.Window.Start, view.Window.End - nail.Along) <= 1.5 * nail.Section.HorizontalSpacing + 1e-6;

    /// <summary>Production nails by section, leg and row, in order of station.</summary>
    public static IEnumerable<Nail[]> RowGroups(IEnumerable<Nail> nails, Face face) =>
        nails.Where(n => n.Kind != NailKind.Verification)
            .GroupBy(n => (n.Section, face.LegAt(n.Along).Index, n.Row))
            .Select(g => g.OrderBy(n => n.Along).ToArray());
}
