using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Dxf;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>
/// Reads sheets.dxf or plan.dxf again after a person has edited it and another program has saved it. Nails are known by the mark in their
/// extended data; where a program has lost it, by their attributes, and else by where they stand.
/// </summary>
public static class EditedDrawing
{
    private const int MostWarnings = 20, MostListed = 1000;

    /// <summary>What the drawing holds; null, with a problem that names the line, where it cannot be read or is of another project.</summary>
    /// <param name="file">The bytes of the drawing.</param>
    /// <param name="name">The drawing as the problems name it.</param>
    /// <param name="built">The sheets of the layout as they are written now.</param>
    public static DrawingReading? Read(byte[] file, string name, WallProject project, NailLayout layout, SheetSet built, List<Problem> problems)
    {
        DrawingReading? Refuse(string message, string hint, int line = 1)
        {
            problems.Add(new Problem(Severity.Error, "D01", message, new SourceSpot(name, Math.Max(1, line), 1), hint));
            return null;
        }
        DxfReadResult read = DxfReader.Read(file);
        if (!read.Succeeded)
            return Refuse("the drawing cannot be read: " + read.Error.Message, "open it in the drawing program and save it as DXF once more", read.Error.Line);
        // Paper and dimensions say nothing of nails, and some programs keep little of them.
        DxfProblem[] warnings = [.. read.Warnings.Where(w => w.Kind is not (DxfProblemKind.Paper or DxfProblemKind.DimensionStyle or DxfProblemKind.DimensionPicture))];
        string[] leftOut = [.. warnings.Take(MostWarnings).Select(w => "the drawing, " + w), .. warnings.Skip(MostWarnings).Take(1).Select(_ =>
            FormattableString.Invariant($"{warnings.Length - MostWarnings} more kinds of things in the drawing were not read"))];
        var sheets = new ElevationReading(read.Document, project, layout, built);
        int most = MostBlocksFor(layout);
        if (sheets.BlockCount > most)
            return Refuse(FormattableString.Invariant($"the drawing holds {sheets.BlockCount} nail blocks, and the project {layout.Nails.Count} nails: no more than {most} are read"), "take copies of the elevations out of it");
        if (sheets.IsDistorted)
            return Refuse("the drawing as a whole is mirrored, or stretched in one direction: where its nails stand says nothing of the wall", "mirror or scale it back in the drawing program, and save it once more");
        DrawingReading? reading = sheets.HasNails ? sheets.Read() : PlanReading.Read(read.Document, project, layout, built);
        if (reading is null)
        {
            return Refuse(
                sheets.HasNails ? "the drawing's nails do not stand where this project has any, nor where scaling, turning or moving the whole drawing would bring them"
                    : "the drawing holds no nail: no block with a mark, and no line of a plan that lies where this project has a nail",
                "name a sheets.dxf or plan.dxf of this project, edited or not");
        }
        string[] more = reading.NotRead.Count > MostListed ? [FormattableString.Invariant($"{reading.NotRead.Count - MostListed} more, not read or read with a doubt, are not listed")] : [];
        return reading with { NotRead = [.. reading.NotRead.Take(MostListed), .. more], LeftOut = leftOut };
    }

    private static int MostBlocksFor(NailLayout layout) => 20 * layout.Nails.Count + 5000;

    /// <summary>Where each nail's block stands on the sheets as they are written now.</summary>
    internal static Dictionary<string, BlockReference> Blocks(SheetSet built) =>
        built.Model.OfType<BlockReference>().Where(b => b.Nail is not null && b.Shown?.Tag == NailSymbols.Mark).ToDictionary(b => b.Nail!);

    internal static double Tolerance(WallProject project) => 0.6 * Lengths.Quantum(project.Unit);
}
