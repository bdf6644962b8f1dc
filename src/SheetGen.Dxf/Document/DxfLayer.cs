namespace SheetGen.Dxf;

/// <summary>A layer. All entities take colour, linetype and lineweight from their layer.</summary>
/// <param name="Name">Its name; none of <c>&lt; &gt; / \ " : ; ? * | , = `</c>.</param>
/// <param name="Color">AutoCAD colour index, 1 to 255; 7 is black or white.</param>
public sealed record DxfLayer(string Name, int Color = 7) : IDxfNamed
{
    /// <summary><see cref="LineWeight"/> that leaves the choice to the program showing the drawing.</summary>
    public const int DefaultLineWeight = -3;

    /// <summary>Name of a linetype of the document, or Continuous.</summary>
    public string Linetype { get; init; } = DxfLinetype.Continuous;

    /// <summary>Lineweight in 1/100 mm, one of the format's steps (see <see cref="LineWeights"/>), or <see cref="DefaultLineWeight"/>.</summary>
    public int LineWeight { get; init; } = DefaultLineWeight;

    /// <summary>Whether the layer is plotted.</summary>
    public bool Plot { get; init; } = true;

    /// <summary>Whether the layer is switched off.</summary>
    public bool Off { get; init; }

    /// <summary>Whether the layer is frozen.</summary>
    public bool Frozen { get; init; }

    /// <summary>Whether the layer is locked against editing.</summary>
    public bool Locked { get; init; }

    /// <summary>The lineweights that the format knows, in 1/100 mm.</summary>
    public static DxfSequence<int> LineWeights { get; } =
        [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];
}
