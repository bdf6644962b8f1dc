using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Tests.Properties;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>
/// What a nail says of itself, measured again: the hole at its grid place, the one where it stands, and each cheaper choice that is said to fail are made anew
/// from the printed figures and held against what the reason names.
/// </summary>
public sealed class ReasonTests
{
    private const double Near = 0.02;

    /// <summary>
    /// A hole of 20 ft at 15 degrees ends 19.32 ft behind the face; a limit 20 ft behind it is near the tip, one at 15 ft is crossed. At 20 ft nails that turn far enough are clear of it.
    /// </summary>
    [Theory]
    [InlineData(20, "comes within ", "crosses ")]
    [InlineData(15, "crosses Limit (1.00 ft required)", "comes within ")]
    public void A_limit_is_crossed_or_only_near(double offset, string said, string never)
    {
        NailLayout layout = PlacingWall.OneRow(10.5,
        [
            "obstructions:",
            FormattableString.Invariant($"  - {{name: Limit, kind: boundary, points: [{{station: 0, offset: {offset}}}, {{station: 10.5, offset: {offset}}}]}}"),
            "rules:",
            "  clearance: {boundary: 1}",
        ]).Layout;
        Nail[] near = [.. layout.Nails.Where(n => n.Reason?.Blocker == "Limit")];
        Assert.True(near.Length >= 3);
        Assert.All(near, n =>
        {
            Assert.Contains(said, n.Reason!.Text, StringComparison.Ordinal);
            Assert.DoesNotContain(never, n.Reason.Text, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData(41)]
    [InlineData(43)]
    [InlineData(45)]
    public void A_reason_is_what_its_figures_say(int seed)
    {
        BuiltWall built = BuiltWall.Of(RandomWall.Scenario((ulong)seed, new RandomWallOptions { Nails = 24 }));
        (WallProject project, NailLayout layout) = (built.Project, built.Layout);
        Dictionary<string, Nail> nails = layout.Nails.ToDictionary(n => n.Mark);
        int looked = 0;
        foreach (Nail nail in layout.Nails.Where(n => n.Kind != NailKind.Verification))
        {
            bool isPlain = nail is { Status: NailStatus.Grid, IsFixed: false, IsAdded: false, IsMoved: false };
            Assert.Equal(isPlain, nail.Reason is null);
            if (nail.Reason is not { } reason)
                continue;
            looked++;
            var face = new Face(nail.Wall);
            if (reason.Blocker is { } blocker)
            {
                Assert.True(reason.ClearBefore < reason.Required, $"{nail.Mark}: {reason.Text}");
                Assert.Contains(blocker, reason.Text, StringComparison.Ordinal);
                Assert.Equal(Clear(nail.Hole, blocker), reason.ClearAfter!.Value, Near);
                if (nail.Status != NailStatus.Unresolved)
                {
                    Assert.True(reason.ClearAfter >= reason.Required - 1e-6, $"{nail.Mark}: {reason.Text}");
                    Assert.EndsWith(" clear of it", reason.Text, StringComparison.Ordinal);
                    // A nail that is not to be drilled turns no other.
                    Assert.False(nails.TryGetValue(blocker, out Nail? other) && other.Status == NailStatus.Unresolved, $"{nail.Mark}: {reason.Text}");
                }
            }
            else
            {
                Assert.True(nail.IsMoved || nail.IsFixed || nail.IsAdded || nail.Status != NailStatus.Grid);
                Assert.Null(reason.ClearBefore);
            }
            Assert.InRange(reason.Failed.Count, 0, 6);
            foreach (FailedChoice failed in reason.Failed)
            {
                double along = nail.Wall.LayoutLine.AlongOf(failed.Station);
                Assert.True(nail.IsAdded || Math.Abs(failed.Station - nail.Station) < 0.011 || Math.Abs(failed.Station - nail.GridStation) < 0.011, $"{nail.Mark} tried at {failed.Station}");
                // The rows of these walls that follow the top change their elevation with the place: only tries at the nail's own place are made anew.
                if (Math.Abs(failed.Station - nail.Station) > 1e-9 || nail.Length != nail.Section.LengthOfRow(Math.Max(1, nail.Row.Whole)))
                    continue;
                Hole tried = face.HoleAt(along, nail.Elevation, failed.Splay, failed.Inclination, nail.Length, nail.HoleDiameter, project.Rules.Drift);
                Assert.True(Turn(failed.Splay, failed.Inclination, nail.Section) <= Turn(nail.Splay, nail.Inclination, nail.Section) + 1e-9 || nail.Status == NailStatus.Unresolved, $"{nail.Mark}: {failed} is not cheaper");
                Assert.Equal(Clear(tried, failed.Blocker), failed.Clear!.Value, Near + 0.25);
            }
        }
        Assert.True(looked > 0);

        static double Turn(double splay, double inclination, Section section) => Math.Abs(splay) + Math.Abs(inclination - section.Inclination);

        double Clear(in Hole hole, string name)
        {
            if (nails.TryGetValue(name, out Nail? other))
                return HoleDistance.Between(hole, other.Hole).Clear;
            Obstruction named = project.Obstructions.First(o => name == o.Name || name.EndsWith(" " + o.Name, StringComparison.Ordinal));
            double least = double.PositiveInfinity;
            foreach (Solid solid in named.Solids)
                least = Math.Min(least, HoleDistance.ToSolid(hole, solid).Clear);
            return least;
        }
    }
}
