using System.Globalization;
using SheetGen.Model.Corridors;

namespace SheetGen.Writers.Register;

/// <summary>The register of a corridor as tables: the walls, sums by contract and stage, bid items, all sheets numbered through, clashes and problems.</summary>
public sealed class CorridorRegister
{
    public const string Caution = "For review by the engineer of record. Local codes and the project's specifications govern; verify obstructions and utilities before "
        + "drilling. Computed from the project files alone, not sealed. What could not be built is named here and is in no sum.";

    private const string All = "all", None = "none";

    private readonly IReadOnlyList<Row> _rows;
    private readonly IReadOnlyList<Clash> _clashes;

    /// <param name="states">The state of each wall, in the corridor's order.</param>
    public CorridorRegister(Corridor corridor, IReadOnlyList<WallState> states, IReadOnlyList<Clash> clashes, string version)
    {
        (Title, Version, _clashes) = (corridor.Title, version, clashes);
        var rows = new List<Row>();
        int sheet = 1;
        for (int i = 0; i < states.Count; i++)
        {
            WallFigures? figures = states[i].Outcome == WallOutcome.Built ? states[i].Figures : null;
            CorridorWall wall = corridor.Walls[i];
            rows.Add(new Row(i + 1, wall, states[i], figures, sheet, clashes.Count(c => c.Wall == wall.Name || c.OtherWall == wall.Name)));
            sheet += figures?.Sheets.Count ?? 0;
        }
        _rows = rows;
        SheetCount = sheet - 1;
        IsMetric = rows.Find(r => r.Figures is not null)?.Figures!.Units == "m";
        Tables = [Walls(), Totals(), Sums(), Bid(), Sheets(), Clashes(), Problems()];
    }

    public string Title { get; }

    public string Version { get; }

    public int SheetCount { get; }

    /// <summary>True where the first set built is metric: then the papers are.</summary>
    public bool IsMetric { get; }

    /// <summary>The walls first.</summary>
    public IReadOnlyList<RegisterTable> Tables { get; }

    public RegisterTable WallTable => Tables[0];

    /// <summary>The worst exit code; a clash across files is a finding that needs the engineer.</summary>
    public int Exit => Math.Max(_rows.Max(r => r.State.Exit), _clashes.Count > 0 ? 1 : 0);

    /// <summary>One line of what the register says.</summary>
    public string InWords
    {
        get
        {
            int built = _rows.Count(r => r.Figures is not null);
            string left = built == _rows.Count ? "" : Invariant($"; NOT BUILT: {string.Join(", ", _rows.Where(r => r.Figures is null).Select(r => $"{r.Wall.Name} ({InOneWord(r.State.Outcome)})"))}");
            return Invariant($"{built} of {_rows.Count} sets built, {SheetCount} sheets, {_rows.Sum(r => r.Figures?.Production ?? 0)} production nails, {_rows.Sum(r => r.Count("unresolved"))} unresolved, {_clashes.Count} clashes across files{left}{NotChecked}");
        }
    }

    /// <summary>Which walls are not checked against which others; empty where all are.</summary>
    private string NotChecked
    {
        get
        {
            string[] systems = [.. _rows.Where(r => r.Figures is not null).GroupBy(r => CoordinateSystem.Of(r.Wall.Coordinates, r.Figures!.Zone).Key)
                .Select(g => Invariant($"{CoordinateSystem.Of(g.First().Wall.Coordinates, g.First().Figures!.Zone).Name} ({(g.Count() == 1 ? g.First().Wall.Name : g.Count() + " walls")})"))];
            return systems.Length < 2 ? "" : Invariant($"; NOT CHECKED AGAINST EACH OTHER, since their coordinate systems differ: {string.Join("; ", systems)}");
        }
    }

    public RegisterFile ToFile() => new(1, Title, Version, Exit, [.. _rows.Select(r => new RegisterWall(
        r.Wall.Name, r.Wall.Shown, r.Wall.Stage, r.Wall.Contract, r.State.Outcome, r.State.Exit, r.Figures is { Sheets.Count: > 0 } ? r.FirstSheet : null, r.Clashes, r.State.Problems, r.Figures))], _clashes);

    public static string InOneWord(WallOutcome outcome) => outcome switch
    {
        WallOutcome.Built => "built",
        WallOutcome.Faulty => "faulty input",
        WallOutcome.Missing => "file missing",
        WallOutcome.NotWritten => "folder not written",
        WallOutcome.ProgramFault => "program at fault",
        WallOutcome.NotBuilt => "not built",
        _ => "out of date",
    };

    private RegisterTable Walls()
    {
        (string Number, string Description, string Unit)[] items = [.. Items()];
        var columns = new List<Column>
        {
            new("No.", r => RegisterCell.Of(r.Number)) { IsNumeric = true },
            new("Wall", r => RegisterCell.Of(r.Wall.Name, r.Figures is null ? null : r.Folder + "sheets.pdf")),
            new("Contract", r => RegisterCell.Of(Named(r.Wall.Contract))),
            new("Stage", r => RegisterCell.Of(Named(r.Wall.Stage))),
            new("State", r => RegisterCell.Of(InOneWord(r.State.Outcome)).Warn(r.Figures is null)),
            new("Project file", r => RegisterCell.Of(r.Wall.Shown)) { IsPrinted = false },
            new("Title", r => RegisterCell.Of(r.Figures?.Title ?? "")),
            new("Drawing no.", r => RegisterCell.Of(r.Figures?.Number ?? "")),
            new("Revision", r => RegisterCell.Of(r.Figures?.Revision ?? "")),
            new("Date", r => RegisterCell.Of(r.Figures?.Date ?? "")),
            new("Sheets", r => RegisterCell.Of(r.Figures?.Sheets.Count)) { IsNumeric = true },
            new("First sheet", r => RegisterCell.Of(r.Figures is { Sheets.Count: > 0 } ? r.FirstSheet : null)) { IsNumeric = true },
            new("Unit", r => RegisterCell.Of(r.Figures?.Units ?? "")),
            new("Walls in file", r => RegisterCell.Of(r.Figures?.Walls.Count)) { IsNumeric = true, IsPrinted = false },
            new("Production nails", r => RegisterCell.Of(r.Figures?.Production)) { IsNumeric = true },
            new("Proof test nails", r => RegisterCell.Of(r.Figures?.Proof)) { IsNumeric = true, IsPrinted = false },
            new("Verification nails", r => RegisterCell.Of(r.Figures?.Verification)) { IsNumeric = true, IsPrinted = false },
            new("Nail length", r => RegisterCell.Of(r.Figures?.NailLength, 2)) { IsNumeric = true },
            Quantity("pay_length", "Pay length"), Quantity("bar_length", "Bar length"), Quantity("face_area", "Face area"),
            Status("moved", "Moved"), Status("redirected", "Redirected"), Status("noted", "Noted"), Status("unresolved", "Unresolved"),
            new("Left out", r => RegisterCell.Of(r.Figures?.LeftOut)) { IsNumeric = true, IsPrinted = false },
            Score("cover", "Cover broken, length", false), Score("effort", "Effort", false),
            Bound("unresolved", "Unresolved, proven least"), Bound("noted", "Noted, proven least"),
            new("Layout proof", r => RegisterCell.Of(r.Figures is null ? "" : r.Figures.IsProvenBest ? "proven best" : ProvenParts(r.Figures))),
            new("Least clear", r => RegisterCell.Of(r.Figures?.LeastClear, 2)) { IsNumeric = true },
            Finding("error", "Errors"), Finding("warning", "Warnings"), Finding("notice", "Notices"), Finding("accepted", "Accepted"),
            new("Clashes with other files", r => RegisterCell.Of(r.Figures is null ? null : r.Clashes).Warn(r.Clashes > 0)) { IsNumeric = true },
            new("Exit code", r => RegisterCell.Of(r.State.Exit)) { IsNumeric = true },
            new("Remark", r => RegisterCell.Of(Remark(r)).Warn(r.Figures is null)),
            new("Folder", r => RegisterCell.Of(r.Folder)) { IsPrinted = false },
            new("Input hash", r => RegisterCell.Of(r.Figures?.InputHash ?? "")) { IsPrinted = false },
        };
        foreach ((string number, string description, string unit) in items)
            columns.Add(new Column($"{number} {description}, {unit}", r => RegisterCell.Of(r.Item(number, description, unit)?.Quantity, r.Item(number, description, unit)?.Decimals ?? 0)) { IsNumeric = true, IsPrinted = false });
        return new RegisterTable(
            "Walls", "Register of walls", "A row a project file. Lengths and areas in the unit of the row; bid quantities rounded by each item's rule.",
            Heads(columns.Select(c => (c.Head, c.IsNumeric, c.IsPrinted))), [.. _rows.Select(r => (IReadOnlyList<RegisterCell>)[.. columns.Select(c => c.Cell(r))])]);

        Column Quantity(string name, string head) => new(head, r => r.Quantity(name) is { } q ? RegisterCell.Of(q.Amount, 2).Warn(q.State is "incomplete" or "missing") : RegisterCell.Of((double?)null)) { IsNumeric = true, IsPrinted = name == "pay_length" };
        Column Status(string name, string head) => new(head, r => RegisterCell.Of(r.Figures is null ? null : r.Count(name)).Warn(name == "unresolved" && r.Count(name) > 0)) { IsNumeric = true, IsPrinted = name is "noted" or "unresolved" };
        Column Score(string name, string head, bool isPrinted) => new(head, r => RegisterCell.Of(r.Score(name)?.Found, 2)) { IsNumeric = true, IsPrinted = isPrinted };
        Column Bound(string name, string head) => new(head, r => RegisterCell.Of(r.Score(name)?.Bound, 0)) { IsNumeric = true, IsPrinted = false };
        Column Finding(string name, string head) => new(head, r => RegisterCell.Of(r.Figures?.Findings.GetValueOrDefault(name)).Warn(name == "error" && r.Figures?.Findings.GetValueOrDefault(name) > 0)) { IsNumeric = true, IsPrinted = name is "error" or "warning" };
    }

    /// <summary>What of the layout is proven where not all is.</summary>
    private static string ProvenParts(WallFigures figures)
    {
        string[] proven = [.. figures.Score.TakeWhile(s => s.Bound == s.Found).Select(s => s.Name)];
        return proven.Length == 0 ? "not proven" : "proven: " + string.Join(", ", proven);
    }

    private static string Remark(Row row) => row.State.Outcome == WallOutcome.Built
        ? row.State.Problems.Count == 0 ? "" : Invariant($"{row.State.Problems.Count} warnings of the file")
        : row.State.Problems.Count == 0 ? InOneWord(row.State.Outcome) : row.State.Problems[0] + (row.State.Problems.Count > 1 ? Invariant($" (and {row.State.Problems.Count - 1} more)") : "");

    private RegisterTable Totals()
    {
        var rows = new List<IReadOnlyList<RegisterCell>>();
        foreach ((string contract, string stage, Row[] group) in Groups())
        {
            int missing = group.Count(r => r.Figures is null);
            string[] units = [.. group.Select(r => r.Figures?.Units).OfType<string>().Distinct()];
            foreach (string unit in units.DefaultIfEmpty(""))
            {
                Row[] built = [.. group.Where(r => r.Figures?.Units == unit)];
                double? Sum(string name) => built.Any(r => r.Quantity(name)?.Amount is not null) ? built.Sum(r => r.Quantity(name)?.Amount ?? 0) : null;
                rows.Add([
                    RegisterCell.Of(contract), RegisterCell.Of(stage), RegisterCell.Of(unit), RegisterCell.Of(built.Length), RegisterCell.Of(missing).Warn(missing > 0),
                    RegisterCell.Of(built.Sum(r => r.Figures!.Production)), RegisterCell.Of(built.Sum(r => r.Figures!.Verification)), RegisterCell.Of(built.Sum(r => r.Figures!.NailLength), 2),
                    RegisterCell.Of(Sum("pay_length"), 2), RegisterCell.Of(Sum("bar_length"), 2), RegisterCell.Of(Sum("face_area"), 2),
                    RegisterCell.Of(built.Sum(r => r.Count("noted"))), RegisterCell.Of(built.Sum(r => r.Count("unresolved"))),
                    RegisterCell.Of(built.Sum(r => r.Figures!.Findings.GetValueOrDefault("error"))), RegisterCell.Of(built.Sum(r => r.Figures!.Sheets.Count)),
                    RegisterCell.Of(Incomplete(group)).Warn(missing > 0)]);
            }
        }
        return new RegisterTable(
            "Totals", "Totals by contract and stage", "Sums of the walls built, apart by unit; \"all\" is every contract, or every stage.",
            Heads([("Contract", false, true), ("Stage", false, true), ("Unit", false, true), ("Built", true, true), ("Not built", true, true), ("Production nails", true, true), ("Verification nails", true, true),
                ("Nail length", true, true), ("Pay length", true, true), ("Bar length", true, true), ("Face area", true, true), ("Noted", true, true), ("Unresolved", true, true), ("Errors", true, true), ("Sheets", true, true), ("Incomplete", false, true)]), rows);
    }

    private static string Incomplete(Row[] group)
    {
        string[] missing = [.. group.Where(r => r.Figures is null).Select(r => r.Wall.Name)];
        return missing.Length == 0 ? "" : "without " + string.Join(", ", missing.Take(6)) + (missing.Length > 6 ? Invariant($" and {missing.Length - 6} more") : "");
    }

    private RegisterTable Sums()
    {
        var rows = new List<IReadOnlyList<RegisterCell>>();
        foreach ((string contract, string stage, Row[] group) in Groups())
        {
            foreach ((string number, string description, string unit) in Items())
            {
                (Row Row, KeptBidItem Item)[] found = [.. group.Select(r => (r, Item: r.Item(number, description, unit))).Where(f => f.Item is not null).Select(f => (f.r, f.Item!))];
                if (found.Length == 0)
                    continue;
                string[] lacking = [.. found.Where(f => f.Item.State is "incomplete" or "missing").Select(f => f.Row.Wall.Name)];
                double? quantity = found.Any(f => f.Item.Quantity is not null) ? found.Sum(f => f.Item.Quantity ?? 0) : null, raw = found.Any(f => f.Item.Raw is not null) ? found.Sum(f => f.Item.Raw ?? 0) : null;
                string remark = string.Join("; ", new[] { Incomplete(group), lacking.Length == 0 ? "" : "incomplete on " + string.Join(", ", lacking.Take(6)) + (lacking.Length > 6 ? Invariant($" and {lacking.Length - 6} more") : "") }.Where(t => t.Length > 0));
                rows.Add([
                    RegisterCell.Of(contract), RegisterCell.Of(stage), RegisterCell.Of(number), RegisterCell.Of(description), RegisterCell.Of(unit),
                    RegisterCell.Of(quantity, found.Max(f => f.Item.Decimals)), RegisterCell.Of(raw, 2), RegisterCell.Of(found.Length), RegisterCell.Of(remark).Warn(remark.Length > 0)]);
            }
        }
        return new RegisterTable(
            "Sums", "Bid quantities by contract and stage", "Quantity: the sum of the walls' own bid quantities, each rounded by its item's rule; unrounded: the sum before rounding.",
            Heads([("Contract", false, true), ("Stage", false, true), ("Item", false, true), ("Description", false, true), ("Unit", false, true), ("Quantity", true, true), ("Unrounded", true, true), ("Walls", true, true), ("Incomplete", false, true)]), rows);
    }

    private RegisterTable Bid() => new(
        "Bid", "Bid quantities by wall", "As on each wall's own sheets and workbook.",
        Heads([("Wall", false, true), ("Contract", false, true), ("Stage", false, true), ("Pay items", false, false), ("Item", false, true), ("Description", false, true), ("Unit", false, true), ("Quantity", true, true), ("Unrounded", true, true), ("Unit price", true, false), ("Remark", false, true)]),
        [.. _rows.Where(r => r.Figures is not null).SelectMany(r => r.Figures!.Bid.Where(b => b.State != "not asked").Select(b => (IReadOnlyList<RegisterCell>)[
            RegisterCell.Of(r.Wall.Name, r.Folder + "quantities.xlsx"), RegisterCell.Of(Named(r.Wall.Contract)), RegisterCell.Of(Named(r.Wall.Stage)), RegisterCell.Of(r.Figures.PayItems),
            RegisterCell.Of(b.Number), RegisterCell.Of(b.Description), RegisterCell.Of(b.Unit), RegisterCell.Of(b.Quantity, b.Decimals), RegisterCell.Of(b.Raw, 2), RegisterCell.Of(b.Price, 2),
            RegisterCell.Of(b.Note).Warn(b.Note.Length > 0)]))]);

    private RegisterTable Sheets()
    {
        var rows = new List<IReadOnlyList<RegisterCell>>();
        foreach (Row row in _rows.Where(r => r.Figures is not null))
        {
            for (int page = 1; page <= row.Figures!.Sheets.Count; page++)
            {
                KeptSheet sheet = row.Figures.Sheets[page - 1];
                string link = row.Folder + "sheets.pdf";
                rows.Add([
                    RegisterCell.Of(row.FirstSheet + page - 1), RegisterCell.Of(SheetCount), RegisterCell.Of(row.Wall.Name), RegisterCell.Of(row.Figures.Number), RegisterCell.Of(sheet.Name, Invariant($"{link}#page={page}")), RegisterCell.Of(sheet.Title),
                    RegisterCell.Of(sheet.Size), RegisterCell.Of(row.Figures.Revision), RegisterCell.Of(link), RegisterCell.Of(page)]);
            }
        }
        return new RegisterTable(
            "Sheets", "Index of all sheets", "Numbered through the walls in the order of the register; the title blocks keep the numbers of their own sets, unless a project file says sheets: first_number, the number that its first sheet has here.",
            Heads([("No.", true, true), ("Of", true, true), ("Wall", false, true), ("Drawing no.", false, true), ("Sheet", false, true), ("Title", false, true), ("Size", false, true), ("Revision", false, true), ("File", false, true), ("Page", true, true)]), rows);
    }

    private RegisterTable Clashes() => new(
        "Clashes", "Clashes between walls of different files", "Each pair once, at its least clear distance, in the unit and the coordinates of the first wall. Walls of different coordinate systems are not checked against each other" + (NotChecked.Length == 0 ? "." : ": " + NotChecked[(NotChecked.IndexOf(": ", StringComparison.Ordinal) + 2)..] + "."),
        Heads([("Wall", false, true), ("Nail", false, true), ("Other wall", false, true), ("Other", false, true), ("Code", false, true), ("Unit", false, true), ("Clear", true, true), ("Required", true, true), ("Depth", true, true), ("Northing", true, true), ("Easting", true, true), ("Elevation", true, true), ("Finding", false, true)]),
        [.. _clashes.Select(c => (IReadOnlyList<RegisterCell>)[
            RegisterCell.Of(c.Wall), RegisterCell.Of(c.Nail), RegisterCell.Of(c.OtherWall), RegisterCell.Of(c.Other), RegisterCell.Of(c.Code), RegisterCell.Of(c.Unit),
            RegisterCell.Of(c.Clear, 2).Warn(), RegisterCell.Of(c.Required, 2), RegisterCell.Of(c.Depth, 2), RegisterCell.Of(c.Northing, 2), RegisterCell.Of(c.Easting, 2), RegisterCell.Of(c.Elevation, 2), RegisterCell.Of(c.Message)])]);

    private RegisterTable Problems() => new(
        "Problems", "Problems of the project files", "Nothing is built of a file with an error; warnings do not stop the work.",
        Heads([("Wall", false, true), ("State", false, true), ("Problem", false, true)]),
        [.. _rows.SelectMany(r => r.State.Problems.Select(p => (IReadOnlyList<RegisterCell>)[RegisterCell.Of(r.Wall.Name), RegisterCell.Of(InOneWord(r.State.Outcome)).Warn(r.Figures is null), RegisterCell.Of(p)]))]);

    /// <summary>All walls; then each contract and each stage, where there are several; then each pair of them.</summary>
    private IEnumerable<(string Contract, string Stage, Row[] Rows)> Groups()
    {
        yield return (All, All, [.. _rows]);
        var contracts = _rows.GroupBy(r => Named(r.Wall.Contract)).ToArray();
        var stages = _rows.GroupBy(r => Named(r.Wall.Stage)).ToArray();
        bool byContract = contracts.Any(c => c.Key != None), byStage = stages.Any(s => s.Key != None);
        if (byContract)
        {
            foreach (var contract in contracts)
                yield return (contract.Key, All, [.. contract]);
        }
        if (byStage)
        {
            foreach (var stage in stages)
                yield return (All, stage.Key, [.. stage]);
        }
        if (byContract && byStage)
        {
            foreach (var pair in _rows.GroupBy(r => (Named(r.Wall.Contract), Named(r.Wall.Stage))))
                yield return (pair.Key.Item1, pair.Key.Item2, [.. pair]);
        }
    }

    /// <summary>Every item that a wall asks for, in order of appearance.</summary>
    private IEnumerable<(string Number, string Description, string Unit)> Items() =>
        _rows.SelectMany(r => r.Figures?.Bid ?? []).Where(b => b.State != "not asked").Select(b => (b.Number, b.Description, b.Unit)).Distinct();

    private static string Named(string text) => text.Length == 0 ? None : text;

    private static IReadOnlyList<RegisterColumn> Heads(IEnumerable<(string Head, bool IsNumeric, bool IsPrinted)> heads) =>
        [.. heads.Select(h => new RegisterColumn(h.Head, h.IsNumeric, h.IsPrinted))];

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed record Column(string Head, Func<Row, RegisterCell> Cell)
    {
        public bool IsNumeric { get; init; }

        public bool IsPrinted { get; init; } = true;
    }

    private sealed record Row(int Number, CorridorWall Wall, WallState State, WallFigures? Figures, int FirstSheet, int Clashes)
    {
        private readonly Dictionary<(string, string, string), KeptBidItem> _items = (Figures?.Bid ?? []).GroupBy(b => (b.Number, b.Description, b.Unit)).ToDictionary(g => g.Key, g => g.First());

        public string Folder => $"walls/{Wall.Name}/";

        public int Count(string status) => Figures?.Statuses.GetValueOrDefault(status) ?? 0;

        public KeptQuantity? Quantity(string name) => Figures?.Quantities.FirstOrDefault(q => q.Name == name);

        public KeptScore? Score(string name) => Figures?.Score.FirstOrDefault(s => s.Name == name);

        public KeptBidItem? Item(string number, string description, string unit) => _items.GetValueOrDefault((number, description, unit));
    }
}
