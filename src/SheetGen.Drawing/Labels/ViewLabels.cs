using System.Globalization;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Labels;

/// <summary>Collects what is written into one view: labels by the placer, numbered notes where there is no room, problems.</summary>
/// <param name="sheet">Name of the sheet, as findings print it.</param>
public sealed class ViewLabels(DrawingContext context, Viewport viewport, Box textFrame, string sheet, Wall? wall)
{
    private readonly List<Primitive> _paper = [];
    private readonly List<string> _notes = [];
    private readonly List<(LabelRequest Request, bool IsCallout)> _unplaced = [];

    public LabelPlacer Placer { get; init; } = new(textFrame, context.Templates.Texts);

    public Viewport Viewport { get; } = viewport;

    /// <summary>Numbered notes that the sheet has before those of this view.</summary>
    public int NotesBefore { get; init; }

    /// <summary>What was written, in paper coordinates.</summary>
    public IReadOnlyList<Primitive> Paper => _paper;

    public IReadOnlyList<string> Notes => _notes;

    public IReadOnlyList<Finding> Findings => FindingsOn(sheet);

    /// <summary>The findings with the name of a sheet that was not known when the labels were placed.</summary>
    public IReadOnlyList<Finding> FindingsOn(string sheet) => [.. _unplaced.Select(u => Finding(u.Request, u.IsCallout, sheet))];

    /// <summary>The labels that have no place, in words.</summary>
    public IReadOnlyList<string> Unplaced => [.. _unplaced.Select(u => string.Join(", ", u.Request.Variants[0]))];

    /// <summary>Marks of the nails whose callouts have no place.</summary>
    public IReadOnlyList<string> NailsWithoutCallout => [.. _unplaced.Where(u => u.IsCallout && u.Request.Nail is not null).Select(u => u.Request.Nail!)];

    /// <summary>Labels asked for so far.</summary>
    public int Asked { get; private set; }

    /// <summary>What was written, in model space.</summary>
    public IEnumerable<Primitive> InModel()
    {
        PlaneTransform back = Viewport.ToPaper.Inverse;
        return _paper.Select(back.Apply);
    }

    public void Add(Primitive primitive) => _paper.Add(primitive);

    /// <summary>A text with a place of its own; false, and not drawn, where that is not free.</summary>
    public bool TryWrite(Text text)
    {
        if (!Placer.TryFix(text))
            return false;
        _paper.Add(text with { Masked = true });
        return true;
    }

    /// <summary>Keeps the places of a text that is drawn elsewhere, and of its leader.</summary>
    public void Keep(Text text, Leader? leader)
    {
        Placer.Crowd.Add(TextMeasure.BoxOf(text, context.StyleOf(text.Role)).Grown(0.3));
        if (leader is not null)
            Placer.Crowd.Add(leader.From, leader.To, LineKind.Leader);
    }

    public int LinesUnder(Text text) => Placer.Crowd.LinesUnder(TextMeasure.BoxOf(text, context.StyleOf(text.Role)));

    /// <summary>Places a label where there is room near it; false, and nothing drawn, where there is none.</summary>
    public bool LabelIfRoom(LabelRequest request) => Put(request);

    /// <summary>Places callouts that found no place for a leader near their nails without one: their last words name the mark that stands at the nail.</summary>
    public void WithoutLeader(Func<string, bool> may)
    {
        foreach ((LabelRequest request, bool isCallout) unplaced in _unplaced.Where(u => u.IsCallout && u.Request.Nail is not null && may(u.Request.Nail)).ToArray())
        {
            if (!Put(unplaced.request with { Variants = [unplaced.request.Variants[^1]], LeaderFrom = double.PositiveInfinity, Reach = 40 }))
                continue;
            _unplaced.Remove(unplaced);
        }
    }

    /// <summary>Moves the callouts without a place that may stand as notes to the notes: their words begin with a mark that is seen at its nail.</summary>
    public void NoteByMark(Func<string, bool> mayBeNoted)
    {
        foreach ((LabelRequest request, bool isCallout) unplaced in _unplaced.Where(u => u.IsCallout && u.Request.Nail is not null && mayBeNoted(u.Request.Nail)).ToArray())
        {
            _unplaced.Remove(unplaced);
            string words = string.Join(" ", unplaced.request.Variants[^1]);
            _marked.Add(words.StartsWith(context.Say(Phrase.TestNail), StringComparison.Ordinal) ? words : context.Say(Phrase.NailNote, words));
        }
    }

    /// <summary>Adds a note that stands before all others.</summary>
    public void NoteFirst(string words) => _marked.Add(words);

    /// <summary>Adds a note that speaks for itself, once however often it is told.</summary>
    public void Note(string words)
    {
        if (!_told.Contains(words))
            _told.Add(words);
    }

    /// <summary>Callouts that stand among the notes, each with its nail's mark, and what else stands first.</summary>
    public IReadOnlyList<string> Marked => _marked;

    /// <summary>Notes that speak for themselves, other than callouts.</summary>
    public IReadOnlyList<string> Told => _told;

    private readonly List<string> _marked = [];

    private readonly List<string> _told = [];

    /// <summary>Places a label; where there is no room it goes to a numbered note; where that has none either it is reported.</summary>
    /// <param name="isCallout">True for what may not go to a note.</param>
    public void Label(LabelRequest request, bool isCallout = false)
    {
        Asked++;
        if (Put(request) || (request.Shortest is string shortest && Put(request with { Variants = [[shortest]], LeaderFrom = 0 })))
            return;
        if (request.Note is not null)
        {
            Note(request.Note);
            return;
        }
        string words = string.Join(", ", request.Variants[0]);
        string number = "(" + (NotesBefore + _notes.Count + 1).ToString(CultureInfo.InvariantCulture) + ")";
        if (!isCallout && Put(request with { Variants = [[number]], Reach = 60 }))
        {
            _notes.Add(words);
            return;
        }
        if (!isCallout && request.Otherwise is not null)
        {
            Note(request.Otherwise);
            return;
        }
        _unplaced.Add((request, isCallout));
    }

    private Finding Finding(LabelRequest request, bool isCallout, string on) => new()
    {
        Code = FindingCode.Sheet,
        Severity = isCallout ? Severity.Error : Severity.Warning,
        Wall = wall,
        Nails = request.Nail is null ? [] : [request.Nail],
        Obstruction = request.Obstruction,
        Message = $"sheet {on} has no room for the label \"{string.Join(", ", request.Variants[0])}\": choose a larger scale or sheet",
    };

    /// <summary>Places a label that may speak of any of several points: at the one with the best place, else as <see cref="Label"/> at the first.</summary>
    public void LabelOneOf(IReadOnlyList<LabelRequest> points)
    {
        if (Put(points))
            Asked++;
        else
            Label(points[0]);
    }

    private bool Put(params IReadOnlyList<LabelRequest> requests)
    {
        PlacedLabel? placed = Placer.PlaceOneOf(requests);
        if (placed is null)
            return false;
        _paper.AddRange(placed.Texts);
        if (placed.Leader is not null)
            _paper.Add(placed.Leader);
        return true;
    }
}
