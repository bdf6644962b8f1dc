using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Model.Revisions;

/// <summary>A layout with its findings and quantities as plain figures, wherever they come from: a project file, a result folder, nails.csv.</summary>
public sealed record RevisionState
{
    /// <summary>How it is named in messages: the file or folder as given.</summary>
    public required string Name { get; init; }

    public string Title { get; init; } = "";

    /// <summary>Revision and date of the sheets; empty where not known.</summary>
    public string Revision { get; init; } = "";

    public string Date { get; init; } = "";

    /// <summary>Null where the source does not tell.</summary>
    public required LengthUnit? Unit { get; init; }

    /// <summary>Its walls, whose station equations its stations are printed with; empty where only results are known.</summary>
    public IReadOnlyList<Wall> Walls { get; init; } = [];

    public required IReadOnlyList<RevisionNail> Nails { get; init; }

    /// <summary>Null where the source has none.</summary>
    public IReadOnlyList<RevisionFinding>? Findings { get; init; }

    /// <summary>By quantity, wall, section and stage; null where the source has none.</summary>
    public IReadOnlyList<RevisionAmount>? Amounts { get; init; }

    /// <summary>Null where the source has none.</summary>
    public IReadOnlyList<RevisionItem>? Items { get; init; }

    /// <summary>A layout of this run with its findings, its take-off and its pay items.</summary>
    public static RevisionState Of(string name, WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities, BidTable bid) => new()
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

/// <summary>A nail in the figures that a driller needs. Lengths in the state's unit.</summary>
/// <param name="Row">Number of the row as in nails.csv.</param>
public sealed record RevisionNail(
    string Wall, string Section, string Row, string Mark, string Kind, double Station, double Elevation, double Splay, double Inclination, double Length,
    string Bar, double HoleDiameter)
{
    public static RevisionNail Of(Nail nail) => new(
        nail.Wall.Name, nail.Section.Name, nail.Row.ToString(), nail.Mark, nail.Kind.ToString().ToLowerInvariant(), nail.Station, nail.Elevation, nail.Splay,
        nail.Inclination, nail.Length, nail.Bar.ToString(), nail.HoleDiameter);
}

/// <summary>A finding; two are the same thing where <see cref="Key"/> is equal.</summary>
public sealed record RevisionFinding(
    string Code, Severity Severity, string Wall, IReadOnlyList<string> Nails, string Obstruction, double? Station, double? ToStation, double? Clear, double? Required,
    string Message)
{
    /// <summary>What it is about: code, wall, nails, obstruction; without nails and obstruction also its place in the order of such findings.</summary>
    public string Key => string.Join('|', Code, Wall, string.Join(',', Nails.Order(StringComparer.Ordinal)), Obstruction);

    public static RevisionFinding Of(Finding f) => new(
        f.Code, f.Severity, f.Wall?.Name ?? "", f.Nails, f.Obstruction ?? "", f.Station, f.ToStation, f.Clear, f.Required, f.Message);
}

/// <summary>A quantity of a section.</summary>
/// <param name="Name">Stable name such as pay_length.</param>
/// <param name="Amount">Unrounded; null where it is not known or nobody asks for it.</param>
public sealed record RevisionAmount(string Name, string Text, string Unit, string Wall, string Section, string Stage, double? Amount);

/// <summary>A bid item with its rounded quantity.</summary>
public sealed record RevisionItem(string Number, string Description, string Unit, double? Quantity, double? Amount);
