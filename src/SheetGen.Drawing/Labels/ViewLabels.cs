using System.Globalization;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Labels;

/// <summary>Collects what is written into one view: labels by the placer, numbered notes where there is no room, problems.</summary>
public sealed class ViewLabels(DrawingContext context, Viewport viewport, Box textFrame, string sheet, Wall? wall)
{
    private readonly List<Primitive> _paper = [];
    private readonly List<string> _notes = [];
    private readonly List<Finding> _findings = [];

    public LabelPlacer Placer { get; } = new(textFrame, context.Templates.Texts);

    public Viewport Viewport { get; } = viewport;

    /// <summary>What was written, in paper coordinates.</summary>
    public IReadOnlyList<Primitive> Paper => _paper;

    public IReadOnlyList<string> Notes => _notes;

    public IReadOnlyList<Finding> Findings => _findings;

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
        _paper.Add(text);
        return true;
    }

    public int LinesUnder(Text text) => Placer.Crowd.LinesUnder(TextMeasure.BoxOf(text, context.StyleOf(text.Role)));

    /// <summary>Places a label; where there is no room it goes to a numbered note; where that has none either it is reported.</summary>
    /// <param name="isCallout">True for what may not go to a note.</param>
    public void Label(LabelRequest request, bool isCallout = false)
    {
        Asked++;
        if (Put(request))
            return;
        string words = string.Join(", ", request.Variants[0]);
        string number = "(" + (_notes.Count + 1).ToString(CultureInfo.InvariantCulture) + ")";
        if (!isCallout && Put(request with { Variants = [[number]], Reach = 60 }))
        {
            _notes.Add(words);
            return;
        }
        _findings.Add(new Finding
        {
            Code = FindingCode.Sheet,
            Severity = isCallout ? Severity.Error : Severity.Warning,
            Wall = wall,
            Nails = request.Nail is null ? [] : [request.Nail],
            Obstruction = request.Obstruction,
            Message = $"sheet {sheet} has no room for the label \"{words}\": choose a larger scale or sheet",
        });
    }

    /// <summary>Places a label that may speak of any of several points: close to one of them, or as <see cref="Label"/> at the first.</summary>
    public void LabelOneOf(IReadOnlyList<LabelRequest> points)
    {
        if (points.Any(p => Put(p with { Reach = 8 })))
            Asked++;
        else
            Label(points[0]);
    }

    private bool Put(LabelRequest request)
    {
        PlacedLabel? placed = Placer.Place(request);
        if (placed is null)
            return false;
        _paper.AddRange(placed.Texts);
        if (placed.Leader is not null)
            _paper.Add(placed.Leader);
        return true;
    }
}
