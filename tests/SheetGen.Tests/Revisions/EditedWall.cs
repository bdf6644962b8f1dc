using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Placing;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Dxf.Edited;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>A small wall, built once: its layout, its sheets and the drawing that a person edits.</summary>
internal sealed class EditedWall
{
    /// <param name="yaml">The text of its project file.</param>
    public EditedWall(string yaml)
    {
        Yaml = yaml;
        Project = SampleLayout.Read(yaml);
        Layout = Placer.Place(PlacingWall.Read(yaml), new PlacingOptions());
        // The layout's own walls are those of another reading of the same text.
        Project = Project with { Walls = [.. Layout.Nails.Select(n => n.Wall).Distinct(ReferenceEqualityComparer.Instance).Cast<Wall>()] };
        Sheets = SampleSheets.Compose(Project, Layout);
        using var stream = new MemoryStream();
        DxfSheetWriter.Write(Sheets, stream);
        Drawing = stream.ToArray();
        using var plan = new MemoryStream();
        DxfPlanWriter.Write(Sheets, plan);
        Plan = plan.ToArray();
    }

    /// <summary>One with a shaft.</summary>
    public static EditedWall Shared { get; } = new(new PlacingWall
    {
        Length = 28,
        Bottom = "[[0, 100], [14, 101]]",
        Blocks = ["obstructions:", "  - {name: S1, kind: shaft, at: {station: 12, offset: 6}, diameter: 3, top: 120, bottom: 80}"],
    }.Yaml);

    public string Yaml { get; }

    public WallProject Project { get; }

    public NailLayout Layout { get; }

    public SheetSet Sheets { get; }

    public byte[] Drawing { get; }

    public byte[] Plan { get; }

    public DrawingReading Read(byte[] drawing)
    {
        var problems = new List<Problem>();
        DrawingReading? reading = EditedDrawing.Read(drawing, "edited.dxf", Project, Layout, Sheets, problems);
        Assert.True(reading is not null, string.Join('\n', problems));
        return reading;
    }

    public EditedLayout Edit(DrawingReading reading) => EditedLayout.Of(Project, Layout, reading.Nails, "on the drawing edited.dxf");

    /// <summary>Every nail that is not as it was: mark, what happened.</summary>
    public string[] Changes(DrawingReading reading) => [.. Comparison.Of(StateOf(Layout), StateOf(Edit(reading).Layout)).Nails.Select(n => $"{n.Mark} {n.What}")];

    private static RevisionState StateOf(NailLayout layout) => new() { Name = "wall", Unit = Model.Units.LengthUnit.Foot, Nails = [.. layout.Nails.Select(RevisionNail.Of)] };
}
