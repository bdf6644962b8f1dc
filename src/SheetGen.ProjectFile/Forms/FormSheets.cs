using SheetGen.Model.Forms;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Keys;

namespace SheetGen.ProjectFile.Forms;

/// <summary>The form that stands in place of a project file, made from the key table: its sheets with headings, hints and ranges, empty or filled from a project file.</summary>
public static class FormSheets
{
    /// <summary>Name of the form in a new project's folder.</summary>
    public const string FileName = "wall.xlsx";

    internal const string GuideName = "How to fill in", Takes = "takes", Default = "default", Meaning = "meaning";

    private const int ItemRoom = 40, PointRoom = 120;

    private static readonly string[] Guide =
    [
        "This workbook stands in place of a project file: sheetgen check and sheetgen build take it as it is.",
        "Fill in the yellow cells. A cell left empty leaves its key out; what is always needed is marked *. Choose a cell to see its hint.",
        "Lengths, elevations and coordinates are in the project's unit, or with their own: 6 in, 5'-6\", 1.2 m. Stations: 100+25.5. Angles: degrees, or 89-30-15.",
        "Rows that belong together, such as the points of a profile, stand below each other: the name in the first row, the others may leave it empty.",
        "Several values in one cell are parted by semicolons: 24; 24; 22.5. What has no columns of its own is written in brackets, as in a project file: [{angle: 55}].",
        "Columns may be moved or taken out, and rows sorted where each has its name; the headings must stay as they are. Sheets that are not needed may be taken out.",
        "Formulas are taken by their results, as last saved. Sheets of your own are passed over, with a notice.",
        "Faults are told by sheet and cell, all in one run. Every key is explained in docs/project-file.md.",
        "The layout is for review by the engineer of record; local codes and the project's specifications govern; verify obstructions and utilities before drilling. Not sealed.",
    ];

    /// <summary>The form without values.</summary>
    public static IReadOnlyList<FormSheet> Empty => Of(new FormFilling(null));

    /// <summary>The form filled with the values of a project file's text. Comments are not taken over.</summary>
    /// <param name="unread">Places of values that have no cell in the form; empty where all of them have.</param>
    /// <exception cref="ArgumentException">The text is no YAML.</exception>
    public static IReadOnlyList<FormSheet> Filled(string text, out IReadOnlyList<string> unread)
    {
        var problems = new ProblemList();
        if (Tree.YamlLoader.Load(text.TrimStart('\uFEFF'), "", problems) is not Tree.MapNode root || problems.HasErrors)
            throw new ArgumentException("no project file", nameof(text));
        var filling = new FormFilling(root);
        IReadOnlyList<FormSheet> sheets = Of(filling);
        unread = filling.Unread();
        return sheets;
    }

    private static IReadOnlyList<FormSheet> Of(FormFilling filling) =>
    [
        new FormSheet(GuideName, "Soil nail wall: form of a project", [new FormHead("", "", "", null) { IsInput = false }], [.. Guide.Select(g => (IReadOnlyList<FormCell>)[new FormCell(g)])], 0),
        .. FormPlan.Keys.Select(k => KeySheet(k, filling)),
        .. FormPlan.Tables.Select(t => TableSheet(t, filling)),
        .. FormPlan.Names.Select(n => new FormSheet(n.Name, n.About, [Head(new FormColumn(n.Heading, FormNames.NameKey with { Required = true, Meaning = $"The {n.Heading}." }, [])), .. n.Columns.Select(Head)], filling.Rows(n), ItemRoom)),
        new FormSheet(FormPlan.SourceSheet, "What is taken from files of other programs beside this form: drawings (DXF), LandXML, tables (CSV). sheetgen inspect FILE tells what a file holds.",
            [.. SourceHeads(), .. FormPlan.SourceColumns.Select(Head)], filling.SourceRows(), ItemRoom),
    ];

    private static FormSheet KeySheet(FormKeys keys, FormFilling filling)
    {
        static FormHead Told(string heading) => new(heading, "", "", null) { IsInput = false };
        return new FormSheet(keys.Name, keys.About, [Told(FormKeys.KeyHeading), new FormHead(FormKeys.ValueHeading, "", "", null), Told(Takes), Told(Default), Told(Meaning)],
            [.. keys.Rows.Select(r => (IReadOnlyList<FormCell>)
                [new FormCell(r.Heading), filling.Value(r) with { Rule = RuleOf(r) }, new FormCell(TakesOf(r)), new FormCell(DefaultOf(r.Key)), new FormCell(MeaningOf(r.Key))])], keys.Rows.Count);
    }

    private static FormSheet TableSheet(FormTable table, FormFilling filling)
    {
        IReadOnlyList<IReadOnlyList<FormCell>> rows = filling.Rows(table);
        int room = table.Groups.Any() ? PointRoom : ItemRoom;
        return new FormSheet(table.Name, table.About, [.. table.Columns.Select(Head)], rows, Math.Max(room, rows.Count + room / 2));
    }

    private static FormHead Head(FormColumn column) => new(column.Heading, TakesOf(column), MeaningOf(column.Key) + (DefaultOf(column.Key) is { Length: > 0 } usual ? $" Default: {usual}." : ""), RuleOf(column));

    private static IEnumerable<FormHead> SourceHeads()
    {
        string[] from = [.. FormPlan.Places.SelectMany(p => p.Sources).Select(s => s.Name).Distinct()];
        yield return Head(new FormColumn(FormPlan.Into, KeyForms.Choice(FormPlan.Into, "What is taken from the file.", "top", [.. FormPlan.Places.Select(p => p.Place)]) with { Required = true }, []));
        yield return Head(new FormColumn(FormPlan.Of, KeyForms.Text(FormPlan.Of, "Wall, or layout line, that it is for; may be left empty where there is only one.", "Wall 1"), []));
        yield return Head(new FormColumn(FormPlan.From, KeyForms.Choice(FormPlan.From, "Kind of file.", from[0], from) with { Required = true }, []));
    }

    private static FormRule RuleOf(FormColumn column)
    {
        Key key = column.Key;
        bool isNumber = key.Kind is ValueKind.Integer or ValueKind.Number;
        string hint = $"{MeaningOf(key)} Takes: {TakesOf(column)}.{(DefaultOf(key) is { Length: > 0 } usual ? $" Default: {usual}." : "")}{(key.Example.Length > 0 ? $" Example: {key.Example.Trim('"')}" : "")}";
        return new FormRule(column.Heading, hint, key.Kind == ValueKind.Flag ? ["true", "false"] : key.Choices, RangeOf(key, LengthUnit.Foot), RangeOf(key, LengthUnit.Metre), IsText(key), isNumber, key.Kind == ValueKind.Integer);
    }

    /// <summary>True where a spreadsheet would make a date or a time of some spellings.</summary>
    internal static bool IsText(Key key) =>
        key.Kind is ValueKind.Text or ValueKind.Station or ValueKind.Angle or ValueKind.Azimuth or ValueKind.Lean or ValueKind.Slope or ValueKind.Scale or ValueKind.List or ValueKind.Map or ValueKind.Names;

    private static FormRange? RangeOf(Key key, LengthUnit unit) =>
        key.RangeFor(unit) is { } range && range.InWords("") != "any number"
            ? new FormRange(range.Least, range.LeastIncluded, range.Most, range.MostIncluded, range.InWords(key.Kind == ValueKind.Length ? Lengths.Symbol(unit) : ""))
            : null;

    private static string TakesOf(FormColumn column)
    {
        Key key = column.Key;
        string form = key.Kind switch
        {
            ValueKind.Choice => string.Join(", ", key.Choices),
            ValueKind.Flag => "true or false",
            ValueKind.Integer => "whole number",
            ValueKind.Measure => $"{key.Measure!.Foot} ({key.Measure.Metre})",
            ValueKind.List when key.Item!.Kind is ValueKind.Map or ValueKind.List => "list in brackets",
            ValueKind.List => (key.OneAllowed ? "one or several: " : "several: ") + key.Item.Kind.ToString().ToLowerInvariant(),
            ValueKind.Map or ValueKind.Names => "block in braces",
            _ => key.Kind.ToString().ToLowerInvariant(),
        };
        string part = column.Part switch { 1 => ", the first or least", 2 => ", the last or greatest", _ => "" };
        string range = RangeOf(key, LengthUnit.Foot) is not { } feet ? "" : key.RangeMetric is null ? ", " + feet.Words : $", {feet.Words} ({RangeOf(key, LengthUnit.Metre)?.Words})";
        return (key.Required ? "* " : "") + form + part + range;
    }

    private static string MeaningOf(Key key) => key.Meaning;

    private static string DefaultOf(Key key) => key.Default is null ? "" : key.Default + (key.DefaultMetric is null ? "" : $" ({key.DefaultMetric})");
}
