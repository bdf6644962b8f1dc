using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Review;

/// <summary>A finished wall as the page needs it.</summary>
/// <param name="Report">All findings, those of the sheets among them.</param>
/// <param name="Tables">Tables that the page shows as they are: quantities by section, bid items.</param>
public sealed record ReviewInput(WallProject Project, NailLayout Layout, ClearanceReport Report, IReadOnlyList<TableData> Tables, RunInfo Run);
