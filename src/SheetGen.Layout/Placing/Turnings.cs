using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// All directions of a section's nails in whole steps, cheapest first: within the field tolerance before noted, then fewer degrees;
/// among equals the smaller change of inclination, steeper before flatter, down-station before up-station.
/// </summary>
public sealed class Turnings
{
    public Turnings(Section section, Rules rules)
    {
        RedirectRules redirect = rules.Redirect;
        var all = new List<Turning>();
        int steps = (int)Math.Floor(redirect.Maximum / redirect.Step + 1e-9);
        for (int i = -steps; i <= steps; i++)
        {
            double change = i * redirect.Step, inclination = section.Inclination + change;
            if (i != 0 && (inclination < redirect.LeastInclination - 1e-9 || inclination > redirect.GreatestInclination + 1e-9))
                continue;
            for (int a = -steps; a <= steps; a++)
                all.Add(Make(section, redirect, a * redirect.Step, inclination, change));
        }
        All = [.. all.OrderBy(t => t.IsNoted).ThenBy(t => t.Effort)
            .ThenBy(t => Math.Abs(t.Inclination - section.Inclination)).ThenByDescending(t => t.Inclination).ThenBy(t => t.Splay)];
    }

    public IReadOnlyList<Turning> All { get; }

    public static Turning Make(Section section, RedirectRules redirect, double splay, double inclination, double change)
    {
        bool noted = Math.Abs(splay) > redirect.FieldTolerance + 1e-9 || Math.Abs(change) > redirect.FieldTolerance + 1e-9;
        double stretch = 1;
        if (noted && redirect.Lengthen)
        {
            stretch = Math.Max(1, Math.Cos(Angles.ToRadians(section.Inclination))
                / (Math.Cos(Angles.ToRadians(inclination)) * Math.Cos(Angles.ToRadians(splay))));
        }
        return new Turning(splay, inclination, noted, Cost.Degrees(Math.Abs(splay) + Math.Abs(change)), stretch);
    }

    /// <summary>
    /// Length of a nail in a direction: L' = max(L, L cos(i0) / (cos(i) cos(a))) rounded up to the increment where the turn is noted.
    /// </summary>
    public static double LengthOf(Turning turning, double length, double increment)
    {
        if (turning.Stretch <= 1)
            return length;
        double needed = length * turning.Stretch;
        return Math.Round(Math.Ceiling(needed / increment - 1e-9) * increment, 6);
    }
}
