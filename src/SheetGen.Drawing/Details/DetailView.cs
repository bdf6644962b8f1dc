using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Details;

/// <summary>What a detail shows; other views refer to it by this.</summary>
public enum DetailKind
{
    Head,
    Hole,
    Bore,
    Facing,
    Top,
    Foot,
    Strips,
    Lap,
    Outlet,
    Joint,
    End,
    Corner,
    Opening,
    Test,
}

/// <summary>A detail before it is drawn.</summary>
/// <param name="Subjects">Walls, design sections, corners or openings that it stands for.</param>
/// <param name="Extent">What it shows, in project units about its own origin.</param>
public sealed record DetailView(DetailKind Kind, IReadOnlyList<object> Subjects, string Title, Box Extent, Action<DetailPen> Draw)
{
    /// <summary>Degrees by which its picture leans to the right, about the origin.</summary>
    public double Lean { get; init; }

    /// <summary>Room for words on either side, in heights of a letter.</summary>
    public double Beside { get; init; } = 15;

    /// <summary>Room for words above and below, in heights of a letter.</summary>
    public double Above { get; init; } = 7;

    /// <summary>Greatest height of the picture without its words, in heights of a letter: a larger one shows no more.</summary>
    public double Highest { get; init; } = 44;
}
