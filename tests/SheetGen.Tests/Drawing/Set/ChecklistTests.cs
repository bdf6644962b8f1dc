using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

/// <summary>
/// What plan checklists ask for, merged from several published ones, and where it stands on the sheets. What only the engineer can give
/// has its field in the notes.
/// </summary>
public class ChecklistTests
{
    private const string Notes = "NOTES AND LEGEND", Views = "PLAN AND ELEVATION", Sections = "SECTIONS", Tables = "TABLES", Details = "TYPICAL DETAILS";

    private static readonly Lazy<SheetSet> Set = new(() => SampleSheets.Compose(SampleWalls.TwoWalls.Replace(
        "elevation: 107}], diameter: 2}", "elevation: 107}], diameter: 2, owner: Example water district, state: abandoned, quality_level: C, source: record drawing}",
        StringComparison.Ordinal)));

    [Theory]
    // Plan view
    [InlineData(1, Tables, "CONTROL POINTS", "BEARING", "FACE OFFSET")]
    [InlineData(1, Notes, "VERTICAL DATUM: NAVD 88")]
    [InlineData(2, Views, "BEGIN WALL 1", "END WALL 1")]
    [InlineData(4, Views, "STORM 24 24\" DIA (ABANDONED)")]
    [InlineData(4, Tables, "QUALITY", "EXAMPLE WATER DISTRICT", "ABANDONED", "RECORD DRAWING")]
    [InlineData(5, Views, "S1 36\" DIA", "CAP")]
    [InlineData(5, Notes, "ADJACENT STRUCTURES")]
    [InlineData(7, Views, "BORING B-1")]
    [InlineData(8, Views, "WATER 8 8\" DIA")]
    // Elevation
    [InlineData(9, Views, "TYP. 3.50' HORIZ. x 3.50' VERT.", "ROW W1-A-1 ")]
    [InlineData(9, Tables, "ROW ELEVATIONS")]
    [InlineData(10, Views, "TOP 118.00", "TOP 121.50", "BOT EL 102.00", "BOT EL 102.50", "STA 100+40.00")]
    [InlineData(11, Views, "EXISTING GROUND", "FINISHED GRADE")]
    [InlineData(13, Views, "TEST NAIL")]
    [InlineData(13, Tables, "TEST NAILS", "VERIFICATION")]
    [InlineData(13, Details, "BONDED LENGTH", "FREE LENGTH")]
    [InlineData(13, Notes, "TEST LOADS, VERIFICATION: ____")]
    [InlineData(14, Views, "WATER 106.00")]
    [InlineData(14, Notes, "GROUNDWATER: ____")]
    // Sections and details
    [InlineData(15, Sections, "GREATEST HEIGHT OF SECTION A", "ROW 1, L 24', 10° DOWN", "LIFT 1 EL ")]
    [InlineData(15, Views, "CUT 1", "SN-")]
    [InlineData(15, Notes, "CUT NO DEEPER")]
    [InlineData(16, Tables, "SUMMARY BY SECTION", "NAILS BY LENGTH")]
    [InlineData(16, Notes, "CORROSION PROTECTION: ____")]
    [InlineData(17, Details, "PLATE", "BEVELLED WASHER")]
    [InlineData(17, Notes, "STUDS: ____")]
    [InlineData(18, Details, "MESH", "PRECAST PANEL")]
    [InlineData(18, Notes, "SHOTCRETE STRENGTH: ____", "FACING FINISH: ____")]
    [InlineData(19, Details, "UNDERDRAIN")]
    [InlineData(19, Notes, "DRAINAGE STRIPS", "SURFACE WATER: ____")]
    [InlineData(20, Notes, "WALL ENDS AND OPENINGS FOR PIPES: ____")]
    // Notes and tables
    [InlineData(21, Notes, "SPECIFICATION: ____", "DESIGN LOADS: ____")]
    [InlineData(22, Tables, "BID QUANTITIES")]
    [InlineData(23, Notes, "CONSTRUCTION SEQUENCE: ____")]
    [InlineData(24, Notes, "MONITORING POINTS, THRESHOLDS AND ACTIONS: ____")]
    [InlineData(25, Notes, "TRAFFIC STAGING AND BARRIERS: ____")]
    [InlineData(26, Notes, "ENVIRONMENTAL LIMITS, CONTAMINATION, ACCESS AND HEADROOM: ____")]
    public void An_item_is_written_on_its_sheets(int item, string sheets, params string[] words)
    {
        string written = string.Join(" ", Seen(sheets).OfType<Text>().Select(t => t.Value));

        Assert.All(words, w => Assert.True(written.Contains(w, StringComparison.OrdinalIgnoreCase), $"item {item}: \"{w}\" is not on the sheets {sheets}"));
    }

    [Theory]
    [InlineData(3, LayerRole.Boundary)]
    [InlineData(6, LayerRole.NailTrace)]
    [InlineData(8, LayerRole.Utility)]
    [InlineData(9, LayerRole.Nail)]
    [InlineData(12, LayerRole.Panel)]
    [InlineData(12, LayerRole.Drainage)]
    public void An_item_is_drawn_in_plan_or_elevation(int item, LayerRole layer) =>
        Assert.True(Seen(Views).Any(p => p.Layer == layer), $"item {item}: nothing on {layer}");

    private static IEnumerable<Primitive> Seen(string sheets) =>
        Set.Value.Sheets.Where(s => s.Title.StartsWith(sheets, StringComparison.Ordinal)).SelectMany(s => SheetPicture.Of(Set.Value, s)).Select(p => p.Primitive);
}
