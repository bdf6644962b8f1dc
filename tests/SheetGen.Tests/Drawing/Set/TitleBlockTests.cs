using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>What the program's own title block says of the project and its revisions.</summary>
public class TitleBlockTests
{
    private static SheetSet With(params string[] revisions)
    {
        WallProject project = SampleLayout.Read(SampleWalls.TwoWalls);
        project = project with { Sheets = project.Sheets with { Revisions = [.. revisions.Select((t, i) => (IReadOnlyList<string>)[$"{i + 1}", "2026-02-01", t])] } };
        return SampleSheets.Compose(project, SampleLayout.Make(project));
    }

    private static Dictionary<string, string> Fields(SheetSet set) => ((BlockReference)set.Sheets[0].Paper[0]).Attributes.ToDictionary(a => a.Key, a => a.Value);

    [Fact]
    public void Long_words_of_a_revision_go_on_in_the_next_row()
    {
        SheetSet set = With("Nails moved at shaft P1 and the test nail of zone B turned");
        Dictionary<string, string> fields = Fields(set);

        string[] rows = [.. Enumerable.Range(1, 6).Select(i => fields[$"REV_{i}_C"]).Where(v => v.Length > 0)];

        Assert.True(rows.Length > 1);
        Assert.Equal("Nails moved at shaft P1 and the test nail of zone B turned", string.Join(" ", rows));
        Assert.Equal(("1", ""), (fields["REV_1_A"], fields["REV_2_A"]));
        Assert.DoesNotContain(set.Findings, f => f.Message.Contains("cut short", StringComparison.Ordinal));
    }

    [Fact]
    public void The_latest_revisions_stand_where_not_all_have_room_and_the_others_are_named()
    {
        SheetSet set = With([.. Enumerable.Range(1, 8).Select(i => $"Change {i}")]);
        Dictionary<string, string> fields = Fields(set);

        Assert.Equal("Change 3", fields["REV_1_C"]);
        Assert.Equal("Change 8", fields["REV_6_C"]);
        Assert.Equal(2, set.Findings.Count(f => f.Message.Contains("Change", StringComparison.Ordinal)));
    }
}
