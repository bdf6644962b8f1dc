using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;

namespace SheetGen.Layout.Revisions;

/// <summary>Pairs that are too close, worst first, and the closest that pass.</summary>
public static class ClashPairs
{
    /// <param name="passing">How many of the closest pairs that pass.</param>
    public static (IReadOnlyList<ClashPair> Clashes, IReadOnlyList<ClashPair> Closest) Of(WallProject project, NailLayout layout, int passing = 20)
    {
        IReadOnlyList<Nail> nails = layout.Nails;
        var scene = new ClearanceScene(project, [.. nails.Select(n => n.Hole)]);
        var faces = project.Walls.ToDictionary(w => w.Name, w => new Face(w));
        List<ClashPair> found = [];
        double asked = project.Rules.NailClearance, most = scene.Obstacles.Select(o => o.Required).Append(asked).Max();
        for (double reach = most + 2 * asked; ; reach *= 2)
        {
            found.Clear();
            foreach (HolePair pair in scene.PairsCloserThan(reach))
                found.Add(OfNails(nails[pair.First], nails[pair.Second], asked));
            foreach (Nail nail in nails)
                found.AddRange(OfObstacles(scene, nail, FaceLeg.Of(faces[nail.Wall.Name], Head.Of(nail).Along), reach));
            int pass = found.Count(p => p.Over >= -Tolerance.Rounding && p.Over < reach - most);
            if (pass >= passing || reach > 200 * most)
                break;
        }
        ClashPair[] sorted = [.. found.OrderBy(p => p.Over).ThenBy(p => p.Nail.Mark, StringComparer.Ordinal).ThenBy(p => p.Name, StringComparer.Ordinal)];
        return ([.. sorted.Where(p => p.Over < -Tolerance.Rounding).Select(WithMargin)], [.. sorted.Where(p => p.Over >= -Tolerance.Rounding).Take(passing).Select(WithMargin)]);
    }

    private static ClashPair OfNails(Nail a, Nail b, double required)
    {
        Nearest near = HoleDistance.Between(a.Hole, b.Hole);
        return new ClashPair(a, b, b.Mark, null, near.Clear, required, near.OnFirst, near.OnSecond, near.DepthFirst, near.DepthSecond, 0);
    }

    /// <summary>The nearest piece of each obstruction or face within a reach.</summary>
    private static IEnumerable<ClashPair> OfObstacles(ClearanceScene scene, Nail nail, FaceLeg leg, double reach)
    {
        var found = new List<int>();
        scene.Near(nail.Hole, reach, found);
        foreach (IGrouping<(string, bool), Obstacle> pieces in found.Select(i => scene.Obstacles[i]).Where(o => o.Concerns(leg)).GroupBy(o => (o.Name, o.Leg is not null)))
        {
            (Obstacle piece, Nearest near) = pieces.Select(o => (o, HoleDistance.ToSolid(nail.Hole, o.Solid))).MinBy(p => p.Item2.Clear);
            if (near.Clear < reach)
                yield return new ClashPair(nail, null, piece.Name, piece.Solid, near.Clear, piece.Required, near.OnFirst, near.OnSecond, near.DepthFirst, null, 0);
        }
    }

    private static ClashPair WithMargin(ClashPair p) => p.Clear < 0
        ? p
        : p with { Margin = DrillingMargin.Degrees(p.Other is { } other ? DrillingMargin.Ratio(p.Nail.Hole, other.Hole, 1) : DrillingMargin.Ratio(p.Nail.Hole, p.Solid!, 1)) };
}
