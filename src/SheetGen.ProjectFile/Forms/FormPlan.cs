using SheetGen.ProjectFile.Keys;

namespace SheetGen.ProjectFile.Forms;

/// <summary>Which sheet of the form has which keys of the key table. A test holds that every key has its place.</summary>
internal static class FormPlan
{
    public const string SourceSheet = "From files", Into = "goes into", Of = "of", From = "from";

    private static readonly Key Root = KeyTable.Root;

    public static IReadOnlyList<FormKeys> Keys { get; } =
    [
        Sheet("Project", "The project and what its sheets are called.", ["format", "project", "pay_items", "pay_length_from", "sheets"], ["sheets.revisions"]),
        Sheet("Design", "Facts of the design that the sheets print; nothing is computed with them.", ["design"], []),
        Sheet("Rules", "Rules of the layout. What is left empty has the default that stands beside it.", ["rules"], []),
        Sheet("Rates", "Rates and factors of the take-off; none is assumed.", ["rates"], ["rates.drilling", "rates.build_up"]),
        Sheet("Section defaults", "What the sections of all walls have in common; a section's own value goes before it.", ["section_defaults"], []),
    ];

    public static IReadOnlyList<FormTable> Tables { get; } =
    [
        Table("Layout lines", "A line: name and start; its elements one below the other, in the same and the following rows.", ["layout_lines"], groups: ["elements", "station_equations"]),
        Table("Walls", "A row a wall.", ["walls"],
            apart: ["top", "existing_ground", "finished_grade", "bottom.steps", "cross_sections", "openings", "no_nails", "sections"], whole: ["section_defaults"]),
        Table("Profiles", "Points of each profile one below the other; the wall's name in the first row of its points.", ["walls"], names: true,
            only: ["top", "existing_ground", "finished_grade", "bottom"], apart: ["bottom.from_grade"], groups: ["top", "existing_ground", "finished_grade", "bottom.steps"]),
        Table("Sections", "A row a section. Lengths by row from the top: 24; 24; 22.", ["walls", "sections"], apart: ["design"]),
        Table("Design values", "The engineer's values of a section; all may be left out.", ["walls", "sections"], names: true, only: ["design"]),
        Table("Cross sections", "Ground in front of the wall: the station in the first row, the points one below the other.", ["walls", "cross_sections"], groups: ["ground"]),
        Table("Openings", "Openings and pipes through the face.", ["walls", "openings"]),
        Table("No nails", "Stretches of the face that are closed to nail heads.", ["walls", "no_nails"]),
        .. Obstructions(),
        Table("Borings", "A boring in a row; its layers from the top down in the same and the following rows.", ["borings"], groups: ["layers"]),
        Table("Fixed nails", "Nails, or whole rows, that the designer pins.", ["fixed"]),
        Table("Accepted findings", "Findings that the engineer has accepted, with reason and by whom.", ["accept"]),
        Table("Revisions", "Rows of the revision table.", ["sheets.revisions"]),
    ];

    public static IReadOnlyList<FormNames> Names { get; } =
    [
        NamesOf("Prices", "Unit prices by pay item number, the user's own.", "prices", "item"),
        NamesOf("Build-up", "Cost of one unit by pay item number.", "rates.build_up", "item"),
        NamesOf("Drilling", "Length of hole that a rig drills in an hour, by soil layer.", "rates.drilling", "layer"),
    ];

    /// <summary>What can be taken from a file of another program: the word for its place, the list that it stands in, and its sources.</summary>
    public static IReadOnlyList<(string Place, bool OfWall, IReadOnlyList<Key> Sources)> Places { get; } =
    [
        ("layout_line", false, SourceKeys.OfLayoutLine),
        ("top", true, SourceKeys.OfProfile), ("existing_ground", true, SourceKeys.OfProfile), ("finished_grade", true, SourceKeys.OfProfile),
        ("cross_sections", true, SourceKeys.OfCrossSections),
        ("obstructions", false, SourceKeys.OfObstructions), ("borings", false, SourceKeys.OfBorings),
    ];

    /// <summary>The columns of the sheet that names files: every key of every source once.</summary>
    public static IReadOnlyList<FormColumn> SourceColumns { get; } =
        [.. Places.SelectMany(p => p.Sources).SelectMany(s => s.Children).DistinctBy(k => k.Name).Select(k => new FormColumn(k.Name, k with { Required = k.Name == "file" }, [k.Name]))];

    /// <summary>The key at a path from the root.</summary>
    public static Key At(IEnumerable<string> path) => path.Aggregate(Root, (key, name) => Block(key).Children.First(k => k.Name == name));

    private static Key Block(Key key) => key.Kind == ValueKind.List ? key.Item! : key;

    private static FormKeys Sheet(string name, string about, IReadOnlyList<string> keys, IReadOnlyList<string> apart) =>
        new(name, about, [.. FormColumn.Of(keys.Select(k => At([k])), apart, [], [])]);

    private static FormTable Table(
        string name, string about, IReadOnlyList<string> lists, bool names = false, IReadOnlyList<string>? only = null, IReadOnlyList<string>? apart = null,
        IReadOnlyList<string>? groups = null, IReadOnlyList<string>? whole = null)
    {
        IReadOnlyList<IReadOnlyList<string>> paths = [.. lists.Select(l => l.Split('.'))];
        Key[] items = [.. Enumerable.Range(1, paths.Count).Select(n => At(paths.Take(n).SelectMany(p => p)).Item!)];
        IEnumerable<Key> keys = items[^1].Children.Where(k => only?.Contains(k.Name) ?? true);
        return new FormTable(name, about, paths, names, [.. ReferencesTo(items[..^(names ? 0 : 1)]), .. FormColumn.Of(keys, apart ?? [], groups ?? [], whole ?? [])], []);
    }

    private static IEnumerable<FormColumn> ReferencesTo(IEnumerable<Key> items) =>
        items.Select(i => new FormColumn(i.Name, KeyForms.Text(i.Name, $"Name of the {i.Name} that it belongs to; may be left empty where there is only one.", ""), []) { IsReference = true });

    private static IEnumerable<FormTable> Obstructions()
    {
        Key item = At(["obstructions"]).Item!;
        (string Name, string About, string[] Kinds, string[] Groups)[] sheets =
        [
            ("Shafts and piles", "A row a shaft or pile: vertical at a point with top and bottom, or with both ends of its axis in two rows.", ["shaft", "pile"], ["axis"]),
            ("Solids", "Caps, footings and the like: the corners of the footprint one below the other.", ["solid"], ["footprint"]),
            ("Beams", "A row a beam or girder.", ["beam"], []),
            ("Pipes", "The points of a pipe's axis one below the other.", ["pipe"], ["points"]),
            ("Boundaries", "The points of a right-of-way or easement line one below the other.", ["boundary"], ["points"]),
        ];
        return sheets.Select(s => new FormTable(s.Name, s.About, [["obstructions"]], false,
            [.. FormColumn.Of([.. item.Children.Take(2), .. item.Variants[s.Kinds[0]], .. item.Children.Skip(2)], s.Kinds.Length == 1 ? ["kind"] : [], s.Groups, [])
                .Select(c => c.Heading == "kind" ? c with { Key = c.Key with { Choices = s.Kinds } } : c)], s.Kinds));
    }

    private static FormNames NamesOf(string name, string about, string path, string heading)
    {
        string[] at = path.Split('.');
        Key item = At(at).Item!;
        return new FormNames(name, about, at, heading, item.Kind == ValueKind.Map ? [.. FormColumn.Of(item.Children, [], [], [])] : [new FormColumn(item.Name, item, [])]);
    }
}
