using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;

namespace SheetGen.Layout.Revisions;

/// <summary>A layout of this run as a state to compare.</summary>
public static class StateOf
{
    public static RevisionState Layout(string name, WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities, BidTable bid) => new()
    {
        Name = name,
        Title = project.Info.Title,
        Revision = project.Sheets.Revision,
        Date = project.Sheets.Date,
        Unit = project.Unit,
        Walls = project.Walls,
        Nails = [.. layout.Nails.Select(RevisionNail.Of)],
        Findings = [.. report.Findings.Select(RevisionFinding.Of)],
        Amounts =
        [
            .. quantities.Sections.SelectMany(s => quantities.Definitions.Where(d => s.Amounts.ContainsKey(d.Name)).Select(d => new RevisionAmount(
                d.Name, d.Text, d.Unit, s.Wall.Name, s.Section.Name, s.Section.Stage, s.Amounts[d.Name].Amount))),
        ],
        Items = [.. bid.Lines.Select(l => new RevisionItem(l.Item.Number, l.Item.Description, l.Item.Unit, l.Rounded, l.Amount))],
    };
}
