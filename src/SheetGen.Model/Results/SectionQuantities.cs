namespace SheetGen.Model.Results;

/// <summary>Everything measured of one section.</summary>
public sealed record SectionQuantities
{
    public required Wall Wall { get; init; }

    public required Section Section { get; init; }

    /// <summary>Least height of the face, top less bottom.</summary>
    public required double LeastHeight { get; init; }

    public required double GreatestHeight { get; init; }

    /// <summary>Numbers of the rows that have nails, verification test nails left out.</summary>
    public required IReadOnlyList<RowNumber> Rows { get; init; }

    /// <summary>Least and greatest vertical gap between grid rows as built; null with one row or none.</summary>
    public (double Least, double Greatest)? RowGaps { get; init; }

    public required IReadOnlyList<NonTypicalGap> Gaps { get; init; }

    public required IReadOnlyList<LengthCount> Lengths { get; init; }

    public required IReadOnlyList<GridCount> Grid { get; init; }

    /// <summary>Mean Voronoi cell of a head; null without nails.</summary>
    public required double? MeanArea { get; init; }

    public required double? GreatestArea { get; init; }

    public required string GreatestAreaMark { get; init; }

    public required IReadOnlyDictionary<string, Quantity> Amounts { get; init; }
}
