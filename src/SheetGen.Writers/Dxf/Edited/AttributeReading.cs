using System.Globalization;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>The attributes of a nail's block: the directions and the length that a person has typed, and what was typed elsewhere and counts for nothing.</summary>
internal sealed class AttributeReading
{
    private const double MostSplay = 89, LeastInclination = -45, MostInclination = 89;

    private readonly WallProject _project;
    private readonly Nail? _nail;
    private readonly BlockReference? _was;
    private readonly NailBlock _block;
    private readonly List<string> _notRead;
    private readonly string _called;

    public AttributeReading(WallProject project, Nail? nail, BlockReference? was, NailBlock block, List<string> notRead)
    {
        _project = project;
        _nail = nail;
        _was = was;
        _block = block;
        _notRead = notRead;
        _called = nail?.Mark ?? $"a nail added as {block.Value(NailSymbols.Mark) ?? block.Insert.Block}";
        Splay = Typed("SPLAY", nail?.Splay, -MostSplay, MostSplay, "degrees, positive up-station", null);
        Inclination = Typed("INCLINATION", nail?.Inclination, LeastInclination, MostInclination, "degrees below horizontal", null);
        Length = Typed("LENGTH", nail?.Length, Lengths.Quantum(project.Unit), 1000, Lengths.Symbol(project.Unit), project.Unit);
        if (nail is not null)
            Others();
    }

    /// <summary>Null where the block does not tell it or it cannot be read.</summary>
    public double? Splay { get; }

    public double? Inclination { get; }

    public double? Length { get; }

    public bool IsTurned => (Splay is { } a && a != _nail?.Splay) || (Inclination is { } i && i != _nail?.Inclination);

    /// <summary>STATION and ELEVATION that were typed anew: the place of the block counts.</summary>
    /// <param name="stands">True where the block stands where it stood.</param>
    public void Place(bool stands)
    {
        string[] typed = [.. new[] { "STATION", "ELEVATION" }.Where(tag => _block.Value(tag) is { } text && Was(tag) is { } was && text != was).Select(tag => $"{tag} reads \"{_block.Value(tag)}\"")];
        if (typed.Length > 0)
            _notRead.Add($"{_called}: {string.Join(", ", typed)}, but {(stands ? "the block stands where it stood" : "the block was moved too")}; the place of the block counts");
    }

    private string? Was(string tag) => _was?.Attributes.FirstOrDefault(a => a.Key == tag).Value;

    private double? Typed(string tag, double? before, double least, double most, string words, LengthUnit? unit)
    {
        string kept = before is { } b ? $"{b.ToString("0.###", CultureInfo.InvariantCulture)} is kept" : "the section's is taken";
        if (_block.Value(tag) is not { } text)
        {
            if (_block.IsEmptied(tag) && Was(tag) is { Length: > 0 })
                _notRead.Add($"{_called}: {tag} is empty; {kept}");
            return null;
        }
        // What is written as we wrote it is the figure itself, with all its decimals.
        if (text == Was(tag))
            return before;
        if (NailBlock.Number(text, unit) is { } value && value >= least && value <= most)
            return value;
        _notRead.Add($"{_called}: {tag} reads \"{Short(text)}\", which is no number of {words}; {kept}");
        return null;
    }

    private void Others()
    {
        if (_block.Value(NailSymbols.Mark) is { } mark && !MarkForms.Of(_nail!).Contains(mark))
            _notRead.Add($"{_called}: MARK reads \"{Short(mark)}\"; marks are made from section, row and column and are not taken from the drawing");
        if (_block.Value("BAR") is { } bar && bar != Was("BAR"))
            _notRead.Add($"{_called}: BAR reads \"{Short(bar)}\"; bars are the section's and are not taken from the drawing");
        if (_block.Value("ROW") is { } row && row != Was("ROW"))
            _notRead.Add($"{_called}: ROW reads \"{Short(row)}\"; the row is the nail's own and is not taken from the drawing");
        if (_block.Value("SIDE") is { } side && side != Was("SIDE") && Splay is { } splay && Says(side) is int sign && sign != Math.Sign(splay))
            _notRead.Add(FormattableString.Invariant($"{_called}: SIDE reads \"{Short(side)}\", SPLAY {splay:0.##}; SPLAY counts, positive up-station"));
        if (_block.Value("STATUS") is { } status && status != Was("STATUS"))
            _notRead.Add($"{_called}: STATUS reads \"{Short(status)}\"; the status follows from place and direction and is not taken from the drawing");
    }

    private int? Says(string side)
    {
        string upper = side.ToUpperInvariant();
        if (upper.Contains("UP", StringComparison.Ordinal))
            return 1;
        if (upper.Contains("DOWN", StringComparison.Ordinal) || upper.Contains("DN", StringComparison.Ordinal))
            return -1;
        int upIsLeft = _nail!.Wall.Side;
        return upper.Contains("LEFT", StringComparison.Ordinal) ? upIsLeft : upper.Contains("RIGHT", StringComparison.Ordinal) ? -upIsLeft : null;
    }

    private string Short(string text) => text.Length <= 40 ? text : text[..40] + "...";
}
