using System.Globalization;
using SheetGen.Model;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>The sections of a wall: one design grid each, together the whole wall.</summary>
internal sealed class SectionBuilder(Rules rules, LengthUnit unit, ProblemList problems)
{
    /// <summary>The sections in order of station; null where any is faulty, which is reported.</summary>
    public IReadOnlyList<Section>? Build(MapItem wall, LayoutLine line, double start, double end, string? wallName)
    {
        if (wall.List("sections") is not { } list)
            return null;
        Names.CheckUnique(list.Maps, "section", problems);
        var placed = new List<(MapItem Map, double Start, double End)>();
        var sections = new List<Section>();
        bool whole = !list.Faulty;
        foreach (MapItem map in list.Maps)
        {
            if (Stretches.ReadInWall(map, "the section", line, start, end, unit, problems) is not { } stretch)
            {
                whole = false;
                BuildOne(map, 0, 0, wallName);
                continue;
            }
            placed.Add((map, stretch.Start, stretch.End));
            if (BuildOne(map, stretch.Start, stretch.End, wallName) is { } section)
                sections.Add(section);
        }
        foreach ((MapItem map, double from, double to) in placed)
            CheckCorners(map, line, start, end, from, to);
        if (whole)
            CheckCover([.. placed.OrderBy(p => p.Start)], line, start, end);
        return whole && sections.Count == list.Items.Count ? [.. sections.OrderBy(s => s.Start)] : null;
    }

    private void CheckCover(List<(MapItem Map, double Start, double End)> placed, LayoutLine line, double start, double end)
    {
        string Show(double along) => line.StationText(along, unit);
        double at = start;
        MapItem? before = null;
        foreach ((MapItem map, double from, double to) in placed)
        {
            if (from > at + Tolerance.Length)
                problems.Add(ProblemCodes.SectionGap, map.SpotOf("stations"), $"no section covers {Show(at)} to {Show(from)}", "let each section start where the one before ends", before?.SpotOf("stations"));
            else if (from < at - Tolerance.Length)
                problems.Add(ProblemCodes.SectionOverlap, map.SpotOf("stations"), $"two sections cover {Show(from)} to {Show(Math.Min(at, to))}", "let each section start where the one before ends", before?.SpotOf("stations"));
            if (to > at)
                (at, before) = (to, map);
        }
        if (at < end - Tolerance.Length)
            problems.Add(ProblemCodes.SectionGap, before!.SpotOf("stations"), $"no section covers {Show(at)} to {Show(end)}", "let the last section end where the wall ends");
    }

    /// <summary>Warns of a limit so near to a corner that the sliver between them takes nails of its own.</summary>
    private void CheckCorners(MapItem map, LayoutLine line, double wallStart, double wallEnd, double from, double to)
    {
        double near = Math.Max(rules.MinGap, 2 * rules.CornerClear);
        foreach (double limit in new[] { from, to }.Where(l => l > wallStart + Tolerance.Length && l < wallEnd - Tolerance.Length))
        {
            Corner? corner = line.Corners.FirstOrDefault(c => Math.Abs(c.Along - limit) < near && Math.Abs(c.Along - limit) > Tolerance.Length);
            if (corner is null)
                continue;
            problems.Add(ProblemCodes.LimitBesideCorner, map.SpotOf("stations"),
                FormattableString.Invariant($"section {Shown.Short(map.Text("name") ?? "?")} {(limit == from ? "starts" : "ends")} at {line.StationText(limit, unit)}, {Math.Abs(corner.Along - limit):0.00} {Lengths.Symbol(unit)} {(limit > corner.Along ? "behind" : "before")} the corner: nails of two sections crowd there"),
                $"let it {(limit == from ? "start" : "end")} at the corner, {line.StationText(corner.Along, unit)}");
        }
    }

    private Section? BuildOne(MapItem map, double start, double end, string? wallName)
    {
        Bar? bar = ReadBar(map);
        CheckGrid(map, bar, wallName);
        DesignValues? design = new DesignBuilder(unit, problems).Build(map);
        if (map.Text("name") is not { } name || map.Number("horizontal_spacing") is not { } horizontal || map.Number("vertical_spacing") is not { } vertical)
            return null;
        if (map.Number("top_row_depth") is not { } depth || map.Number("inclination") is not { } inclination)
            return null;
        if (map.List("lengths") is not { Faulty: false } lengths || bar is null || map.Number("hole") is not { } hole)
            return null;
        return new Section
        {
            Name = name,
            Start = start,
            End = end,
            HorizontalSpacing = horizontal,
            VerticalSpacing = vertical,
            Rows = map.Text("rows") switch
            {
                "parallel" => RowKind.Parallel,
                "top_parallel" => RowKind.TopParallel,
                _ => RowKind.Level,
            },
            Pattern = map.Text("pattern") == "staggered" ? Pattern.Staggered : Pattern.Square,
            TopRowDepth = depth,
            Inclination = inclination,
            Lengths = [.. lengths.Numbers.Select(n => n.Value)],
            Bar = bar,
            HoleDiameter = hole,
            TestNails = ReadTestNails(map.Map("test_nails")),
            FirstColumn = map.Number("columns"),
            CornerRows = map.Text("corner_rows") == "shifted" ? CornerRows.Shifted : CornerRows.Continuous,
            HasBestColumns = map.Text("columns") == "best",
            Stage = map.Text("stage") ?? "",
            Design = design,
        };
    }

    private Bar? ReadBar(MapItem map)
    {
        if (map.Map("bar") is not { } given || given.Text("size") is not { } size)
            return null;
        Bar? bar = BarTable.Find(size, (int)(given.Number("grade") ?? 0));
        if (bar is null)
            problems.Add(ProblemCodes.UnknownBar, given.SpotOf("size"), $"there is no bar \"{Shown.Short(size)}\"", SoftMetric(size) is { } inch ? $"did you mean {inch}? Sizes are in eighths of an inch" : "one of " + string.Join(", ", BarTable.All.Select(b => b.Size)));
        if (bar is not null && given.Number("weight") is { } weight)
            bar = bar.WithWeight(weight, unit == LengthUnit.Metre);
        return given.Number("grade") is null ? null : bar;
    }

    /// <summary>The size that a soft metric designation such as 25 stands for (its diameter in whole millimetres).</summary>
    private static string? SoftMetric(string size) =>
        int.TryParse(size.Trim().TrimStart('#').TrimEnd('M', 'm'), NumberStyles.None, CultureInfo.InvariantCulture, out int millimetres)
            ? BarTable.All.FirstOrDefault(b => (int)Math.Round(b.DiameterMillimetres, MidpointRounding.ToZero) == millimetres || (int)Math.Round(b.DiameterMillimetres) == millimetres)?.Size
            : null;

    private static TestNails ReadTestNails(MapItem? map) => map is null ? TestNails.None : new TestNails(
        (int)(map.Number("verification") ?? 0), map.Number("proof") ?? 0,
        map.Text("proof_marks") == "spread", map.Text("verification_per") == "wall");

    private void CheckGrid(MapItem map, Bar? bar, string? wallName)
    {
        if (map.Number("columns") is { } first && map.Number("horizontal_spacing") is { } apart && first >= apart)
            problems.Add(ProblemCodes.OutOfRange, map.SpotOf("columns"), FormattableString.Invariant($"columns {first} is not under horizontal_spacing {apart}"), FormattableString.Invariant($"columns one spacing further on are the same: {Math.Round(first % apart, 4)}"));
        if (map.Number("horizontal_spacing") is { } spacing && spacing < rules.MinGap)
            problems.Add(ProblemCodes.SpacingUnderGap, map.SpotOf("horizontal_spacing"), FormattableString.Invariant($"horizontal_spacing {spacing} is under min_gap {rules.MinGap}"), "correct the spacing, or rules: min_gap");
        if (bar is not null && map.Number("hole") is { } hole)
        {
            double diameter = Lengths.IsFoot(unit) ? bar.DiameterInches / 12 : bar.DiameterMillimetres / 1000;
            if (hole <= diameter)
                problems.Add(ProblemCodes.HoleTooSmall, map.SpotOf("hole"), FormattableString.Invariant($"the hole ({hole:0.####} {Lengths.Symbol(unit)}) is not larger than the {bar.Size} bar ({diameter:0.####} {Lengths.Symbol(unit)})"), "correct the hole or the bar", map.Map("bar")!.SpotOf("size"));
        }
        bool window = rules.Redirect.LeastInclination < rules.Redirect.GreatestInclination;
        if (window && map.Number("inclination") is { } inclination && (inclination < rules.Redirect.LeastInclination || inclination > rules.Redirect.GreatestInclination))
            problems.Add(ProblemCodes.InclinationWindow, map.SpotOf("inclination"), FormattableString.Invariant($"inclination {inclination} is outside redirect: inclination [{rules.Redirect.LeastInclination}, {rules.Redirect.GreatestInclination}]"), "widen the window, or correct the inclination");
        if (map.Number("top_row_depth") is { } depth)
        {
            if (depth < rules.EdgeMin)
                problems.Add(ProblemCodes.TopRowDepth, map.SpotOf("top_row_depth"), FormattableString.Invariant($"top_row_depth {depth} is under edge_min {rules.EdgeMin}"), "correct top_row_depth, or the rule");
            else if (depth > rules.TopMax)
                problems.Add(ProblemCodes.TopRowDepth, map.SpotOf("top_row_depth"), FormattableString.Invariant($"top_row_depth {depth} is over top_max {rules.TopMax}"), "correct top_row_depth, or the rule");
        }
        Guidance.Check(map, bar, unit, wallName, problems);
    }
}
