namespace SheetGen.Model.Results;

/// <summary>Precast panels of one course that have the same size.</summary>
/// <param name="Course">Course from 1, counted up from the wall's lowest bottom.</param>
/// <param name="Width">Width along the panel's own face.</param>
/// <param name="StartHeight">Height at the down-station edge.</param>
/// <param name="EndHeight">Height at the up-station edge; differs below a sloping top.</param>
/// <param name="Places">Station ranges of the panels.</param>
public sealed record PanelCount(
    Wall Wall, Section Section, int Course, PanelSize Size, double Width, double StartHeight, double EndHeight, IReadOnlyList<string> Places)
{
    /// <summary>Mark of their kind: panels of one mark are cast alike.</summary>
    public string Mark { get; init; } = "";

    /// <summary>Names of the openings that cut them.</summary>
    public IReadOnlyList<string> CutBy { get; init; } = [];

    /// <summary>Area of all of them on their own face, openings deducted.</summary>
    public double Area { get; init; }

    public int Count => Places.Count;
}
