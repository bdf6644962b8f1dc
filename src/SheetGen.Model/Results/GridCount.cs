namespace SheetGen.Model.Results;

/// <summary>Reconciliation of a row: grid stations less those left out plus nails added is the number of nails.</summary>
public sealed record GridCount(Wall Wall, Section Section, RowNumber Row, int GridStations, int LeftOut, int Added, int Nails)
{
    /// <summary>0 where the count is reconciled.</summary>
    public int Difference => GridStations - LeftOut + Added - Nails;
}
