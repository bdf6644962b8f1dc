using SheetGen.Layout.Advice;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Work for cover and for verification test nails that ends at a count says so, among the notes and the findings; work that tried everything does not.</summary>
public sealed class CutShortTests
{
    /// <summary>The bottom steps up where only a column that moves over covers (<see cref="CoverKeptTests"/>).</summary>
    [Fact]
    public void Moves_for_cover_that_were_not_tried_are_told_where_the_face_stays_uncovered()
    {
        WallProject project = PlacingWall.Read(CoverKeptTests.Step);

        NailLayout none = Placer.Place(project, new PlacingOptions { MostCoverMoves = 0 });

        Assert.Equal(0.18, none.Score.Cover.Found, 6);
        CutShort told = Assert.Single(none.CutShort);
        Assert.Equal("Wall 1, 1+10.82 to 1+11.00: the search for heads that cover this stopped at its greatest count, before every move was tried", told.Message);
        Assert.Contains(told.Message, none.Notes);
        Finding finding = Assert.Single(LayoutAdvice.Of(project, none), f => f.Message == told.Message);
        Assert.Equal((Severity.Notice, 110.82, 111.0), (finding.Severity, Math.Round(finding.Station!.Value, 2), Math.Round(finding.ToStation!.Value, 2)));
        Assert.Empty(Placer.Place(project, new PlacingOptions()).CutShort);
    }

    [Fact]
    public void A_verification_nail_that_is_missing_because_of_a_count_is_told_and_one_that_has_no_place_is_not()
    {
        // A pipe as thick as the wall is high runs along it, 8 ft behind the face: no hole of 20 ft passes, whatever its direction.
        WallProject project = (PlacingWall.OneRow(
            21, "obstructions:", "  - {name: Pipe, kind: pipe, points: [{station: -60, offset: 24, elevation: 98}, {station: 80, offset: 24, elevation: 98}], diameter: 32}") with
        {
            Tests = "{verification: 1}",
        }).Project;

        NailLayout all = Placer.Place(project, new PlacingOptions()), none = Placer.Place(project, new PlacingOptions { MostTurnedTestHoles = 0 });

        Assert.DoesNotContain(all.Nails.Concat(none.Nails), n => n.Kind == NailKind.Verification);
        CutShort told = Assert.Single(none.CutShort, c => c.Message.Contains("verification", StringComparison.Ordinal));
        Assert.Equal("Wall 1, section A: the search for a verification test nail stopped after 0 turned holes, before every place was tried", told.Message);
        Assert.Contains(told.Message, none.Notes);
        Assert.DoesNotContain(all.CutShort, c => c.Message.Contains("verification", StringComparison.Ordinal));
    }
}
