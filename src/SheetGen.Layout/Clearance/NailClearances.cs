using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Clearance;

/// <summary>The least clear distance and the two drilling margins of each nail of a scene.</summary>
internal sealed class NailClearances
{
    private readonly ClearanceScene _scene;
    private readonly IReadOnlyList<Nail> _nails;
    private readonly IReadOnlyList<FaceLeg> _legs;
    private readonly Dictionary<FaceLeg, int> _concerned = [];
    private readonly List<int> _found = [];

    private NailClearances(ClearanceScene scene, IReadOnlyList<Nail> nails, IReadOnlyList<FaceLeg> legs)
    {
        _scene = scene;
        _nails = nails;
        _legs = legs;
        foreach (FaceLeg leg in legs.Distinct())
            _concerned[leg] = scene.Obstacles.Count(o => o.Concerns(leg));
    }

    /// <param name="nails">The nails of the scene's holes, in the same order.</param>
    /// <param name="legs">The legs that they start from.</param>
    public static IReadOnlyDictionary<string, NailClearance> Of(ClearanceScene scene, IReadOnlyList<Nail> nails, IReadOnlyList<FaceLeg> legs)
    {
        var work = new NailClearances(scene, nails, legs);
        var clearances = new Dictionary<string, NailClearance>(nails.Count);
        for (int i = 0; i < nails.Count; i++)
            clearances[nails[i].Mark] = work.Of(i);
        return clearances;
    }

    private NailClearance Of(int nail)
    {
        Hole hole = _scene.Holes[nail];
        var least = new Least("", double.PositiveInfinity);
        double toObstruction = ToObstacles(hole, _legs[nail], ref least);
        double toNail = ToNails(hole, nail, ref least);
        return new NailClearance(least.Name, least.Clear, DrillingMargin.Degrees(toObstruction), DrillingMargin.Degrees(toNail));
    }

    /// <summary>
    /// What is not found within a reach has more than that reach free, so its ratio is over reach / length: the reach grows until
    /// neither the least distance nor the margin can lie beyond it. Faces of other legs and walls count for the least distance; for the
    /// margin only where the hole already runs into one.
    /// </summary>
    private double ToObstacles(in Hole hole, FaceLeg leg, ref Least least)
    {
        double ratio = 1, own = double.PositiveInfinity;
        int concerned = _concerned[leg];
        for (double reach = FirstReach(hole); concerned > 0; reach *= 2)
        {
            _scene.Near(hole, reach, _found);
            int met = 0;
            foreach (int i in _found)
            {
                Obstacle obstacle = _scene.Obstacles[i];
                if (!obstacle.Concerns(leg))
                    continue;
                met++;
                double clear = HoleDistance.ToSolid(hole, obstacle.Solid).Clear;
                Compare(clear, obstacle.Name, ref own, ref least);
                if (clear < 0)
                    ratio = 0;
                else if (obstacle.Obstruction is not null)
                    ratio = DrillingMargin.Ratio(hole, obstacle.Solid, ratio);
            }
            if (met == concerned || (own < reach && ratio * hole.Length <= reach))
                break;
        }
        return ratio;
    }

    private double ToNails(in Hole hole, int nail, ref Least least)
    {
        double ratio = 1, own = double.PositiveInfinity;
        for (double reach = FirstReach(hole); ; reach *= 2)
        {
            _scene.HolesCloserThan(hole, reach, _found);
            foreach (int i in _found)
            {
                if (i == nail)
                    continue;
                double clear = HoleDistance.Between(hole, _scene.Holes[i]).Clear;
                Compare(clear, _nails[i].Mark, ref own, ref least);
                ratio = clear < 0 ? 0 : DrillingMargin.Ratio(hole, _scene.Holes[i], ratio);
            }
            if (_found.Count == _nails.Count || (own < reach && ratio * hole.Length <= reach))
                return ratio;
        }
    }

    /// <summary>Some hole diameters: about the spacing of usual walls.</summary>
    private static double FirstReach(in Hole hole) => 16 * hole.Radius;

    private static void Compare(double clear, string name, ref double own, ref Least least)
    {
        own = Math.Min(own, clear);
        if (clear < least.Clear)
            least = new Least(name, clear);
    }

    private readonly record struct Least(string Name, double Clear);
}
