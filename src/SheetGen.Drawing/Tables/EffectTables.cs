using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Tables;

/// <summary>Changed nails against the design, and loads of tests: only where the engineer's values are given.</summary>
internal static class EffectTables
{
    private static readonly double[] Verification = [0.13, 0.25, 0.38, 0.50, 0.63, 0.75, 0.88, 1.00];
    private static readonly double[] Proof = [0.17, 0.33, 0.50, 0.67, 0.83, 1.00];

    public static IEnumerable<SheetTable> All(DrawingContext context) => [Changed(context), TestLoads(context)];

    private static SheetTable Changed(DrawingContext context)
    {
        (string area, int decimals) = Lengths.IsFoot(context.Print.Unit) ? ("FT2", 1) : ("M2", 2);
        return Of(context, Phrase.TableEffect, context.Say(Phrase.TableEffectHeads, area), Phrase.TableEffectRemark,
            [.. context.Quantities.Effect.Changed.Where(n => n.Nail.Section.Design is not null).Select(n => (IReadOnlyList<string>)[
                n.Nail.Mark, context.Say(Word(n.Zone)), Printed.Fixed(n.Drawn.Area, decimals), Printed.Fixed(n.AreaShare, 2), Printed.Fixed(n.Drawn.Square, 3),
                Ratio(n.Grid?.Lowest), Ratio(n.Drawn.Lowest), n.Drawn.Lowest is { } lowest ? context.Say(Word(lowest.State)) : "",
                (n.Drawn.Lowest?.Surface ?? "").ToUpperInvariant()])]);
    }

    private static SheetTable TestLoads(DrawingContext context)
    {
        Printed print = context.Print;
        bool feet = Lengths.IsFoot(print.Unit);
        string Steps(SoilTest test) => string.Join("  ", (test.IsProof ? Proof : Verification).Select(s => $"{Printed.Fixed(s, 2)}: {Printed.Fixed(s * test.Load, 1)}"));
        return Of(context, Phrase.TableTestLoads, context.Say(Phrase.TableTestLoadsHeads, feet ? "KIP" : "kN", feet ? "IN" : "mm"), Phrase.TableTestLoadsRemark,
            [.. context.Quantities.Effect.Tests.Select(t => (IReadOnlyList<string>)[
                t.Section.Name, context.Say(t.IsProof ? Phrase.TestProof : Phrase.TestVerification), t.Soil.Length == 0 ? context.Say(Phrase.EverySoil) : t.Soil.ToUpperInvariant(),
                print.Short(Math.Round(t.Bonded, 2)), t.Free is { } free ? print.Short(free) : "", Steps(t), Printed.Fixed(t.Load, 1), Printed.Fixed(t.BarLimit, 1),
                t.LeastStretch is { } stretch ? Printed.Fixed(stretch, feet ? 3 : 1) : ""])]);
    }

    private static SheetTable Of(DrawingContext context, Phrase title, string heads, Phrase remark, IReadOnlyList<IReadOnlyList<string>> rows) =>
        SheetTable.Of(context.Say(title), heads.Split('/'), rows, context.Say(remark));

    private static string Ratio(LimitCheck? check) => check is null ? "" : Printed.Fixed(check.Ratio, 2);

    private static Phrase Word(FaceZone zone) => zone switch
    {
        FaceZone.UpperRow => Phrase.ZoneUpperRow,
        FaceZone.Corner => Phrase.ZoneCorner,
        FaceZone.End => Phrase.ZoneEnd,
        _ => Phrase.ZoneInner,
    };

    private static Phrase Word(LimitState state) => state switch
    {
        LimitState.Pullout => Phrase.LimitPullout,
        LimitState.Bar => Phrase.LimitBar,
        LimitState.Front => Phrase.LimitFront,
        LimitState.Flexure => Phrase.LimitFlexure,
        LimitState.Punching => Phrase.LimitPunching,
        LimitState.PermanentFlexure => Phrase.LimitPermanentFlexure,
        LimitState.PermanentPunching => Phrase.LimitPermanentPunching,
        _ => Phrase.LimitStuds,
    };
}
