using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>Runs headed, numbered notes down the columns of an area.</summary>
public sealed class NoteFlow(DrawingContext context, Box area, double width, double gap)
{
    private readonly List<Primitive> _drawn = [];
    private double _y = area.Top;

    /// <summary>Height at which the next block would begin.</summary>
    public double Y => _y;

    public double X => area.Left + Column * (width + gap);

    /// <summary>The column reached, counted from 0.</summary>
    public int Column { get; private set; }

    public IReadOnlyList<Primitive> Drawn => _drawn;

    private TextStyle Style => context.StyleOf(TextRole.Note);

    public void Add(string heading, IReadOnlyList<string> notes)
    {
        TextStyle head = context.StyleOf(TextRole.Heading);
        Room(head.Height * 2 + 3 * Style.Height * TextMeasure.LinePitch);
        _y -= head.Height;
        _drawn.Add(new Text(LayerRole.Note, TextRole.Heading, new(X, _y), head.Height, heading));
        _y -= head.Height * 0.8;
        for (int i = 0; i < notes.Count; i++)
        {
            IReadOnlyList<string> lines = TextMeasure.Wrap(notes[i], width - 8, Style.Height, Style);
            Room(lines.Count * Style.Height * TextMeasure.LinePitch);
            for (int l = 0; l < lines.Count; l++)
            {
                _y -= Style.Height * TextMeasure.LinePitch;
                if (l == 0)
                    _drawn.Add(Write(new(X, _y), (i + 1).ToString(CultureInfo.InvariantCulture) + "."));
                _drawn.Add(Write(new(X + 8, _y), lines[l]));
            }
            _y -= Style.Height * 0.7;
        }
        _y -= head.Height * 1.5;
    }

    private void Room(double height)
    {
        if (_y - height >= area.Bottom)
            return;
        Column++;
        _y = area.Top;
    }

    private Text Write(Point2 at, string value) => new(LayerRole.Note, TextRole.Note, at, Style.Height, value);
}
