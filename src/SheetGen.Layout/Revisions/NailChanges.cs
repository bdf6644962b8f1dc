using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Revisions;

/// <summary>Nails that are not the same in two states.</summary>
internal static class NailChanges
{
    public static IEnumerable<NailChange> Of(IReadOnlyList<RevisionNail> old, IReadOnlyList<RevisionNail> @new, RevisionScale scale)
    {
        Dictionary<string, RevisionNail> left = old.DistinctBy(n => n.Mark).ToDictionary(n => n.Mark);
        HashSet<string> kept = [.. @new.Select(n => n.Mark).Where(left.ContainsKey)];
        List<RevisionNail> renamable = [.. old.Where(n => !kept.Contains(n.Mark))];
        var changes = new List<NailChange>();
        var gone = new HashSet<string>(left.Keys.Except(kept));
        foreach (RevisionNail after in @new)
        {
            RevisionNail? before = kept.Contains(after.Mark) ? left[after.Mark] : renamable.Find(n => gone.Contains(n.Mark) && IsSame(n, after, scale));
            if (before is null)
            {
                changes.Add(new NailChange(NailChangeKind.Added, null, after, "added at " + Placed(after, scale)));
                continue;
            }
            gone.Remove(before.Mark);
            string what = What(before, after, scale);
            if (what.Length > 0)
                changes.Add(new NailChange(NailChangeKind.Changed, before, after, what));
        }
        foreach (RevisionNail before in old.Where(n => gone.Contains(n.Mark)))
            changes.Add(new NailChange(NailChangeKind.Removed, before, null, "removed from " + Placed(InNewUnit(before, scale), scale)));
        return changes;
    }

    private static bool IsSame(RevisionNail before, RevisionNail after, RevisionScale scale) =>
        before.Wall == after.Wall && What(before with { Mark = after.Mark, Section = after.Section, Row = after.Row }, after, scale).Length == 0;

    private static RevisionNail InNewUnit(RevisionNail n, RevisionScale scale) =>
        n with { Station = scale.Length(n.Station), Elevation = scale.Length(n.Elevation), Length = scale.Length(n.Length) };

    private static string Placed(RevisionNail n, RevisionScale scale) => Invariant(
        $"{scale.StationText(n.Wall, n.Station)}, elevation {Show(n.Elevation, scale.Unit)}, {Side(n.Splay)}, {n.Inclination:0.##} deg down, length {n.Length:0.###} {Lengths.Symbol(scale.Unit)}");

    /// <summary>Every figure that differs, with both values; empty where none does.</summary>
    private static string What(RevisionNail before, RevisionNail after, RevisionScale scale)
    {
        var parts = new List<string>();
        LengthUnit unit = scale.Unit;
        string symbol = Lengths.Symbol(unit);
        if (!scale.IsSame(before.Station, after.Station))
        {
            double shift = after.Station - scale.Length(before.Station);
            parts.Add($"moved {Show(Math.Abs(shift), unit)} {symbol} {(shift > 0 ? "up" : "down")}-station, {scale.StationText(after.Wall, scale.Length(before.Station))} to {scale.StationText(after.Wall, after.Station)}");
        }
        if (!scale.IsSame(before.Elevation, after.Elevation))
        {
            double rise = after.Elevation - scale.Length(before.Elevation);
            parts.Add($"{(rise > 0 ? "raised" : "lowered")} {Show(Math.Abs(rise), unit)} {symbol}, elevation {Show(scale.Length(before.Elevation), unit)} to {Show(after.Elevation, unit)}");
        }
        if (!RevisionScale.IsSameAngle(before.Splay, after.Splay))
            parts.Add($"turned from {Side(before.Splay)} to {Side(after.Splay)}");
        if (!RevisionScale.IsSameAngle(before.Inclination, after.Inclination))
            parts.Add(Invariant($"inclination {before.Inclination:0.##} to {after.Inclination:0.##} deg"));
        if (!scale.IsSame(before.Length, after.Length))
            parts.Add(Invariant($"length {scale.Length(before.Length):0.###} to {after.Length:0.###} {symbol}"));
        if (before.Bar != after.Bar)
            parts.Add($"bar {before.Bar} to {after.Bar}");
        if (!scale.IsSame(before.HoleDiameter, after.HoleDiameter))
            parts.Add(Invariant($"hole {scale.Length(before.HoleDiameter):0.####} to {after.HoleDiameter:0.####} {symbol}"));
        if (before.Kind != after.Kind)
            parts.Add($"{before.Kind} nail to {after.Kind} nail");
        if (before.Wall != after.Wall)
            parts.Add($"wall {before.Wall} to {after.Wall}");
        if (before.Mark != after.Mark)
            parts.Add($"mark {before.Mark} to {after.Mark}");
        return string.Join("; ", parts);
    }

    private static string Side(double splay) =>
        splay == 0 ? "no splay" : Invariant($"splay {Math.Abs(splay):0.##} deg {(splay > 0 ? "up" : "down")}-station");

    private static string Show(double value, LengthUnit unit) => PlainNumber.Fixed(value, Lengths.Decimals(unit));

    private static string Invariant(FormattableString text) => PlainNumber.Text(text);
}
