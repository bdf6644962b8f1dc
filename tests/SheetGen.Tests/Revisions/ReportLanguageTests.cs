using System.Text.RegularExpressions;
using SheetGen.Drawing.Review;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Quantities;
using SheetGen.Layout.Revisions;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>The reports of the checker's tools speak the language of the sheets, whole, and with the same figures.</summary>
public sealed class ReportLanguageTests
{
    private static readonly EditedWall Wall = EditedWall.Shared;
    private static readonly Language Spanish = TemplateReader.Default(null, null, "spanish").Language;

    /// <summary>Words that no Spanish text holds; keys of the project file, codes of findings and names of quantities stay as they are.</summary>
    private static readonly Regex English = new(
        @"\b(the|The|is|are|Are|Is|Does|and|of|to|To|within|clear|Clear|required|allowed|nail|nails|Nails|section|into|because|turned|with|deg|splay|Splay|down|length|Length|yes|none|page|input|Now|free|Nearest|closest|pairs|wall reach|given|Old|New|removed|added|moved|along|Where|Date|Initials|Answer|needs|shown)\b");

    public static TheoryData<string> Reports => ["clashes", "plan review", "room to turn", "as built", "changes"];

    [Theory, MemberData(nameof(Reports))]
    public void A_report_has_no_english_words_and_the_same_figures(string report)
    {
        string[] english = Texts(report, null), spanish = Texts(report, Spanish);
        string[] left = [.. spanish.Where(t => English.IsMatch(Names.Replace(t, ""))).Distinct()];
        Assert.True(left.Length == 0, string.Join('\n', left.Take(40)));
        Assert.Contains(english, t => English.IsMatch(t));
        Assert.Equal(Figures(english), Figures(spanish));
    }

    /// <summary>What the project or the program calls so in every language.</summary>
    private static readonly Regex Names = new("(Small wall|Wall 1|wall|project|workbook|walls|notes|design|finished_grade|independent check|quality_level|findings.json|nail-[a-z]+|--head|--angle|lifts|max_exposed)");

    private static string[] Figures(string[] texts) =>
        [.. texts.Where(t => !t.StartsWith("page ", StringComparison.Ordinal) && !t.StartsWith("página ", StringComparison.Ordinal)).SelectMany(t => Regex.Matches(t, "[0-9]+(?:\\.[0-9]+)?").Select(m => m.Value)).Distinct().Order(StringComparer.Ordinal)];

    private static string[] Texts(string report, Language? language) =>
        [.. Compose(report, ReviewInfo.Of(Wall.Project, "0", language)).Sheets.SelectMany(s => s.Paper.OfType<SheetGen.Drawing.Primitives.Text>()).Select(t => t.Value)];

    private static SheetSet Compose(string report, ReviewInfo info)
    {
        ClearanceReport check = Checker.Check(Wall.Project, Wall.Layout);
        switch (report)
        {
            case "room to turn":
                var windows = new TurnWindows(Wall.Project, Wall.Layout);
                return WindowPages.Compose(Wall.Layout.Nails.Take(12).Select(windows.Of), info, check);
            case "as built":
                AsBuiltNail[] record = [.. Wall.Layout.Nails.Take(3).Select((n, i) => new AsBuiltNail(n.Mark, n.Station + 0.75 * i, n.Elevation - i, n.Splay + 9, n.Inclination + 4, n.Length - i, 3, "2026-01-15", "", default))];
                return AsBuiltPages.Compose(AsBuilt.Of(Wall.Project, Wall.Layout, record, AsBuilt.Tolerances.Default(LengthUnit.Foot)), info,
                    "Head 0.5 ft along the wall and in height, angles 3 deg, no shortfall of length (DEFAULT where not given by --head and --angle; the project's specification governs).");
            case "plan review":
                return PlanReviewPages.Compose(PlanReview.Of(Wall.Project, Wall.Layout, check, TakeOff.Measure(Wall.Project, Wall.Layout)), info);
            case "clashes":
                NailLayout turned = Edited(n => n.Splay + (n.Mark.EndsWith("-03", StringComparison.Ordinal) ? 20 : 0));
                (IReadOnlyList<ClashPair> clashes, IReadOnlyList<ClashPair> closest) = ClashPairs.Of(Wall.Project, turned);
                Assert.NotEmpty(clashes);
                return ClashPages.Compose(
                    new DrawingContext(Wall.Project, turned, Checker.Check(Wall.Project, turned), TakeOff.Measure(Wall.Project, turned), [], new RunInfo("0"), info.Templates), info, clashes, closest);
            default:
                return RevisionPages.Compose(Comparison.Of(State(Wall.Layout), State(Edited(n => n.Splay - 4))), info, Wall.Project.Walls);
        }
    }

    private static NailLayout Edited(Func<Nail, double> splay) => EditedLayout.Of(
        Wall.Project, Wall.Layout,
        [.. Wall.Layout.Nails.Skip(1).Select((n, i) => new DrawnNail(n, n.Wall, n.Along + (i == 4 ? 0.5 : 0), n.Elevation + (i == 5 ? 0.25 : 0), splay(n), i == 6 ? 12 : null, i == 7 ? 25 : null)), new DrawnNail(null, Wall.Project.Walls[0], 20.25, 110, null, null, null)],
        "on the drawing edited.dxf").Layout;

    /// <summary>Without quantities, whose names are words of the take-off.</summary>
    private static RevisionState State(NailLayout layout) => RevisionState.Of(
        "wall.yaml", Wall.Project, layout, Checker.Check(Wall.Project, layout), TakeOff.Measure(Wall.Project, layout) with { Sections = [] }, new BidTable(new PayItemSet("none", "none", []), []));
}
