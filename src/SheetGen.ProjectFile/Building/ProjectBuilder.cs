using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Makes the project from the values that the key table approved, with all cross-checks.</summary>
internal static class ProjectBuilder
{
    /// <summary>The project; it is whole only where no error has been reported.</summary>
    public static WallProject Build(MapItem root, LengthUnit unit, string inputHash, ProblemList problems)
    {
        var lines = new LayoutLines(root, unit, problems);
        var names = new WallNames(root, lines, problems);
        var points = new Points(lines, names, unit, problems);
        Rules rules = new RulesBuilder(unit, problems).Build(root);
        var walls = new WallBuilder(rules, unit, problems);
        var decisions = new DecisionBuilder(names, unit, problems);
        Wall[] built = [.. names.All.Select(walls.Build).OfType<Wall>()];
        IReadOnlyList<Obstruction> obstructions = new ObstructionBuilder(points, problems).Build(root);
        var bends = new BendCheck(points, unit, problems);
        foreach (MapItem map in root.Maps("obstructions").Where(m => m.Flag("in_front") != true && m.Flag("straight") != true))
        {
            if ((map.List("points") ?? map.List("footprint")) is { } list)
                bends.Check(map, list);
        }
        new ObstructionChecks(lines, unit, problems).Check(built, obstructions);
        IReadOnlyList<Boring> borings = new BoringBuilder(points, problems).Build(root);
        DesignBuilder.CheckLayers(root, borings, problems);
        var project = new WallProject
        {
            Info = Info(root),
            Unit = unit,
            Origin = lines.Origin,
            LayoutLines = lines.Built,
            Walls = built,
            Obstructions = obstructions,
            Borings = borings,
            Sheets = Sheets(root.Map("sheets") ?? MapItem.Nothing(root.Spot)),
            PayItems = root.Text("pay_items") ?? "generic",
            PayLengthFrom = root.Text("pay_length_from") == "back_of_shotcrete" ? PayLengthFrom.BackOfShotcrete : PayLengthFrom.Face,
            Rules = rules,
            Rates = Rates(root.Map("rates") ?? MapItem.Nothing(root.Spot), root.Map("prices")),
            FixedNails = decisions.FixedNails(root),
            Acceptances = decisions.Acceptances(root),
            InputHash = inputHash,
        };
        new FactChecks(unit, problems).Check(root, project);
        return project;
    }

    private static ProjectInfo Info(MapItem root)
    {
        MapItem project = root.Map("project") ?? MapItem.Nothing(root.Spot);
        var facts = new Dictionary<string, string>();
        AddFacts(facts, KeyTable.ProjectFacts, project);
        AddFacts(facts, KeyTable.DesignFacts, root.Map("design"));
        return new ProjectInfo(project.Text("title") ?? "", project.Text("number") ?? "", facts);
    }

    private static void AddFacts(Dictionary<string, string> facts, IReadOnlyList<Key> keys, MapItem? map)
    {
        foreach (Key key in keys)
        {
            if (map?.Text(key.Name) is { } text)
                facts.Add(key.Name, text);
        }
    }

    private static SheetSettings Sheets(MapItem map) => new()
    {
        Size = map.Text("size"),
        Scale = map.Number("scale"),
        Revision = map.Text("revision") ?? "",
        Date = map.Text("date") ?? "",
        IsForHalfSize = map.Flag("half_size") ?? false,
        FromBehind = map.Text("view") == "from_behind",
        TitleBlock = map.Text("title_block"),
        Layers = map.Text("layers"),
        Notes = map.Text("notes"),
        Language = map.Text("language"),
        SectionWord = map.Text("section_word"),
        FirstNumber = (int)(map.Number("first_number") ?? 1),
        Revisions = [.. map.Maps("revisions").Select(r => (IReadOnlyList<string>)[r.Text("number") ?? "", r.Text("date") ?? "", r.Text("text") ?? ""])],
    };

    private static Rates Rates(MapItem map, MapItem? prices)
    {
        MapItem? mesh = map.Map("mesh"), pad = map.Map("pad"), coping = map.Map("coping"), buildUp = map.Map("build_up");
        return new Rates
        {
            GroutOverrun = map.Number("grout_overrun"),
            ShotcreteLoss = map.Number("shotcrete_loss"),
            StockLengths = [.. map.List("stock_length")?.Numbers.Select(n => n.Value) ?? []],
            LeastPiece = map.Number("least_piece"),
            CentralizerEnd = map.Number("centralizer_end"),
            CheckLimit = map.Number("check_limit"),
            WalerBars = map.Number("waler_bars"),
            BearingBars = map.Number("bearing_bars"),
            BearingBarLength = map.Number("bearing_bar_length"),
            PlateWeight = map.Number("plate_weight"),
            NutWeight = map.Number("nut_weight"),
            WasherWeight = map.Number("washer_weight"),
            CouplerWeight = map.Number("coupler_weight"),
            MeshLength = mesh?.Number("length"),
            MeshWidth = mesh?.Number("width"),
            MeshLap = mesh?.Number("lap"),
            StripLap = map.Number("strip_lap"),
            SpareNails = map.Number("spare_nails"),
            PadWidth = pad?.Number("width"),
            PadHeight = pad?.Number("height"),
            CopingWidth = coping?.Number("width"),
            CopingHeight = coping?.Number("height"),
            Drilling = NumbersOf(map.Map("drilling")),
            HoursPerDay = map.Number("hours_per_day"),
            Rigs = map.Number("rigs"),
            DrillingPerDay = map.Number("drilling_per_day"),
            ShotcretePerDay = map.Number("shotcrete_per_day"),
            ExcavationPerDay = map.Number("excavation_per_day"),
            BuildUp = (buildUp?.Keys.Keys ?? []).Where(k => buildUp!.Map(k) is not null).ToDictionary(k => k, k => PartsOf(buildUp!.Map(k)!)),
            MarkUp = map.Number("mark_up"),
            CentralizerSpacing = map.Number("centralizer_spacing"),
            DesignBond = map.Number("design_bond"),
            TestBondedLength = map.Number("test_bonded_length"),
            TestFreeLength = map.Number("test_free_length"),
            ProofFreeLength = map.Number("proof_free_length"),
            Contingency = map.Number("contingency"),
            Prices = NumbersOf(prices),
        };
    }

    private static CostParts PartsOf(MapItem map) =>
        new(map.Number("crew"), map.Number("equipment"), map.Number("material"), map.Number("subcontract"));

    private static Dictionary<string, double> NumbersOf(MapItem? map) =>
        (map?.Keys.Keys ?? []).Where(k => map!.Number(k) is not null).ToDictionary(k => k, k => map!.Number(k)!.Value);
}
