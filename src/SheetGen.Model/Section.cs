namespace SheetGen.Model;

/// <summary>A stretch of a wall between two stations with one design grid. Lengths in project units, angles in degrees.</summary>
public sealed record Section
{
    public required string Name { get; init; }

    /// <summary>Distance along the layout line where it starts.</summary>
    public required double Start { get; init; }

    /// <summary>Distance along the layout line where it ends.</summary>
    public required double End { get; init; }

    public required double HorizontalSpacing { get; init; }

    public required double VerticalSpacing { get; init; }

    public RowKind Rows { get; init; } = RowKind.Level;

    public Pattern Pattern { get; init; } = Pattern.Square;

    /// <summary>
    /// Distance along the face from the start of each row to the first column that the spacing counts from, from 0 to under the horizontal
    /// spacing; null where what the spacing leaves over is shared by both ends.
    /// </summary>
    public double? FirstColumn { get; init; }

    /// <summary>Depth of the first row below the highest top of the section (level) or below the top (parallel).</summary>
    public required double TopRowDepth { get; init; }

    /// <summary>Angle of the holes below horizontal.</summary>
    public required double Inclination { get; init; }

    /// <summary>Nail lengths by row from the top; the last one repeats.</summary>
    public required IReadOnlyList<double> Lengths { get; init; }

    public required Bar Bar { get; init; }

    public required double HoleDiameter { get; init; }

    public TestNails TestNails { get; init; } = TestNails.None;

    public CornerRows CornerRows { get; init; } = CornerRows.Continuous;

    /// <summary>True where <see cref="FirstColumn"/> is to be chosen so that the fewest nails stay unresolved or noted.</summary>
    public bool HasBestColumns { get; init; }

    /// <summary>Name of the construction stage that it belongs to; empty where the project file gives none.</summary>
    public string Stage { get; init; } = "";

    /// <summary>The engineer's values; null where the project file gives none.</summary>
    public DesignValues? Design { get; init; }

    /// <summary>Nail length of a grid row, counted from 1.</summary>
    public double LengthOfRow(int row) => Lengths[Math.Clamp(row - 1, 0, Lengths.Count - 1)];
}
