using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Forms.Xlsx;
using SheetGen.ProjectFile.Tree;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Forms;

/// <summary>
/// Reads a filled form into the tree that a project file is read into, so that everything after it is the same; places are cells. What a
/// cell cannot say is reported, and the rest is read all the same.
/// </summary>
internal sealed class FormReader
{
    private const string FormHint = "\"start DIR --form\" writes a form to fill in";

    private readonly string _file;
    private readonly ProblemList _problems;
    private readonly Dictionary<string, GridSheet> _sheets = [];
    private readonly Draft _root;

    private FormReader(string file, ProblemList problems)
    {
        (_file, _problems) = (file, problems);
        _root = new Draft(new SourceSpot(file, 1, 1) { Sheet = FormPlan.Keys[0].Name });
    }

    /// <summary>True for the first bytes of a zip or of the older binary workbooks: no project file in YAML begins so.</summary>
    public static bool IsWorkbook(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith("PK\x03\x04"u8) || bytes.StartsWith(new byte[] { 0xD0, 0xCF, 0x11, 0xE0 });

    /// <summary>The root node; null where the workbook is no form, which is then reported.</summary>
    public static Node? Read(byte[] bytes, string file, ProblemList problems)
    {
        var start = new SourceSpot(file, 1, 1);
        if (!bytes.AsSpan().StartsWith("PK"u8))
        {
            problems.Add(ProblemCodes.FormFile, start, "the workbook has a password or is of the older binary kind (.xls)", "save it as .xlsx without a password");
            return null;
        }
        try
        {
            return new FormReader(file, problems).Read(WorkbookFile.Read(bytes));
        }
        catch (WorkbookException e)
        {
            problems.Add(e.IsTooLarge ? ProblemCodes.TooLarge : ProblemCodes.FormFile, start, $"the workbook {e.Message}", FormHint);
            return null;
        }
    }

    private MapNode? Read(IReadOnlyList<GridSheet> sheets)
    {
        string[] known = [.. FormPlan.Keys.Select(k => k.Name), .. FormPlan.Tables.Select(t => t.Name), .. FormPlan.Names.Select(n => n.Name), FormPlan.SourceSheet, FormSheets.GuideName];
        foreach (GridSheet sheet in sheets)
        {
            if (known.FirstOrDefault(k => Spelling.Bare(k) == Spelling.Bare(sheet.Name)) is { } name)
                _sheets[name] = sheet;
            else if (sheet.Rows.Count > 0)
                _problems.Add(ProblemCodes.FormSheetPassed, new SourceSpot(_file, 1, 1) { Sheet = Shown.Short(sheet.Name) }, "this sheet is none of the form's and is not read", Suggestion.Nearest(sheet.Name, known) is { } near ? $"did you mean \"{near}\"?" : "");
        }
        if (!_sheets.Keys.Any(k => k != FormSheets.GuideName))
        {
            _problems.Add(ProblemCodes.FormFile, new SourceSpot(_file, 1, 1), "the workbook has none of the form's sheets", FormHint);
            return null;
        }
        foreach (FormKeys keys in FormPlan.Keys)
            ReadKeys(keys);
        foreach (FormTable table in FormPlan.Tables)
            ReadTable(table);
        foreach (FormNames names in FormPlan.Names)
            ReadNames(names);
        ReadSources();
        return _root.Node();
    }

    private FormSheetReader? Open(string name, IEnumerable<string> headings, params IReadOnlyList<string> told) =>
        _sheets.TryGetValue(name, out GridSheet? sheet) && new FormSheetReader(_file, sheet, [.. headings], told, _problems) is { IsReadable: true } reader ? reader : null;

    private void ReadKeys(FormKeys keys)
    {
        var known = keys.Rows.ToDictionary(r => Spelling.Bare(r.Heading), r => r);
        if (Open(keys.Name, [FormKeys.KeyHeading, FormKeys.ValueHeading], FormSheets.Takes, FormSheets.Default, FormSheets.Meaning) is not { } sheet)
            return;
        foreach (IReadOnlyDictionary<string, GridCell> row in sheet.Rows())
        {
            if (!row.TryGetValue(FormKeys.ValueHeading, out GridCell value))
                continue;
            if (!row.TryGetValue(FormKeys.KeyHeading, out GridCell key))
                _problems.Add(ProblemCodes.FormCell, sheet.SpotOf(value), "this value stands beside no key", "write the key into the same row, or take the value out");
            else if (!known.TryGetValue(Spelling.Bare(key.Text), out FormColumn? column))
                _problems.Add(ProblemCodes.UnknownKey, sheet.SpotOf(key), $"unknown key \"{Shown.Short(key.Text)}\" on the sheet \"{keys.Name}\"", Suggestion.Nearest(key.Text, [.. keys.Rows.Select(r => r.Heading)]) is { } near ? $"did you mean \"{near}\"?" : "\"start --form\" writes a form with all keys");
            else
                Put(_root, column, sheet, value);
        }
    }

    private void ReadTable(FormTable table)
    {
        if (Open(table.Name, table.Columns.Select(c => c.Heading)) is not { } sheet)
            return;
        Draft? item = null;
        IReadOnlyDictionary<string, GridCell> first = new Dictionary<string, GridCell>();
        FormColumn[] own = [.. table.References, .. table.Own];
        foreach (IReadOnlyDictionary<string, GridCell> row in sheet.Rows())
        {
            bool adds = table.Groups.Any(g => g.Any(c => row.ContainsKey(c.Heading)));
            bool goesOn = adds && item is not null && own.All(c => !row.TryGetValue(c.Heading, out GridCell cell) || (first.TryGetValue(c.Heading, out GridCell before) && before.Text == cell.Text));
            if (!goesOn)
            {
                item = table.Names || own.Any(c => row.ContainsKey(c.Heading)) ? Begin(table, sheet, row) : null;
                first = row;
                if (item is null && !table.Names && !own.Any(c => row.ContainsKey(c.Heading)))
                    _problems.Add(ProblemCodes.FormCell, sheet.SpotOf(row.Values.First()), $"this row belongs to nothing: no row above it has a {own[0].Heading}", $"give the {own[0].Heading} in the first of the rows");
            }
            if (item is not null)
                AddGroups(table, sheet, row, item);
        }
    }

    /// <summary>The item that a row begins, or names; null where it names none, which is reported.</summary>
    private Draft? Begin(FormTable table, FormSheetReader sheet, IReadOnlyDictionary<string, GridCell> row)
    {
        SourceSpot spot = sheet.SpotOf(row.Values.MinBy(c => c.Column));
        Draft? parent = _root;
        int level = 0;
        foreach (FormColumn reference in table.References)
        {
            parent = Named(parent!.Items(table.Lists[level++]), reference.Heading, sheet, row, spot);
            if (parent is null)
                return null;
        }
        Draft item = table.Names ? parent! : new Draft(spot);
        if (!table.Names)
            parent!.Add(table.List, spot, item);
        if (table.Kinds.Count == 1)
            item.Put(["kind"], new ScalarNode(table.Kinds[0], false, spot));
        foreach (FormColumn column in table.Own)
        {
            if (row.TryGetValue(column.Heading, out GridCell cell))
                Put(item, column, sheet, cell);
        }
        return item;
    }

    private Draft? Named(IReadOnlyList<Draft> items, string heading, FormSheetReader sheet, IReadOnlyDictionary<string, GridCell> row, SourceSpot spot)
    {
        string[] names = [.. items.Select(i => i.Name).OfType<string>()];
        if (!row.TryGetValue(heading, out GridCell cell))
        {
            if (items.Count == 1)
                return items[0];
            _problems.Add(ProblemCodes.NameNeeded, spot, items.Count == 0 ? $"this row is for a {heading}, and the form has none" : $"\"{heading}\" is needed: there are several", items.Count == 0 ? $"fill in a {heading} first" : "one of " + string.Join(", ", names.Take(12)));
            return null;
        }
        if (items.FirstOrDefault(i => i.Name == cell.Text.Trim()) is { } found)
            return found;
        _problems.Add(ProblemCodes.UnknownName, sheet.SpotOf(cell), $"there is no {heading} \"{Shown.Short(cell.Text)}\"", Suggestion.Nearest(cell.Text, names) is { } near ? $"did you mean \"{near}\"?" : "the names are " + string.Join(", ", names.Take(12)));
        return null;
    }

    private void AddGroups(FormTable table, FormSheetReader sheet, IReadOnlyDictionary<string, GridCell> row, Draft item)
    {
        foreach (IGrouping<string, FormColumn> group in table.Groups)
        {
            FormColumn[] filled = [.. group.Where(c => row.ContainsKey(c.Heading))];
            if (filled.Length == 0)
                continue;
            SourceSpot spot = sheet.SpotOf(filled.Select(c => row[c.Heading]).MinBy(c => c.Column));
            var added = new Draft(spot);
            foreach (FormColumn column in filled)
                Put(added, column, sheet, row[column.Heading]);
            item.Add(filled[0].Group!, spot, added);
        }
    }

    private void ReadNames(FormNames names)
    {
        if (Open(names.Name, [names.Heading, .. names.Columns.Select(c => c.Heading)]) is not { } sheet)
            return;
        foreach (IReadOnlyDictionary<string, GridCell> row in sheet.Rows())
        {
            if (!row.TryGetValue(names.Heading, out GridCell name))
            {
                _problems.Add(ProblemCodes.FormCell, sheet.SpotOf(row.Values.First()), $"this row has no {names.Heading}", $"give the {names.Heading}, or empty the row");
                continue;
            }
            foreach (FormColumn column in names.Columns.Where(c => row.ContainsKey(c.Heading)))
                Put(_root, column with { Path = [.. names.Path, name.Text.Trim(), .. column.Path] }, sheet, row[column.Heading]);
        }
    }

    private void ReadSources()
    {
        if (Open(FormPlan.SourceSheet, [FormPlan.Into, FormPlan.Of, FormPlan.From, .. FormPlan.SourceColumns.Select(c => c.Heading)]) is not { } sheet)
            return;
        foreach (IReadOnlyDictionary<string, GridCell> row in sheet.Rows())
        {
            SourceSpot spot = sheet.SpotOf(row.Values.MinBy(c => c.Column));
            string into = row.TryGetValue(FormPlan.Into, out GridCell place) ? place.Text.Trim() : "", from = row.TryGetValue(FormPlan.From, out GridCell kind) ? kind.Text.Trim() : "";
            (string Place, bool OfWall, IReadOnlyList<Keys.Key> Sources) target = FormPlan.Places.FirstOrDefault(p => Spelling.Bare(p.Place) == Spelling.Bare(into));
            if (target.Place is null)
            {
                _problems.Add(ProblemCodes.UnknownChoice, place.Row > 0 ? sheet.SpotOf(place) : spot, $"\"{FormPlan.Into}\" cannot be \"{Shown.Short(into)}\"", "one of " + string.Join(", ", FormPlan.Places.Select(p => p.Place)));
                continue;
            }
            if (target.Sources.FirstOrDefault(s => Spelling.Bare(s.Name) == Spelling.Bare(from)) is not { } source)
            {
                _problems.Add(ProblemCodes.UnknownChoice, kind.Row > 0 ? sheet.SpotOf(kind) : spot, $"\"{FormPlan.From}\" of {target.Place} cannot be \"{Shown.Short(from)}\"", "one of " + string.Join(", ", target.Sources.Select(s => s.Name)));
                continue;
            }
            var block = new Draft(spot);
            foreach (FormColumn column in FormPlan.SourceColumns.Where(c => row.ContainsKey(c.Heading)))
                Put(block, column with { Key = source.Children.FirstOrDefault(k => k.Name == column.Heading) ?? column.Key }, sheet, row[column.Heading]);
            if (!target.OfWall && target.Place != "layout_line")
            {
                var item = new Draft(spot);
                item.Put([source.Name], block.Node());
                _root.Add([target.Place], spot, item);
                continue;
            }
            string list = target.OfWall ? "walls" : "layout_lines";
            var named = row.TryGetValue(FormPlan.Of, out GridCell of) ? new Dictionary<string, GridCell> { [list[..^1].Replace('_', ' ')] = of } : [];
            if (Named(_root.Items([list]), list[..^1].Replace('_', ' '), sheet, named, spot) is not { } owner)
                continue;
            if (!target.OfWall)
            {
                if (owner.Put([source.Name], block.Node()) is { } first)
                    _problems.Add(ProblemCodes.DuplicateKey, spot, $"\"{source.Name}\" is given twice for the layout line", "remove one of the two", first);
                continue;
            }
            var one = new Draft(spot);
            one.Put([source.Name], block.Node());
            owner.Add([target.Place], spot, one);
        }
    }

    private void Put(Draft block, FormColumn column, FormSheetReader sheet, GridCell cell)
    {
        Node value = sheet.ValueOf(cell, column.Key);
        if (column.Part > 0)
            block.PutPart(column.Path, column.Part, value);
        else if (block.Put(column.Path, value) is { } first)
            _problems.Add(ProblemCodes.DuplicateKey, value.Spot, $"\"{column.Heading}\" is given twice, first in {first.Cell}", "remove one of the two", first);
    }
}
