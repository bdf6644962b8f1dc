using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// All directions of a section's nails in whole steps, cheapest first: within the field tolerance before noted, then fewer degrees;
/// among equals the smaller change of inclination, steeper before flatter, down-station before up-station.
/// </summary>
internal sealed class Turnings
{
    private const int CoarseSteps = 5;

    private readonly Turning[] _all;
    private readonly Dictionary<(int Change, int Splay), int> _numbers = [];

    public Turnings(Section section, Rules rules)
    {
        RedirectRules redirect = rules.Redirect;
        var all = new List<(int Change, int Splay, Turning Turning)>();
        int steps = (int)Math.Floor(redirect.Maximum / redirect.Step + Tolerance.Rounding);
        for (int i = -steps; i <= steps; i++)
        {
            double change = i * redirect.Step, inclination = section.Inclination + change;
            if (i != 0 && (inclination < redirect.LeastInclination - Tolerance.Rounding || inclination > redirect.GreatestInclination + Tolerance.Rounding))
                continue;
            for (int a = -steps; a <= steps; a++)
                all.Add((i, a, Make(section, redirect, a * redirect.Step, inclination, change)));
        }
        (int Change, int Splay, Turning Turning)[] ordered = [.. all.OrderBy(t => t.Turning.IsNoted).ThenBy(t => t.Turning.Effort)
            .ThenBy(t => Math.Abs(t.Turning.Inclination - section.Inclination)).ThenByDescending(t => t.Turning.Inclination)
            .ThenBy(t => t.Turning.Splay)];
        _all = [.. ordered.Select(t => t.Turning)];
        for (int number = 0; number < ordered.Length; number++)
            _numbers[(ordered[number].Change, ordered[number].Splay)] = number;
        Coarse = [.. Enumerable.Range(0, ordered.Length)
            .Where(p => ordered[p].Change % CoarseSteps == 0 && ordered[p].Splay % CoarseSteps == 0)];
        Steps = [.. ordered.Select(t => (t.Change, t.Splay))];
        int low = ordered.Min(t => t.Change), high = ordered.Max(t => t.Change);
        Rim = [.. ordered.Where(t => t.Change == low || t.Change == high).Select(t => t.Turning)];
        GreatestLengthening = _all.Max(t => t.Lengthening);
    }

    private Turnings(Turning only)
    {
        _all = [only];
        _numbers[(0, 0)] = 0;
        Coarse = [0];
        Steps = [(0, 0)];
        Rim = _all;
        GreatestLengthening = only.Lengthening;
    }

    public IReadOnlyList<Turning> All => _all;

    public int Count => _all.Length;

    /// <summary>Numbers of those in steps five times as wide.</summary>
    public IReadOnlyList<int> Coarse { get; }

    /// <summary>The flattest and the steepest at every splay: the others lie within the box around them.</summary>
    public IReadOnlyList<Turning> Rim { get; }

    /// <summary>How many times its length a nail gets at most by turning.</summary>
    public double GreatestLengthening { get; }

    private (int Change, int Splay)[] Steps { get; }

    public Turning this[int number] => _all[number];

    /// <summary>The number in order of a direction that may be another set's; -1 where it is none of these.</summary>
    public int NumberOf(Turning turning) => Array.FindIndex(_all, t => t.Splay == turning.Splay && t.Inclination == turning.Inclination);

    /// <summary>The one direction of a pinned nail.</summary>
    public static Turnings Only(Turning turning) => new(turning);

    public static Turning Make(Section section, RedirectRules redirect, double splay, double inclination, double change)
    {
        bool noted = Math.Abs(splay) > redirect.FieldTolerance + Tolerance.Rounding || Math.Abs(change) > redirect.FieldTolerance + Tolerance.Rounding;
        double a = Angles.ToRadians(splay), i = Angles.ToRadians(inclination);
        double lengthening = 1;
        if (noted && redirect.Lengthen)
            lengthening = Math.Max(1, Math.Cos(Angles.ToRadians(section.Inclination)) / (Math.Cos(i) * Math.Cos(a)));
        return new Turning(
            splay, inclination, noted, Cost.Degrees(Math.Abs(splay) + Math.Abs(change)), lengthening,
            Math.Cos(i) * Math.Cos(a), Math.Cos(i) * Math.Sin(a), Math.Sin(i));
    }

    /// <summary>
    /// Length of a nail in a direction: L' = max(L, L cos(i0) / (cos(i) cos(a))) rounded up to the increment where the turn is noted.
    /// </summary>
    public static double LengthOf(Turning turning, double length, double increment)
    {
        if (turning.Lengthening <= 1)
            return length;
        double needed = length * turning.Lengthening;
        return Math.Round(Math.Ceiling(needed / increment - Tolerance.Rounding) * increment, Tolerance.Decimals);
    }

    /// <summary>Numbers of the straight direction and of those within some steps of given ones, in order.</summary>
    public int[] Around(IEnumerable<Turning> given, int steps)
    {
        var near = new SortedSet<int> { 0 };
        foreach (Turning turning in given)
        {
            (int change, int splay) = Steps[Array.IndexOf(_all, turning)];
            for (int i = -steps; i <= steps; i++)
            {
                for (int a = -steps; a <= steps; a++)
                {
                    if (_numbers.TryGetValue((change + i, splay + a), out int number))
                        near.Add(number);
                }
            }
        }
        return [.. near];
    }
}
