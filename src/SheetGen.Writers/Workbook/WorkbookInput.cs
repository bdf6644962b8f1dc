using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Workbook;

/// <summary>Everything that the workbook shows.</summary>
internal sealed record WorkbookInput(
    WallProject Project, NailLayout Layout, ClearanceReport Report, QuantityTable Quantities, BidTable Bid, RunInfo Run)
{
    /// <summary>The plan review; empty where none is asked for.</summary>
    public IReadOnlyList<ReviewItem> Review { get; init; } = [];

    public bool IsFeet => Lengths.IsFoot(Project.Unit);

    public string Length => IsFeet ? "ft" : "m";

    public string Weight => IsFeet ? "lb" : "kg";

    public string Force => IsFeet ? "kip" : "kN";

    /// <summary>Format of an elevation.</summary>
    public CellFormat Place => IsFeet ? CellFormat.PlainTwo : CellFormat.PlainThree;

    /// <summary>Format of a station, which is a plain number in every list, so that lists can be joined by it.</summary>
    public CellFormat Station => IsFeet ? CellFormat.StationFeet : CellFormat.StationMetres;

    /// <summary>True where printed stations jump, so that lists have them beside the plain numbers.</summary>
    public bool HasStationEquations => Project.LayoutLines.Any(l => l.Stationing.Equations.Count > 0);

    private readonly Dictionary<string, int> _places = Quantities.Nails.Select((n, i) => (n.Nail.Mark, i + 1)).ToDictionary();

    /// <summary>Place of a nail in the list, from 1.</summary>
    public double PlaceOf(NailQuantity nail) => _places[nail.Nail.Mark];

    /// <summary>Line of the lift list from which a nail is drilled, from 1; null where there is none.</summary>
    public int? LiftOf(NailQuantity nail)
    {
        for (int i = 0; i < Quantities.Lifts.Count; i++)
        {
            ExcavationLift lift = Quantities.Lifts[i];
            if (ReferenceEquals(lift.Section, nail.Nail.Section) && lift.Rows.Contains(nail.Nail.Row) && lift.Start <= nail.Nail.Along && nail.Nail.Along <= lift.End)
                return i + 1;
        }
        return null;
    }

    /// <summary>Place of a section in the take-off, from 1: the number by which the lists are summed.</summary>
    public int NumberOf(Wall wall, Section section)
    {
        for (int i = 0; i < Quantities.Sections.Count; i++)
        {
            if (ReferenceEquals(Quantities.Sections[i].Wall, wall) && ReferenceEquals(Quantities.Sections[i].Section, section))
                return i + 1;
        }
        for (int i = 0; i < Quantities.Sections.Count; i++)
        {
            if (Quantities.Sections[i].Wall.Name == wall.Name && Quantities.Sections[i].Section.Name == section.Name)
                return i + 1;
        }
        return 0;
    }
}
