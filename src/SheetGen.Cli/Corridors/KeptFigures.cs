using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Corridors;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Cli.Corridors;

/// <summary>What a corridor keeps of a finished wall.</summary>
internal static class KeptFigures
{
    public static WallFigures Of(FinishedWall run)
    {
        WallProject project = run.Input.Project;
        NailLayout layout = run.Laid.Layout;
        Nail[] production = [.. layout.Nails.Where(n => n.Kind != NailKind.Verification)];
        double[] clear = [.. run.Laid.Report.Nails.Values.Select(c => c.LeastClear).Where(double.IsFinite)];
        LayoutScore score = layout.Score;
        return new WallFigures
        {
            Title = project.Info.Title,
            Number = project.Info.Number,
            Units = Lengths.Symbol(project.Unit),
            Revision = project.Sheets.Revision,
            Date = project.Sheets.Date,
            InputHash = project.InputHash,
            Zone = project.Info.Facts.GetValueOrDefault("coordinate_zone", ""),
            Walls = [.. project.Walls.Select(w => w.Name)],
            Statuses = Enum.GetValues<NailStatus>().ToDictionary(ResultWords.Of, s => production.Count(n => n.Status == s)),
            Production = production.Length,
            Verification = layout.Nails.Count - production.Length,
            Proof = layout.Nails.Count(n => n.Kind == NailKind.Proof),
            LeftOut = layout.LeftOut.Count,
            NailLength = production.Sum(n => n.Length),
            Findings = Enum.GetValues<Severity>().ToDictionary(ResultWords.Of, s => run.Laid.Report.Findings.Count(f => f.Severity == s)),
            Score = [Kept("cover", score.Cover), Kept("unresolved", score.Unresolved), Kept("noted", score.Noted), Kept("effort", score.Effort)],
            IsProvenBest = score.IsProvenBest,
            LeastClear = clear.Length == 0 ? null : clear.Min(),
            Quantities = [.. run.Quantities.Definitions.Select(d => run.Quantities.Totals[d.Name]).Where(q => q.State != QuantityState.NotAsked)
                .Select(q => new KeptQuantity(q.Definition.Name, q.Definition.Text, q.Definition.Unit, q.Amount, InWords(q.State)))],
            PayItems = run.Bid.Set.Name,
            Bid = [.. run.Bid.Lines.Select(l => new KeptBidItem(l.Item.Number, l.Item.Description, l.Item.Unit, l.Rounded, l.Raw, Math.Max(0, l.Item.Rounding.Decimals), l.Price, InWords(l.State), l.Note))],
            Sheets = [.. run.Sheets.Sheets.Select(s => new KeptSheet(s.Name, s.Title, s.Size))],
        };
    }

    public static IReadOnlyList<KeptHole> Holes(FinishedWall run)
    {
        Vector3D origin = run.Input.Project.Origin.At(0);
        return [.. run.Laid.Layout.Nails.Select(n =>
        {
            (Vector3D head, Vector3D d) = (n.Hole.Head + origin, n.Hole.Direction);
            return new KeptHole(n.Mark, n.Wall.Name, n.Station, n.Elevation, [head.N, head.E, head.Z, d.N, d.E, d.Z, n.Hole.Length, n.Hole.Radius, n.Hole.Drift]);
        })];
    }

    /// <summary>The box in plan around all that the project holds.</summary>
    public static IReadOnlyList<double> Reach(FinishedWall run)
    {
        Bounds[] boxes = [.. new ClearanceScene(run.Input.Project, []).Obstacles.Select(o => o.Solid.Bounds), .. run.Laid.Layout.Nails.Select(n => Bounds.Of(n.Hole))];
        if (boxes.Length == 0)
            return [];
        Bounds all = boxes.Aggregate((a, b) => a.With(b));
        Vector2D origin = run.Input.Project.Origin;
        return [all.Low.N + origin.N, all.Low.E + origin.E, all.High.N + origin.N, all.High.E + origin.E];
    }

    private static KeptScore Kept(string name, FoundAndBound figure) => new(name, figure.Found, figure.Bound);

    private static string InWords(QuantityState state) => state switch
    {
        QuantityState.Complete => "complete",
        QuantityState.Incomplete => "incomplete",
        QuantityState.Missing => "missing",
        _ => "not asked",
    };
}
