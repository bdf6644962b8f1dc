using NetTopologySuite.Geometries;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>The amounts of one section.</summary>
internal sealed record SectionTakeOff(SectionQuantities Quantities, TestPlan Tests)
{
    public static SectionTakeOff Measure(
        WallProject project, NailLayout layout, WallTakeOff wall, Section section, IReadOnlyList<QuantityDefinition> definitions,
        CuttingPlan? cutting)
    {
        List<NailQuantity> nails = [.. wall.Nails.Where(n => n.Nail.Section == section)];
        List<NailQuantity> production = [.. nails.Where(n => !n.IsSacrificial)];
        TestPlan tests = TestTakeOff.Measure(wall.Wall, section, [.. nails.Select(n => n.Nail)]);
        var amounts = new Amounts(definitions, wall.Wall, section);
        AddNails(amounts, project, wall.Wall, nails, tests);
        AddVerification(amounts, nails, tests);
        AddParts(amounts, project, nails, cutting);
        AddFace(amounts, project, wall, section);
        AddFacing(amounts, project, layout, wall, section);
        FacingParts.Add(amounts, project, wall, section);
        NailQuantity? greatest = production.MaxBy(n => n.Area ?? 0);
        (double least, double most) = Heights(wall.Wall, section);
        var quantities = new SectionQuantities
        {
            Wall = wall.Wall,
            Section = section,
            LeastHeight = least,
            GreatestHeight = most,
            Rows = [.. production.Select(n => n.Nail.Row).Distinct().Order()],
            RowGaps = BuiltSpacing.RowGaps(wall.Wall, section, layout.Rows),
            Gaps = RowCounts.NonTypicalGaps(wall.Regions.Face, section, production, project.Unit),
            Lengths =
            [
                .. nails.GroupBy(n => (n.Nail.Kind, n.Nail.Length)).OrderBy(g => g.Key.Kind).ThenByDescending(g => g.Key.Length)
                    .Select(g => new LengthCount(g.Key.Kind, g.Key.Length, g.Count())),
            ],
            Grid = RowCounts.Grid(layout, wall.Wall, section),
            MeanArea = production.Count == 0 ? null : production.Average(n => n.Area ?? 0),
            GreatestArea = greatest?.Area,
            GreatestAreaMark = greatest?.Nail.Mark ?? "",
            Amounts = amounts.All,
        };
        return new SectionTakeOff(quantities, tests);
    }

    private static void AddNails(Amounts amounts, WallProject project, Wall wall, List<NailQuantity> nails, TestPlan tests)
    {
        List<NailQuantity> production = [.. nails.Where(n => !n.IsSacrificial)];
        List<NailQuantity> unresolved = [.. production.Where(n => n.Nail.Status == NailStatus.Unresolved)];
        string[] marks = Marks(production), lost = Marks(unresolved);
        Rates rates = project.Rates;
        double grout = production.Sum(n => n.Grout);
        // Without its thickness what the shotcrete takes off the pay length is not known: the length from the face stands, and says that it is not the one asked for.
        var thickness = new MissingPart(wall, null, "shotcrete thickness to take off", "facing: shotcrete");
        bool untold = wall.Facing?.Shotcrete is null;
        void Pay(string name, List<NailQuantity> some, string[] trace)
        {
            if (untold && some.Count > 0 && project.PayLengthFrom == PayLengthFrom.BackOfShotcrete)
                amounts.SetShort(name, some.Sum(n => n.PayLength), trace, thickness);
            else
                amounts.Set(name, some.Sum(n => n.PayLength), trace);
        }

        amounts.Set(QuantityName.NailCount, production.Count, marks);
        amounts.Set(QuantityName.UnresolvedCount, unresolved.Count, lost);
        Pay(QuantityName.PayLength, production, marks);
        Pay(QuantityName.UnresolvedLength, unresolved, lost);
        amounts.Set(QuantityName.FaceLength, production.Sum(n => n.Nail.Length), marks);
        amounts.Set(QuantityName.BackLength, production.Sum(n => n.LengthFromBack), marks, untold ? "no shotcrete thickness given: measured from the face" : "");
        amounts.Set(QuantityName.Projection, production.Count * project.Rules.BarProjection, marks);
        amounts.Set(QuantityName.BarLength, production.Sum(n => n.BarLength), marks);
        amounts.SetOrSection(QuantityName.BarWeight, Weight(production), marks, Unpublished(nails), "bar: weight");
        amounts.Set(QuantityName.HoleLength, production.Sum(n => n.Nail.Length), marks);
        amounts.Set(QuantityName.HoleVolume, production.Sum(n => n.HoleVolume), marks);
        amounts.Set(QuantityName.GroutVolume, grout, marks);
        amounts.SetOrProject(QuantityName.GroutWithOverrun, grout * rates.GroutOverrun, marks, "grout overrun", "rates: grout_overrun");
        amounts.Set(QuantityName.Plates, production.Count, marks);
        amounts.Set(QuantityName.Nuts, production.Count, marks);
        amounts.Set(QuantityName.Washers, production.Count, marks);
        amounts.SetOrProject(
            QuantityName.Centralizers, rates.CentralizerSpacing is null ? null : production.Sum(n => n.Centralizers ?? 0), marks,
            "centralizer spacing", "rates: centralizer_spacing");
        amounts.Set(QuantityName.ProofCount, tests.Proof, tests.ProofMarks);
    }

    private static void AddVerification(Amounts amounts, List<NailQuantity> nails, TestPlan tests)
    {
        List<NailQuantity> sacrificial = [.. nails.Where(n => n.IsSacrificial)];
        string[] marks = Marks(sacrificial);
        int without = tests.Asked - tests.Verification;
        var missing = new MissingPart(tests.Wall, tests.Section, $"place for {without} of {tests.Asked} verification test {(tests.Asked == 1 ? "nail" : "nails")}", "test_nails: verification");
        void Set(string name, double amount)
        {
            if (without > 0)
                amounts.SetShort(name, amount, marks, missing);
            else
                amounts.Set(name, amount, marks);
        }
        Set(QuantityName.VerificationCount, sacrificial.Count);
        Set(QuantityName.VerificationLength, sacrificial.Sum(n => n.Nail.Length));
        Set(QuantityName.VerificationBarLength, sacrificial.Sum(n => n.BarLength));
        if (without > 0 && Weight(sacrificial) is { } weight)
            amounts.SetShort(QuantityName.VerificationBarWeight, weight, marks, missing);
        else
            amounts.SetOrSection(QuantityName.VerificationBarWeight, Weight(sacrificial), marks, Unpublished(nails), "bar: weight");
        Set(QuantityName.VerificationGrout, sacrificial.Sum(n => n.Grout));
    }

    private static void AddFace(Amounts amounts, WallProject project, WallTakeOff wall, Section section)
    {
        double gross = 0, net = 0, exposed = 0, outline = 0, front = 0;
        foreach (Leg leg in wall.Regions.Face.Legs)
        {
            Geometry open = FaceRegions.Of(section, leg, wall.Regions.Net(leg));
            gross += wall.Regions.Area(leg, FaceRegions.Of(section, leg, wall.Regions.Gross(leg)));
            net += wall.Regions.Area(leg, open);
            outline += open.Area;
            if (wall.Wall.FinishedGrade is { } grade)
                exposed += wall.Regions.Area(leg, wall.Regions.Above(grade, leg, open));
            if (wall.FacingFront is { } facing)
                front += facing.Area(leg, FaceRegions.Of(section, leg, facing.Net(leg)));
        }
        string[] where = [StationRange.Of(wall.Wall, section.Start, section.End, project.Unit)];
        double? thickness = wall.Wall.Facing?.Shotcrete;
        double? neat = net * thickness;
        const string shotcrete = "shotcrete thickness", shotcreteKey = "facing: shotcrete";
        amounts.Set(QuantityName.FaceAreaGross, gross, where);
        // A difference of two sums of polygons: what is less than their rounding is no opening.
        amounts.Set(QuantityName.OpeningArea, Math.Abs(gross - net) <= QuantityTolerance.AreaRounding * gross ? 0 : gross - net, where);
        amounts.Set(QuantityName.FaceArea, net, where);
        amounts.SetOr(QuantityName.ExposedArea, wall.Wall.FinishedGrade is null ? null : exposed, where, "finished grade", "finished_grade");
        amounts.Set(QuantityName.ElevationArea, outline, where);
        if (wall.Wall.Facing is null or { Kind: FacingKind.None })
            amounts.NotAsked(QuantityName.PanelFaceArea, "permanent facing", "facing: kind");
        else
            amounts.SetOr(QuantityName.PanelFaceArea, wall.FacingFront is null ? null : front, where, "thickness of the permanent facing", "facing: thickness");
        amounts.SetOr(QuantityName.ShotcreteVolume, neat, where, shotcrete, shotcreteKey);
        if (thickness is null)
            amounts.SetOr(QuantityName.ShotcreteSupplied, null, where, shotcrete, shotcreteKey);
        else
            amounts.SetOrProject(QuantityName.ShotcreteSupplied, neat / (1 - project.Rates.ShotcreteLoss), where, "shotcrete loss", "rates: shotcrete_loss");
        amounts.SetOr(QuantityName.MeshArea, thickness is null ? null : net, where, shotcrete, shotcreteKey);
        if (wall.Wall.Facing?.Coping is null)
            amounts.NotAsked(QuantityName.CopingLength, "coping", "facing: coping");
        else
            amounts.Set(QuantityName.CopingLength, RowCounts.TopLength(wall.Regions, section), where);
    }

    private static void AddFacing(Amounts amounts, WallProject project, NailLayout layout, WallTakeOff wall, Section section)
    {
        string Range(double start, double end) => StationRange.Of(wall.Wall, start, end, project.Unit);
        List<Panel> panels = [.. wall.Panels.Where(p => p.Section == section)];
        void Precast(string name, double amount, IReadOnlyList<string> trace)
        {
            if (wall.Wall.HasPanels)
                amounts.Set(name, amount, trace);
            else if (wall.Wall.Facing?.Kind == FacingKind.PrecastPanels)
                amounts.SetOr(name, null, [], "panel width and height", "panels");
            else
                amounts.NotAsked(name, "precast panels", "facing: kind: precast panels");
        }
        void Panels(string name, Func<Panel, bool> which)
        {
            List<Panel> chosen = [.. panels.Where(which)];
            Precast(name, chosen.Count, [.. chosen.Select(p => Range(p.Start, p.End))]);
        }
        Panels(QuantityName.PanelCount, _ => true);
        Panels(QuantityName.PanelsFull, p => p.Size == PanelSize.Full);
        Panels(QuantityName.PanelsPartial, p => p.Size == PanelSize.Partial);
        Panels(QuantityName.PanelsSpecial, p => p.Size == PanelSize.SpecialHeight);
        List<PadRun> pad = [.. wall.Pad.Where(p => p.Section == section)];
        string[] runs = [.. pad.Select(p => Range(p.Start, p.End))];
        Precast(QuantityName.PanelArea, panels.Sum(p => p.Area), [.. panels.Select(p => Range(p.Start, p.End))]);
        Precast(QuantityName.PadLength, pad.Sum(p => p.Length), runs);
        Precast(QuantityName.PadSteps, pad.Count(p => p.StepsUp is { } s && s != 0), runs);
        List<DrainStrip> strips = [.. wall.Strips.Where(s => s.Section == section)];
        string[] stations = [.. strips.Select(s => wall.Wall.StationText(s.Along, project.Unit))];
        string spacing = wall.Wall.Drainage?.MaxSpacing is null ? "greatest spacing at its default, 10 ft or 3 m" : "";
        if (wall.Wall.Drainage is null)
        {
            amounts.NotAsked(QuantityName.StripCount, "drainage strips", "drainage");
            amounts.NotAsked(QuantityName.StripLength, "drainage strips", "drainage");
        }
        else
        {
            amounts.Set(QuantityName.StripCount, strips.Count, stations, spacing);
            amounts.Set(QuantityName.StripLength, strips.Sum(s => s.Length), stations, spacing);
        }
        List<ExcavationLift> lifts = [.. wall.Lifts.Where(l => l.Section == section)];
        string[] cuts = [.. lifts.Select(l => Range(l.Start, l.End))];
        amounts.Set(QuantityName.LiftCount, lifts.Count, cuts, wall.Wall.Lifts?.BelowRow is null ? "cut below a row at its default, 1.5 ft or 0.5 m" : "");
        amounts.SetOr(
            QuantityName.ExcavationVolume, wall.Wall.CrossSections.Count == 0 ? null : lifts.Sum(l => l.Volume ?? 0), cuts,
            "cross sections of the ground in front", "cross_sections");
        amounts.Set(QuantityName.WalerLength, RowCounts.WalerLength(wall.Regions.Face, layout, section), [Range(section.Start, section.End)]);
    }

    private static (double Least, double Most) Heights(Wall wall, Section section)
    {
        IEnumerable<double> places = wall.Top.Points.Concat(wall.Bottom.Points).Select(p => p.Along)
            .Where(a => a > section.Start && a < section.End).Append(section.Start).Append(section.End);
        double least = double.PositiveInfinity, most = double.NegativeInfinity;
        foreach (double along in places)
        {
            if (along < section.End)
                Take(wall.Top.At(along) - wall.Bottom.At(along));
            if (along > section.Start)
                Take(wall.Top.Before(along) - wall.Bottom.Before(along));
        }
        return (least, most);

        void Take(double height)
        {
            least = Math.Min(least, height);
            most = Math.Max(most, height);
        }
    }

    /// <summary>Weight of the bars; null where one of them has none.</summary>
    private static double? Weight(List<NailQuantity> nails) => nails.Exists(n => n.Weight is null) ? null : nails.Sum(n => n.Weight ?? 0);

    private static string Unpublished(List<NailQuantity> nails) =>
        "published weight of " + string.Join(", ", nails.Where(n => n.Weight is null).Select(n => n.Nail.Bar.ToString()).Distinct());

    /// <summary>What is bought with the nails, by the user's rates.</summary>
    private static void AddParts(Amounts amounts, WallProject project, List<NailQuantity> nails, CuttingPlan? cutting)
    {
        List<NailQuantity> production = [.. nails.Where(n => !n.IsSacrificial)];
        string[] marks = Marks(production), all = Marks(nails);
        Rates rates = project.Rates;
        int count = production.Count;
        double? couplers = rates.StockLength is { } longest ? nails.Sum(n => StockPlan.Couplers(n.BarLength, longest)) : null;
        amounts.SetOrProject(QuantityName.SpareNails, count * rates.SpareNails, marks, "share of spare nails", "rates: spare_nails");
        amounts.SetOrProject(QuantityName.PlateWeight, count * rates.PlateWeight, marks, "weight of a plate", "rates: plate_weight");
        amounts.SetOrProject(QuantityName.NutWeight, count * rates.NutWeight, marks, "weight of a nut", "rates: nut_weight");
        amounts.SetOrProject(QuantityName.WasherWeight, count * rates.WasherWeight, marks, "weight of a washer", "rates: washer_weight");
        amounts.SetOrProject(QuantityName.Couplers, couplers, all, "stock length", "rates: stock_length");
        amounts.SetOrProject(
            QuantityName.CouplerWeight, couplers * rates.CouplerWeight, all, couplers is null ? "stock length" : "weight of a coupler",
            couplers is null ? "rates: stock_length" : "rates: coupler_weight");
        double? share = cutting is null ? null : cutting.Used > 0 ? nails.Sum(n => n.BarLength) / cutting.Used : 0;
        amounts.SetOrProject(QuantityName.StockBars, cutting?.StockBars * share, all, "stock length", "rates: stock_length");
        amounts.SetOrProject(
            QuantityName.BearingBarLength, count * rates.BearingBars * rates.BearingBarLength, marks, "number and length of bearing bars",
            "rates: bearing_bars, bearing_bar_length");
    }

    private static string[] Marks(List<NailQuantity> nails) => [.. nails.Select(n => n.Nail.Mark)];
}
