using SheetGen.ProjectFile.Keys;

namespace SheetGen.ProjectFile.Forms;

/// <summary>A sheet of keys below each other: a row a value.</summary>
internal sealed record FormKeys(string Name, string About, IReadOnlyList<FormColumn> Rows)
{
    public const string KeyHeading = "key", ValueHeading = "value";
}

/// <summary>A sheet with a row for each item of a list, and further rows for the items of lists in it.</summary>
/// <param name="Lists">Paths of the lists from the root down to the one whose items it has; each but the first is a list of the one before.</param>
/// <param name="Names">True where the rows add to items that another sheet has, named by the row.</param>
/// <param name="Columns">Those that name items of the lists above come first.</param>
/// <param name="Kinds">Of obstructions: the kinds that it takes; with only one there is no column for it.</param>
internal sealed record FormTable(string Name, string About, IReadOnlyList<IReadOnlyList<string>> Lists, bool Names, IReadOnlyList<FormColumn> Columns, IReadOnlyList<string> Kinds)
{
    public IEnumerable<FormColumn> References => Columns.Where(c => c.IsReference);

    public IEnumerable<FormColumn> Own => Columns.Where(c => c is { IsReference: false, Group: null });

    public IEnumerable<IGrouping<string, FormColumn>> Groups => Columns.Where(c => c.Group is not null).GroupBy(c => string.Join('.', c.Group!));

    public IReadOnlyList<string> List => Lists[^1];
}

/// <summary>A sheet with a row for each name of a block whose keys are the user's own.</summary>
/// <param name="Path">Path of the block from the root.</param>
/// <param name="Heading">What the names are.</param>
/// <param name="Columns">The values of a name; with an empty path where it is one value.</param>
internal sealed record FormNames(string Name, string About, IReadOnlyList<string> Path, string Heading, IReadOnlyList<FormColumn> Columns)
{
    public static Key NameKey { get; } = KeyForms.Text("name", "The name.", "SN-1");
}
