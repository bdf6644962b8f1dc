using SheetGen.Layout.Clearance;
using SheetGen.Layout.Revisions;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Tests.Fuzz;
using SheetGen.Writers.Dxf.Edited;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>
/// Broken and hostile drawings through all of recheck: an error that names the line, or a reading that can be laid out, checked and compared. 2 of each kind in every
/// run, 500 in all with SHEETGEN_LONG=1.
/// </summary>
public sealed class HostileDrawingTests(ITestOutputHelper output)
{
    private static readonly EditedWall Wall = EditedWall.Shared;

    [Fact]
    public void A_hostile_drawing_gives_an_error_with_its_line_or_a_reading()
    {
        int count = Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1" ? 500 : 2 * HostileDrawings.KindCount, refused = 0, read = 0;
        var drawings = new HostileDrawings(Wall.Drawing);
        for (int i = 0; i < count; i++)
        {
            (string name, byte[] bytes) = drawings.Make(i);
            var problems = new List<Problem>();
            DrawingReading? reading;
            try
            {
                reading = EditedDrawing.Read(bytes, "edited.dxf", Wall.Project, Wall.Layout, Wall.Sheets, problems);
                if (reading is not null)
                    Go(reading, name);
            }
            catch (Exception e)
            {
                throw new InvalidOperationException(name, e);
            }
            if (reading is null)
            {
                Problem problem = Assert.Single(problems);
                Assert.True(problem.Severity == Severity.Error && problem.Spot.Line >= 1 && problem.Message.Length is > 10 and < 400 && problem.Hint.Length > 0, $"{name}: {problem}");
                Assert.DoesNotContain(problem.Message, char.IsControl);
                refused++;
            }
            else
            {
                read++;
            }
        }
        output.WriteLine($"{count} drawings: {refused} refused, {read} read");
        Assert.True(refused > count / 8 && read > count / 8, $"{refused} refused, {read} read");
    }

    /// <summary>What was read is laid out, checked and compared as any edit; every figure is finite.</summary>
    private static void Go(DrawingReading reading, string name)
    {
        Assert.All(reading.NotRead.Concat(reading.LeftOut).Concat(reading.Notes), t => Assert.InRange(t.Length, 5, 600));
        EditedLayout edited = Wall.Edit(reading);
        Assert.All(edited.Layout.Nails, n => Assert.True(double.IsFinite(n.Along) && double.IsFinite(n.Elevation) && double.IsFinite(n.Length) && n.Length > 0 && double.IsFinite(n.Hole.Tip.Z), $"{name}: {n.Mark}"));
        ClearanceReport report = Checker.Check(Wall.Project, edited.Layout);
        Assert.All(report.Findings, f => Assert.True(f.Clear is null || double.IsFinite(f.Clear.Value), $"{name}: {f.Message}"));
        Wall.Changes(reading);
    }

    [Fact]
    public void What_was_done_to_a_drawing_is_the_same_each_time()
    {
        for (int i = 0; i < HostileDrawings.KindCount; i++)
            Assert.Equal(new HostileDrawings(Wall.Drawing).Make(i).Bytes, new HostileDrawings(Wall.Drawing).Make(i).Bytes);
    }
}
